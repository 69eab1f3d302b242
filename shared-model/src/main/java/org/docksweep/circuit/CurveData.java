package org.docksweep.circuit;

import java.util.Arrays;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * A measured curve as a fit sees it: logarithm of the impedance, its standard uncertainty, and what a taught model is
 * known to miss at each point. Arrays are not copied; nobody changes them.
 *
 * @param frequencyHz frequencies
 * @param logOhm ln(|Z| / 1 ohm)
 * @param phaseRad phase in radian
 * @param sigma standard uncertainty of logOhm and of phaseRad each, including the model's own error
 */
public record CurveData(double[] frequencyHz, double[] logOhm, double[] phaseRad, double[] sigma) {

    /**
     * Prepares a measured curve.
     *
     * @param curve calibrated impedance
     * @param offsets what the model misses, on any grid
     * @param everyNth takes every n-th point, at least 1
     * @return data for a fit
     */
    public static CurveData of(ImpedanceCurve curve, ModelOffsets offsets, int everyNth) {
        double[] grid = curve.frequencyHz();
        double[] uncertainty = curve.standardUncertaintyOhm();
        double[] re = curve.resistanceOhm();
        double[] im = curve.reactanceOhm();
        int n = (grid.length + everyNth - 1) / everyNth;
        double[] frequencyHz = new double[n];
        double[] logOhm = new double[n];
        double[] phaseRad = new double[n];
        double[] sigma = new double[n];
        for (int i = 0; i < n; i++) {
            int at = i * everyNth;
            double magnitude = Math.max(1e-6, StrictMath.hypot(re[at], im[at]));
            frequencyHz[i] = grid[at];
            logOhm[i] = StrictMath.log(magnitude) - offsets.logOhmAt(grid[at]);
            phaseRad[i] = StrictMath.atan2(im[at], re[at]) - offsets.phaseRadAt(grid[at]);
            sigma[i] = StrictMath.hypot(uncertainty[at] / magnitude, offsets.sigmaAt(grid[at]));
        }
        return new CurveData(frequencyHz, logOhm, phaseRad, sigma);
    }

    /**
     * The same data believed less (or more).
     *
     * @param factor factor on every standard uncertainty, greater than 0
     * @return scaled data
     */
    public CurveData withSigmaScaled(double factor) {
        return new CurveData(
                frequencyHz,
                logOhm,
                phaseRad,
                Arrays.stream(sigma).map(s -> s * factor).toArray());
    }

    /**
     * Every n-th point, each believed as much more as fewer are left.
     *
     * @param everyNth takes every n-th point, at least 1
     * @return thinned data with about the same weight
     */
    public CurveData thinned(int everyNth) {
        int n = (size() + everyNth - 1) / everyNth;
        double[][] kept = new double[4][n];
        double weight = 1 / Math.sqrt(everyNth);
        for (int i = 0; i < n; i++) {
            kept[0][i] = frequencyHz[i * everyNth];
            kept[1][i] = logOhm[i * everyNth];
            kept[2][i] = phaseRad[i * everyNth];
            kept[3][i] = sigma[i * everyNth] * weight;
        }
        return new CurveData(kept[0], kept[1], kept[2], kept[3]);
    }

    /**
     * Number of points.
     *
     * @return points
     */
    public int size() {
        return frequencyHz.length;
    }
}
