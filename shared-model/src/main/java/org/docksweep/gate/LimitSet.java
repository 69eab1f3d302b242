package org.docksweep.gate;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.positive;

/**
 * Limits of the gate: versioned, never changed, only succeeded by another version.
 *
 * @param version version number, at least 1
 * @param deviationLimitDb impedance deviation of a band from the model's reference that always passes, in dB; guards
 *     against a spread learned too small from few units
 * @param spreadFactor multiple of the healthy spread that a deviation may reach
 * @param baselineLimitDb impedance deviation of a band from the cabinet's own baseline that passes, in dB
 * @param wayLevelLimitDb loss of level of a way at the microphone that passes, in dB
 * @param guardFactor multiple of the standard uncertainty by which acceptance limits are drawn in (JCGM 106; 1.64 for
 *     95 % one-sided)
 * @param watchShare share of a limit beyond which a passing reading gets a watch mark, 0.5 to 1
 */
public record LimitSet(
        int version,
        double deviationLimitDb,
        double spreadFactor,
        double baselineLimitDb,
        double wayLevelLimitDb,
        double guardFactor,
        double watchShare) {

    public LimitSet {
        inRange("limit set version", version, 1, Integer.MAX_VALUE);
        positive("limit set deviationLimitDb", deviationLimitDb);
        positive("limit set spreadFactor", spreadFactor);
        positive("limit set baselineLimitDb", baselineLimitDb);
        positive("limit set wayLevelLimitDb", wayLevelLimitDb);
        inRange("limit set guardFactor", guardFactor, 0, 6);
        inRange("limit set watchShare", watchShare, 0.5, 1);
    }

    /**
     * The limits a new house starts with.
     *
     * @return version 1: 1.5 dB, 5 spreads, 1.2 dB from the own baseline, 6 dB loss of a way, guard factor 1.64, watch
     *     from 80 % of a limit
     */
    public static LimitSet initial() {
        return new LimitSet(1, 1.5, 5.0, 1.2, 6.0, 1.64, 0.8);
    }
}
