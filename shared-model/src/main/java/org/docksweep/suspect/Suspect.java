package org.docksweep.suspect;

import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Require;

/**
 * A possible cause with its probability.
 *
 * @param kind what may be wrong
 * @param testPointCode test point at which it shows
 * @param positionCode driver position at fault, or null
 * @param elementId crossover part at fault, or null
 * @param probability share of belief among all suspects, 0 to 1
 * @param evidence what was seen that speaks for it
 * @param nextStep what to look at first
 */
public record Suspect(
        FaultKind kind,
        String testPointCode,
        String positionCode,
        String elementId,
        double probability,
        Reason evidence,
        Reason nextStep) {
    public Suspect {
        if (kind == null || evidence == null || nextStep == null) {
            throw new IllegalArgumentException("suspect: kind, evidence and nextStep are all needed");
        }
        Require.inRange("suspect probability", probability, 0, 1);
    }

    /**
     * The same suspect with another next step.
     *
     * @param other what to look at first
     * @return the suspect
     */
    public Suspect withNextStep(Reason other) {
        return new Suspect(kind, testPointCode, positionCode, elementId, probability, evidence, other);
    }

    /** Probability in words. */
    public enum Likelihood {
        LIKELY,
        POSSIBLE,
        UNLIKELY
    }

    /**
     * Probability in words: likely from 0.6, possible from 0.15.
     *
     * @return the word
     */
    public Likelihood likelihood() {
        return probability >= 0.6 ? Likelihood.LIKELY : probability >= 0.15 ? Likelihood.POSSIBLE : Likelihood.UNLIKELY;
    }
}
