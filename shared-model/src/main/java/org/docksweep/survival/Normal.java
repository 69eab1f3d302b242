package org.docksweep.survival;

import org.hipparchus.distribution.continuous.NormalDistribution;

/** Quantiles of the standard normal distribution. */
final class Normal {
    private static final NormalDistribution STANDARD = new NormalDistribution();

    private Normal() {}

    /** Half width of a two-sided interval in standard deviations. */
    static double twoSided(double confidence) {
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException(
                    "confidence level must lie between 0 and 1, for example 0.95, but is " + confidence);
        }
        return STANDARD.inverseCumulativeProbability(0.5 + confidence / 2);
    }

    static double twoSidedTail(double z) {
        return 2 * STANDARD.cumulativeProbability(-Math.abs(z));
    }
}
