package org.docksweep.survival;

import org.docksweep.fleet.Require;
import org.hipparchus.distribution.continuous.GammaDistribution;

/**
 * Failures per time in service with exact limits (Garwood 1936, a Poisson count): the honest figure when failures are too
 * few for anything else. Also without a single failure there is an upper limit.
 *
 * @param failures failures, at least 0
 * @param partWeeks time watched, over all parts, greater than 0
 */
public record FailureRate(int failures, double partWeeks) {
    public FailureRate {
        Require.notNegative("failures", failures);
        Require.positive("part-weeks", partWeeks);
    }

    /**
     * The rate.
     *
     * @return failures per thousand part-weeks
     */
    public double perThousandWeeks() {
        return 1000 * failures / partWeeks;
    }

    /**
     * Limits of the rate.
     *
     * @param confidence level, two-sided
     * @return failures per thousand part-weeks
     */
    public Interval limitsPerThousandWeeks(double confidence) {
        double tail = (1 - Require.inRange("confidence level", confidence, 0.5, 0.9999)) / 2;
        double lower = failures == 0 ? 0 : new GammaDistribution(failures, 1).inverseCumulativeProbability(tail);
        double upper = new GammaDistribution(failures + 1.0, 1).inverseCumulativeProbability(1 - tail);
        return new Interval(1000 * lower / partWeeks, 1000 * upper / partWeeks);
    }
}
