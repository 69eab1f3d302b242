package org.docksweep.gate;

import org.hipparchus.distribution.continuous.NormalDistribution;

/**
 * Conformance to a limit under uncertainty, after JCGM 106:2012: what is known of a measured quantity is a normal distribution around
 * the reading.
 */
public final class Conformance {
    private static final NormalDistribution STANDARD = new NormalDistribution(0, 1);

    private Conformance() {}

    /**
     * Probability that the quantity lies within an interval.
     *
     * @param low lower end, or negative infinity
     * @param high upper end, or positive infinity
     * @param reading reading, in the same unit
     * @param standardUncertainty its standard uncertainty, greater than 0
     * @return conformance probability (clause 7)
     */
    public static double probabilityWithin(double low, double high, double reading, double standardUncertainty) {
        double upper = STANDARD.cumulativeProbability((high - reading) / standardUncertainty);
        return upper - STANDARD.cumulativeProbability((low - reading) / standardUncertainty);
    }

    /**
     * A tolerance limit drawn in by a guard band: readings up to it are accepted (clause 8).
     *
     * @param upperLimit upper tolerance limit
     * @param guardFactor width of the guard band in standard uncertainties, negative for guarded rejection
     * @param standardUncertainty standard uncertainty of a reading at least 0
     * @return acceptance limit
     */
    public static double acceptanceLimit(double upperLimit, double guardFactor, double standardUncertainty) {
        return upperLimit - guardFactor * standardUncertainty;
    }
}
