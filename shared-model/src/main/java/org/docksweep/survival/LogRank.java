package org.docksweep.survival;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;

/**
 * Whether two groups of parts last equally long: the log-rank test (Mantel 1966). At each age of failure the failures
 * expected in the first group are {@code d n1 / n}, their variance {@code d (n1/n)(n2/n)(n - d)/(n - 1)}.
 *
 * @param first parts, failures seen and failures expected if both groups were alike, of the first group
 * @param second the same of the second group
 * @param variance variance of the failures of the first group; 0 when no age had both groups at risk
 * @param chiSquared {@code (O1 - E1)^2 / V}, one degree of freedom; 0 when the variance is 0
 * @param probability probability of a difference like this or larger between alike groups
 */
public record LogRank(Group first, Group second, double variance, double chiSquared, double probability) {
    /** Power at which {@link #smallestRatioToShow} would be found. */
    private static final double POWER = 0.8;

    /**
     * A group in the comparison.
     *
     * @param parts parts
     * @param failures failures seen
     * @param expected failures expected if both groups were alike
     */
    public record Group(int parts, int failures, double expected) {}

    /**
     * Compares.
     *
     * @param first lives of the first group
     * @param second lives of the second group
     * @return the comparison
     */
    public static LogRank of(List<Lifetime> first, List<Lifetime> second) {
        RiskTable one = new RiskTable(first);
        RiskTable two = new RiskTable(second);
        List<Lifetime> together = new ArrayList<>(first);
        together.addAll(second);
        double expectedOne = 0;
        double expectedTwo = 0;
        double variance = 0;
        int failuresOne = 0;
        int failuresTwo = 0;
        for (double age : new RiskTable(together).ages()) {
            int atRiskOne = one.atRisk(age);
            int atRiskTwo = two.atRisk(age);
            int atRisk = atRiskOne + atRiskTwo;
            int failed = one.failures(age) + two.failures(age);
            failuresOne += one.failures(age);
            failuresTwo += two.failures(age);
            double shareOne = (double) atRiskOne / atRisk;
            expectedOne += failed * shareOne;
            expectedTwo += failed * (1 - shareOne);
            if (atRisk > 1) {
                variance += failed * shareOne * (1 - shareOne) * (atRisk - failed) / (atRisk - 1.0);
            }
        }
        double difference = failuresOne - expectedOne;
        double chiSquared = variance > 0 ? difference * difference / variance : 0;
        double probability = 1 - new ChiSquaredDistribution(1).cumulativeProbability(chiSquared);
        return new LogRank(
                new Group(first.size(), failuresOne, expectedOne),
                new Group(second.size(), failuresTwo, expectedTwo),
                variance,
                chiSquared,
                probability);
    }

    /**
     * How many times as often the first group fails as the second, with limits: {@code exp((O1 - E1) / V)} (Peto). Good for
     * ratios up to about three, too near 1 for larger ones.
     *
     * @param confidence level, for example 0.95
     * @return the ratio's limits; from 0 to infinity when nothing can be said
     */
    public Interval hazardRatio(double confidence) {
        double z = Normal.twoSided(confidence);
        if (variance == 0) {
            return new Interval(0, Double.POSITIVE_INFINITY);
        }
        double logRatio = logRatio();
        double spread = z / Math.sqrt(variance);
        return new Interval(Math.exp(logRatio - spread), Math.exp(logRatio + spread));
    }

    /**
     * The most likely ratio of failure rates, first over second.
     *
     * @return the ratio; 1 when nothing can be said
     */
    public double hazardRatio() {
        return variance == 0 ? 1 : Math.exp(logRatio());
    }

    private double logRatio() {
        return (first.failures() - first.expected()) / variance;
    }

    /**
     * The smallest ratio of failure rates that so many failures would show four times in five (Schoenfeld 1981), at 5 %.
     * Says what a comparison that saw no difference was worth.
     *
     * @return the ratio, above 1; infinite without failures
     */
    public double smallestRatioToShow() {
        double z = Normal.twoSided(0.95) + Normal.twoSided(2 * POWER - 1);
        return variance == 0 ? Double.POSITIVE_INFINITY : Math.exp(z / Math.sqrt(variance));
    }
}
