package org.docksweep.sweep;

import static org.docksweep.fleet.Require.positive;

/**
 * The frequencies all curves are given at: {@code f(k) = 1000 Hz * 2^(k/24)} for whole k. The grid hangs on 1 kHz, not
 * on the ends of a sweep, so that curves of different sweeps share their points and can be compared without
 * interpolation.
 */
public final class FrequencyGrid {
    /** Points in an octave. */
    public static final int POINTS_PER_OCTAVE = 24;

    /** Frequency of point 0, in hertz. */
    public static final double ANCHOR_HZ = 1000;

    /** A limit given as a decimal may miss a grid point by rounding; such a point still counts as inside. */
    private static final double EDGE_TOLERANCE_POINTS = 1e-6;

    /** Beyond this no audio converter reaches; it bounds what a mistyped limit can ask for. */
    private static final double HIGHEST_HZ = 1e6;

    private FrequencyGrid() {}

    /**
     * The grid points of a band, ends included.
     *
     * @param startHz lower end in hertz, greater than 0
     * @param stopHz upper end in hertz, at least startHz, at most 1 MHz
     * @return rising frequencies in hertz; empty when no point lies in the band
     * @throws IllegalArgumentException if the ends are not such a band
     */
    public static double[] within(double startHz, double stopHz) {
        positive("grid startHz", startHz);
        if (!(stopHz >= startHz && stopHz <= HIGHEST_HZ)) {
            throw new IllegalArgumentException("grid stopHz must be from startHz (" + startHz + ") to " + HIGHEST_HZ
                    + " (both allowed), but is " + stopHz);
        }
        int first = (int) Math.ceil(position(startHz) - EDGE_TOLERANCE_POINTS);
        int last = (int) Math.floor(position(stopHz) + EDGE_TOLERANCE_POINTS);
        double[] frequencyHz = new double[Math.max(0, last - first + 1)];
        for (int i = 0; i < frequencyHz.length; i++) {
            frequencyHz[i] = pointHz(first + i);
        }
        return frequencyHz;
    }

    /**
     * A point of the grid.
     *
     * @param index k; 0 is 1 kHz
     * @return frequency in hertz, the same to the last bit on every Java runtime
     */
    public static double pointHz(int index) {
        return ANCHOR_HZ * StrictMath.pow(2, index / (double) POINTS_PER_OCTAVE);
    }

    /**
     * The number of the grid point nearest to a frequency on a logarithmic scale.
     *
     * @param frequencyHz frequency in hertz, greater than 0
     * @return k
     */
    public static int nearestIndex(double frequencyHz) {
        return (int) Math.rint(position(positive("frequencyHz", frequencyHz)));
    }

    private static double position(double frequencyHz) {
        return POINTS_PER_OCTAVE * StrictMath.log(frequencyHz / ANCHOR_HZ) / StrictMath.log(2);
    }
}
