package org.docksweep.circuit;

import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * A measured curve as a fit sees it: logarithm of the impedance less what the model is known to miss, and the covariance of
 * what it may miss besides. Arrays are not copied; nobody changes them.
 */
public final class CurveData {
    /** Where a model strays much, it strays over less than a bump's width as well. */
    private static final double ROUGH_SHARE = 0.5;

    /** What a change of structure brings with it is smoother. */
    private static final double CHANGED_ROUGH_SHARE = 0.15;

    private final double[] frequencyHz;
    private final double[] logOhm;
    private final double[] phaseRad;
    private final double[] grain;
    private final double[] smooth;
    private final Discrepancy discrepancy;

    private CurveData(double[] frequencyHz, double[] logOhm, double[] phaseRad, double[] grain, double[] smooth) {
        this.frequencyHz = frequencyHz;
        this.logOhm = logOhm;
        this.phaseRad = phaseRad;
        this.grain = grain;
        this.smooth = smooth;
        this.discrepancy = new Discrepancy(frequencyHz, grain, smooth);
    }

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
        double[][] rows = new double[5][n];
        for (int i = 0; i < n; i++) {
            int at = i * everyNth;
            double magnitude = Math.max(1e-6, StrictMath.hypot(re[at], im[at]));
            rows[0][i] = grid[at];
            rows[1][i] = StrictMath.log(magnitude) - offsets.logOhmAt(grid[at]);
            rows[2][i] = StrictMath.atan2(im[at], re[at]) - offsets.phaseRadAt(grid[at]);
            double stray = offsets.sigmaAt(grid[at]);
            rows[3][i] = StrictMath.hypot(
                    uncertainty[at] / magnitude, StrictMath.hypot(offsets.grain(), ROUGH_SHARE * stray));
            rows[4][i] = StrictMath.hypot(stray, offsets.rigSigma());
        }
        return new CurveData(rows[0], rows[1], rows[2], rows[3], rows[4]);
    }

    /**
     * The same data for circuits that a fault has changed: what was taught of the healthy circuit's error holds less, the more the
     * curve deviates.
     *
     * @param change by how much ln Z deviates at each point, absolute
     * @param share model error as a share of the deviation
     * @return data believed less where the curve deviates
     */
    public CurveData doubtedWhere(double[] change, double share) {
        double[] wider = new double[size()];
        double[] rougher = new double[size()];
        for (int i = 0; i < wider.length; i++) {
            double error = share * Math.min(1, change[i]);
            wider[i] = StrictMath.hypot(smooth[i], error);
            rougher[i] = StrictMath.hypot(grain[i], CHANGED_ROUGH_SHARE * error);
        }
        return new CurveData(frequencyHz, logOhm, phaseRad, rougher, wider);
    }

    /**
     * Every n-th point, each believed as much more as fewer are left.
     *
     * @param everyNth takes every n-th point, at least 1
     * @return thinned data with about the same weight
     */
    public CurveData thinned(int everyNth) {
        int n = (size() + everyNth - 1) / everyNth;
        double[][] kept = new double[5][n];
        double weight = 1 / Math.sqrt(everyNth);
        for (int i = 0; i < n; i++) {
            kept[0][i] = frequencyHz[i * everyNth];
            kept[1][i] = logOhm[i * everyNth];
            kept[2][i] = phaseRad[i * everyNth];
            kept[3][i] = grain[i * everyNth] * weight;
            kept[4][i] = smooth[i * everyNth];
        }
        return new CurveData(kept[0], kept[1], kept[2], kept[3], kept[4]);
    }

    /**
     * The same data without a band.
     *
     * @param fromHz first frequency left out
     * @param toHz last frequency left out
     * @return fewer points
     * @throws IllegalArgumentException if no point is left
     */
    public CurveData without(double fromHz, double toHz) {
        int[] left = IntStream.range(0, size())
                .filter(i -> frequencyHz[i] < fromHz || frequencyHz[i] > toHz)
                .toArray();
        if (left.length == 0) {
            throw new IllegalArgumentException("between " + fromHz + " and " + toHz + " Hz lies the whole curve");
        }
        double[][] kept = Stream.of(frequencyHz, logOhm, phaseRad, grain, smooth)
                .map(row -> Arrays.stream(left).mapToDouble(i -> row[i]).toArray())
                .toArray(double[][]::new);
        return new CurveData(kept[0], kept[1], kept[2], kept[3], kept[4]);
    }

    /**
     * How far the data lie from a fitted curve.
     *
     * @param fitted ln|Z| and phase at the data's frequencies
     * @return at each point, in standard deviations of what the model may miss there and of the noise
     */
    public double[] deviations(double[][] fitted) {
        double[] deviations = new double[size()];
        for (int i = 0; i < deviations.length; i++) {
            double miss = StrictMath.hypot(
                    logOhm[i] - fitted[0][i], Math.IEEEremainder(phaseRad[i] - fitted[1][i], 2 * Math.PI));
            deviations[i] = miss / StrictMath.hypot(grain[i], smooth[i]);
        }
        return deviations;
    }

    /**
     * Frequencies.
     *
     * @return hertz, rising
     */
    public double[] frequencyHz() {
        return frequencyHz;
    }

    /**
     * ln(|Z| / 1 ohm) less what the model is known to miss.
     *
     * @return one per frequency
     */
    public double[] logOhm() {
        return logOhm;
    }

    /**
     * Phase less what the model is known to miss.
     *
     * @return radian, one per frequency
     */
    public double[] phaseRad() {
        return phaseRad;
    }

    /**
     * Logarithm of the density of the misses' distribution at its peak, but for a constant of the number of points: what makes
     * evidences of one curve comparable between cabinet models.
     *
     * @return {@code -ln det C}, ln|Z| and phase together
     */
    public double logNormalisation() {
        return -discrepancy.logDeterminant();
    }

    Discrepancy discrepancy() {
        return discrepancy;
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
