package org.docksweep.gate;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BracketingNthOrderBrentSolver;

/**
 * Small's classic rules on magnitudes alone (Small 1972, 1973), as a cross-check of fits. They hold exactly for a lossless
 * inductance-free driver only; with box losses they are off by per cents, so no reading and no verdict rests on them.
 */
public final class ThreeFrequencyRule {
    private static final double REACH = 16;
    private static final int EVALUATIONS = 200;

    private ThreeFrequencyRule() {}

    /**
     * A driver by its one isolated peak: with r0 = Rmax/Re and |Z(f1)| = |Z(f2)| = Re sqrt(r0), {@code fs = sqrt(f1 f2)},
     * {@code Qms = fs sqrt(r0) / (f2 - f1)}, {@code Qes = Qms / (r0 - 1)}, {@code Qts = Qms / r0}.
     *
     * @param lowerHz f1
     * @param upperHz f2
     * @param resonanceHz fs
     * @param qms mechanical Q
     * @param qes electrical Q
     * @param qts total Q
     */
    public record Driver(double lowerHz, double upperHz, double resonanceHz, double qms, double qes, double qts) {}

    /**
     * A vented box by its three frequencies: {@code fs = fL fH / fb} with {@code fb = fM},
     * {@code alpha = (fH^2 - fM^2)(fM^2 - fL^2) / (fH^2 fL^2)}.
     *
     * @param resonanceHz fs of the driver in the box
     * @param complianceRatio alpha
     * @param tuningHz fb as the rule has it: the dip
     */
    public record Vented(double resonanceHz, double complianceRatio, double tuningHz) {}

    /**
     * Reads a driver off its peak.
     *
     * @param magnitudeOhm |Z| against frequency, with one peak only
     * @param peakHz place of the peak
     * @param dcResistanceOhm Re in ohm
     * @return the driver
     * @throws IllegalArgumentException if the magnitude does not fall to the search level on both sides, or the peak is not
     *     above Re
     */
    public static Driver driver(DoubleUnaryOperator magnitudeOhm, double peakHz, double dcResistanceOhm) {
        double r0 = magnitudeOhm.applyAsDouble(peakHz) / dcResistanceOhm;
        double level = dcResistanceOhm * Math.sqrt(r0);
        if (!(r0 > 1)
                || magnitudeOhm.applyAsDouble(peakHz / REACH) > level
                || magnitudeOhm.applyAsDouble(peakHz * REACH) > level) {
            throw new IllegalArgumentException("the three-frequency rule needs one isolated peak above " + level
                    + " ohm with lower values on both sides; fit a model instead");
        }
        DoubleUnaryOperator over = hz -> magnitudeOhm.applyAsDouble(hz) - level;
        BracketingNthOrderBrentSolver solver = new BracketingNthOrderBrentSolver();
        double lower = solver.solve(EVALUATIONS, over::applyAsDouble, peakHz / REACH, peakHz);
        double upper = solver.solve(EVALUATIONS, over::applyAsDouble, peakHz, peakHz * REACH);
        double resonance = Math.sqrt(lower * upper);
        double qms = resonance * Math.sqrt(r0) / (upper - lower);
        return new Driver(lower, upper, resonance, qms, qms / (r0 - 1), qms / r0);
    }

    /**
     * Reads a vented box off its three frequencies.
     *
     * @param lowerPeakHz fL
     * @param dipHz fM
     * @param upperPeakHz fH
     * @return the box
     */
    public static Vented vented(double lowerPeakHz, double dipHz, double upperPeakHz) {
        double l2 = lowerPeakHz * lowerPeakHz;
        double m2 = dipHz * dipHz;
        double h2 = upperPeakHz * upperPeakHz;
        return new Vented(lowerPeakHz * upperPeakHz / dipHz, (h2 - m2) * (m2 - l2) / (h2 * l2), dipHz);
    }
}
