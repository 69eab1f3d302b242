package org.docksweep.suspect;

import java.util.List;

/**
 * What explains a curve.
 *
 * @param faultProbability probability that something is wrong, 0 to 1
 * @param reducedChi2 mean square of what the best explanation leaves over, in units of 1.2 %: above the misfit limit nothing that
 *     is known explains the curve
 * @param healthyReducedChi2 reduced chi squared of the healthy circuit within the uncertainties of reference or baseline: about 1
 *     or less for a healthy cabinet
 * @param logEvidence logarithm of the evidence of the whole model, comparable between cabinet models for one curve
 * @param suspects faults by probability among faults, most probable first
 * @param healthyX most probable parameters of the healthy circuit
 * @param healthySpread their standard deviations after the measurement
 */
public record Explanation(
        double faultProbability,
        double reducedChi2,
        double healthyReducedChi2,
        double logEvidence,
        List<Suspect> suspects,
        double[] healthyX,
        double[] healthySpread) {
    /** Whether nothing that is known explains the curve, and that is why a cabinet would fail. */
    boolean isUnknown() {
        return !suspects.isEmpty() && suspects.get(0).kind() == FaultKind.UNKNOWN;
    }
}
