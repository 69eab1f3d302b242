package org.docksweep.circuit;

/**
 * What a fault does to a driver.
 *
 * @param scale factor on all of its impedance
 * @param seriesResistance parameter index of a resistance in series, or -1
 * @param turnShare parameter index of the share of shorted turns, or -1
 * @param magnet parameter index of the factor on its force factor, or -1
 */
record CoilFault(double scale, int seriesResistance, int turnShare, int magnet) {
    /** More shorted turns than this are a short. */
    private static final double LARGEST_SHARE = 0.6;

    double shareOf(double[] x) {
        return turnShare >= 0 ? Math.min(LARGEST_SHARE, StrictMath.exp(x[turnShare])) : 0;
    }

    /** ln of the factor on the force factor, beyond that of the turns. */
    double logMagnetOf(double[] x) {
        return magnet >= 0 ? x[magnet] : 0;
    }

    /** The fault's own parameter, or -1. */
    int severity() {
        return Math.max(Math.max(seriesResistance, turnShare), magnet);
    }
}
