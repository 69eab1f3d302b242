package org.docksweep.suspect;

import java.util.List;
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
 * @param alike other faults that this curve cannot tell from it, computed beforehand ({@link AmbiguityGroups}); empty when there are
 *     none
 * @param split what would tell them apart, or null without any
 * @param predicted what the terminals would show if this were it; null but for the most probable suspect of a fitted curve
 */
public record Suspect(
        FaultKind kind,
        String testPointCode,
        String positionCode,
        String elementId,
        double probability,
        Reason evidence,
        Reason nextStep,
        List<Reason> alike,
        Reason split,
        PredictedCurve predicted) {
    public Suspect {
        if (kind == null || evidence == null || nextStep == null) {
            throw new IllegalArgumentException("suspect: kind, evidence and nextStep are all needed");
        }
        Require.inRange("suspect probability", probability, 0, 1);
        alike = alike == null ? List.of() : List.copyOf(alike);
    }

    /**
     * A suspect that looks like no other.
     *
     * @param kind what may be wrong
     * @param testPointCode test point at which it shows
     * @param positionCode driver position at fault, or null
     * @param elementId crossover part at fault, or null
     * @param probability share of belief among all suspects, 0 to 1
     * @param evidence what was seen that speaks for it
     * @param nextStep what to look at first
     */
    public Suspect(
            FaultKind kind,
            String testPointCode,
            String positionCode,
            String elementId,
            double probability,
            Reason evidence,
            Reason nextStep) {
        this(kind, testPointCode, positionCode, elementId, probability, evidence, nextStep, List.of(), null, null);
    }

    /**
     * The same suspect with another next step.
     *
     * @param other what to look at first
     * @return the suspect
     */
    public Suspect withNextStep(Reason other) {
        return new Suspect(
                kind, testPointCode, positionCode, elementId, probability, evidence, other, alike, split, predicted);
    }

    /**
     * The same suspect with another probability.
     *
     * @param other share of belief among all suspects, 0 to 1
     * @return the suspect
     */
    public Suspect withProbability(double other) {
        return new Suspect(
                kind, testPointCode, positionCode, elementId, other, evidence, nextStep, alike, split, predicted);
    }

    Suspect withPredicted(PredictedCurve curve) {
        return new Suspect(
                kind, testPointCode, positionCode, elementId, probability, evidence, nextStep, alike, split, curve);
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
