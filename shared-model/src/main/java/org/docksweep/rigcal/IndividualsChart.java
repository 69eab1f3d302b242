package org.docksweep.rigcal;

import static org.docksweep.fleet.Require.notNegative;

import org.docksweep.fleet.Require;

/**
 * Shewhart chart of single readings: centre is the mean, limits are centre +- 3 MRbar / d2 with the mean moving range
 * MRbar of neighbours and d2 = 1.128 (NIST/SEMATECH e-Handbook 6.3.2.2).
 *
 * @param centre mean of the baseline
 * @param meanMovingRange MRbar, at least 0
 */
public record IndividualsChart(double centre, double meanMovingRange) {
    /** Expected range of two normal readings, in standard deviations. */
    private static final double D2 = 1.128;

    /** Upper limit of a range of two over its mean. */
    private static final double D4 = 3.267;

    public IndividualsChart {
        Require.inRange("chart centre", centre, -Double.MAX_VALUE, Double.MAX_VALUE);
        notNegative("chart meanMovingRange", meanMovingRange);
    }

    /**
     * Makes a chart from a baseline.
     *
     * @param readings baseline in the order of time, at least two
     * @return the chart
     */
    public static IndividualsChart of(double[] readings) {
        if (readings.length < 2) {
            throw new IllegalArgumentException(
                    "a control chart needs at least 2 baseline readings, but has " + readings.length);
        }
        double sum = readings[0];
        double ranges = 0;
        for (int i = 1; i < readings.length; i++) {
            sum += readings[i];
            ranges += Math.abs(readings[i] - readings[i - 1]);
        }
        return new IndividualsChart(sum / readings.length, ranges / (readings.length - 1));
    }

    /**
     * Upper limit.
     *
     * @return in the unit of the readings
     */
    public double upperLimit() {
        return centre + 3 * meanMovingRange / D2;
    }

    /**
     * Lower limit.
     *
     * @return in the unit of the readings
     */
    public double lowerLimit() {
        return centre - 3 * meanMovingRange / D2;
    }

    /**
     * Upper limit of the moving range.
     *
     * @return in the unit of the readings
     */
    public double movingRangeLimit() {
        return D4 * meanMovingRange;
    }

    /**
     * Whether a reading is out of control.
     *
     * @param reading the reading
     * @return true outside the limits (the limits themselves are inside) and for NaN
     */
    public boolean signals(double reading) {
        return !(reading >= lowerLimit() && reading <= upperLimit());
    }
}
