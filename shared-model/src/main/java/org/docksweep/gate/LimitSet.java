package org.docksweep.gate;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.positive;

/**
 * Limits of the gate: versioned, never changed, only succeeded by another version.
 *
 * @param version version number, at least 1
 * @param failProbability probability of a fault in the sound from which a cabinet fails; above 0 to 1; follows from costs: bench
 *     hour / (bench hour + missed fault), capped by how many false fails the staff will bear
 * @param failProbabilityWithReference probability of a fault in the impedance from which a cabinet without a baseline of its own
 *     fails, above 0 to failProbability; absent, as in limits of before there was one, the same as failProbability
 * @param failProbabilityWithBaseline the same of a cabinet with a baseline
 * @param watchProbability probability of a fault from which a passing cabinet gets a watch mark, above 0 to the least of these
 * @param misfitLimit reduced chi squared of the best explanation above which the gate says that nothing it knows
 *     explains the curve, greater than 1
 * @param wayLevelLimitDb loss of level of a way at the microphone that passes, in dB
 * @param guardFactor multiple of the standard uncertainty by which acceptance limits of single readings are drawn in
 *     (JCGM 106; 1.64 for 95 % one-sided)
 */
public record LimitSet(
        int version,
        double failProbability,
        Double failProbabilityWithReference,
        Double failProbabilityWithBaseline,
        double watchProbability,
        double misfitLimit,
        double wayLevelLimitDb,
        double guardFactor) {

    public LimitSet {
        inRange("limit set version", version, 1, Integer.MAX_VALUE);
        inRange("limit set failProbability", failProbability, 1e-6, 1);
        failProbabilityWithReference =
                failProbabilityWithReference == null ? failProbability : failProbabilityWithReference;
        failProbabilityWithBaseline =
                failProbabilityWithBaseline == null ? failProbability : failProbabilityWithBaseline;
        inRange("limit set failProbabilityWithReference", failProbabilityWithReference, 1e-6, failProbability);
        inRange("limit set failProbabilityWithBaseline", failProbabilityWithBaseline, 1e-6, failProbability);
        double least = Math.min(failProbabilityWithReference, failProbabilityWithBaseline);
        inRange("limit set watchProbability", watchProbability, 1e-6, least);
        inRange("limit set misfitLimit", misfitLimit, 1, 1e6);
        positive("limit set wayLevelLimitDb", wayLevelLimitDb);
        inRange("limit set guardFactor", guardFactor, 0, 6);
    }

    /**
     * The limits a new house starts with.
     *
     * <p>Costs (bench hour 40, soft fault let through 160; common practice, no source) fail a cabinet from a probability of 0.2 by the
     * impedance. The cap on false fails (0.5 % of healthy returns) holds there: of 6,000 healthy sweeps of drawn tuning models 27 fail with a
     * reference only, and 1 of as many with a baseline. By the sound it is 0.5.
     *
     * @return version 1: fails from a probability of 0.2 by the impedance, 0.5 by the sound, watch mark from 0.1, misfit 12, 6 dB
     *     loss of a way, guard factor 1.64
     */
    public static LimitSet initial() {
        return new LimitSet(1, 0.5, 0.2, 0.2, 0.1, 12, 6.0, 1.64);
    }

    /**
     * The probability of a fault in the impedance from which a cabinet fails.
     *
     * @param ownBaseline whether it was compared with a baseline of its own
     * @return probability, above 0 to 1
     */
    public double failProbability(boolean ownBaseline) {
        return ownBaseline ? failProbabilityWithBaseline : failProbabilityWithReference;
    }
}
