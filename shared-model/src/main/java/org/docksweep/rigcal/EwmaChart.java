package org.docksweep.rigcal;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.positive;

/**
 * Exponentially weighted moving average chart, which sees slow drift: {@code z = lambda y + (1 - lambda) z}, begun at the
 * centre, limits {@code centre +- k s sqrt(lambda / (2 - lambda))} (NIST/SEMATECH e-Handbook 6.3.2.4).
 *
 * @param centre mean of the baseline
 * @param standardDeviation s of the baseline, greater than 0
 * @param lambda weight of the newest reading, above 0, at most 1 (0.2 to 0.3 usual)
 * @param widthFactor k, greater than 0 (3 usual)
 */
public record EwmaChart(double centre, double standardDeviation, double lambda, double widthFactor) {

    public EwmaChart {
        inRange("chart centre", centre, -Double.MAX_VALUE, Double.MAX_VALUE);
        positive("chart standardDeviation", standardDeviation);
        inRange("chart lambda", lambda, Double.MIN_NORMAL, 1);
        positive("chart widthFactor", widthFactor);
    }

    /**
     * The averages.
     *
     * @param readings readings in the order of time
     * @return average after each reading
     */
    public double[] averages(double[] readings) {
        double[] averages = new double[readings.length];
        double average = centre;
        for (int i = 0; i < readings.length; i++) {
            average = lambda * readings[i] + (1 - lambda) * average;
            averages[i] = average;
        }
        return averages;
    }

    /**
     * Upper limit.
     *
     * @return in the unit of the readings
     */
    public double upperLimit() {
        return centre + width();
    }

    /**
     * Lower limit.
     *
     * @return in the unit of the readings
     */
    public double lowerLimit() {
        return centre - width();
    }

    /**
     * Whether an average is out of control.
     *
     * @param average from {@link #averages}
     * @return true outside the limits (the limits themselves are inside) and for NaN
     */
    public boolean signals(double average) {
        return !(average >= lowerLimit() && average <= upperLimit());
    }

    private double width() {
        return widthFactor * standardDeviation * Math.sqrt(lambda / (2 - lambda));
    }
}
