package org.docksweep.service.learning;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.UUID;
import org.docksweep.contract.LearnedPriors;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.suspect.CauseKinds;
import org.docksweep.suspect.PriorTeacher;
import org.docksweep.suspect.Suspect;

/**
 * A confirmed cause with what the dock had suspected.
 *
 * @param id finding or past part life
 * @param at when
 * @param cabinetModelCode cabinet model
 * @param positionCode driver position, or null
 * @param driverModelCode driver model there, or null
 * @param elementId crossover part, or null
 * @param cause what was found
 * @param coilOpen whether the coil itself was measured as open
 * @param guessed whether a dock had guessed at all
 * @param suspects suspects of the check-in that opened the job, most probable first
 */
record Repair(
        UUID id,
        Instant at,
        String cabinetModelCode,
        String positionCode,
        String driverModelCode,
        String elementId,
        ConfirmedCause cause,
        boolean coilOpen,
        boolean guessed,
        List<Suspect> suspects) {

    /** Whether a suspect points to where the cause was found. */
    boolean isAt(Suspect suspect) {
        return elementId != null
                ? elementId.equals(suspect.elementId())
                : positionCode != null
                        && suspect.elementId() == null
                        && Objects.equals(positionCode, suspect.positionCode());
    }

    /** A cause of the cabinet as a whole is no lesson about a driver or a part. */
    boolean teaches() {
        return (driverModelCode != null || elementId != null)
                && !CauseKinds.of(cause).isEmpty();
    }

    PriorTeacher.Confirmed confirmed() {
        return new PriorTeacher.Confirmed(
                cabinetModelCode,
                elementId == null ? driverModelCode : null,
                elementId,
                cause,
                CauseKinds.shares(
                        cause, coilOpen, suspects.stream().filter(this::isAt).toList()),
                at);
    }

    LearnedPriors.Finding finding(boolean leftOut) {
        return new LearnedPriors.Finding(id, at, driverModelCode, elementId, cause, leftOut);
    }
}
