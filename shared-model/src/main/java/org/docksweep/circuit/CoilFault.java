package org.docksweep.circuit;

/**
 * What a fault does to a driver's impedance.
 *
 * @param scale factor on all of it
 * @param seriesResistance parameter index of a resistance in series, or -1
 * @param turnShare parameter index of the share of shorted turns, or -1
 */
record CoilFault(double scale, int seriesResistance, int turnShare) {
    /** More shorted turns than this leave nothing to be fitted. */
    private static final double LARGEST_SHARE = 0.9;

    double shareOf(double[] x) {
        return turnShare >= 0 ? Math.min(LARGEST_SHARE, StrictMath.exp(x[turnShare])) : 0;
    }
}
