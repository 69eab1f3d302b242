package org.docksweep.survival;

import org.docksweep.fleet.Require;

/**
 * The Weibull distribution: {@code S(t) = exp(-(t / scale)^shape)}. A shape below 1 means that new parts fail most, 1 that
 * age does not matter, above 1 that parts wear out.
 *
 * @param shape shape, without unit, greater than 0
 * @param scale age by which {@code 1 - 1/e} (63.2 %) have failed, greater than 0
 */
public record Weibull(double shape, double scale) {
    public Weibull {
        Require.positive("shape of a Weibull distribution", shape);
        Require.positive("scale of a Weibull distribution", scale);
    }

    /**
     * Share that works at an age.
     *
     * @param age age, at least 0
     * @return share, 0 to 1
     */
    public double survival(double age) {
        return Math.exp(-Math.pow(Require.notNegative("age", age) / scale, shape));
    }

    /**
     * Age by which a share has failed: {@code scale (-ln(1 - p))^(1/shape)}.
     *
     * @param failedShare share, between 0 and 1, both excluded
     * @return the age; for 0.1 the one usually written B10
     */
    public double age(double failedShare) {
        if (!(failedShare > 0 && failedShare < 1)) {
            throw new IllegalArgumentException("share failed must lie between 0 and 1, but is " + failedShare);
        }
        return scale * Math.pow(-Math.log1p(-failedShare), 1 / shape);
    }
}
