package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.suspect.PriorTeacher;
import org.docksweep.suspect.Priors;

/**
 * What the house has learned from its repairs.
 *
 * @param asOf when this was true
 * @param used whether the gate uses it; otherwise it goes by the usual weights
 * @param halfLifeDays days after which a finding counts half
 * @param rows per kind of place and fault: usual weight, learned weight, and how many findings are behind it
 * @param priors what the gate would take
 * @param findings findings it was learned from, newest first; those left out are marked
 */
public record LearnedPriors(
        Instant asOf,
        boolean used,
        long halfLifeDays,
        List<PriorTeacher.Row> rows,
        Priors priors,
        List<Finding> findings) {

    /**
     * A finding as learned from.
     *
     * @param id identity, for a {@link LearningDecision}
     * @param at when
     * @param driverModelCode driver model, or null
     * @param elementId crossover part, or null
     * @param cause what was found
     * @param leftOut whether a manager had it left out
     */
    public record Finding(
            UUID id, Instant at, String driverModelCode, String elementId, ConfirmedCause cause, boolean leftOut) {}
}
