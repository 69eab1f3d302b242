package org.docksweep.survival;

import java.util.List;

/**
 * Logarithm of the likelihood of a Weibull distribution for lives that ended exactly, within an interval, or not yet, some
 * watched only from an age on. Works with logarithms of age, scale and shape.
 */
final class WeibullLikelihood {
    /** {@code ln(-ln(1 - p))} of the share failed at the scale. */
    static final double AT_SCALE = 0;
    /** Below this logarithm a hazard and its probability are the same number. */
    private static final double TINY = -30;
    /** Above this logarithm nothing survives. */
    private static final double HUGE = 50;

    private final double[] exact;
    private final double[] intervalFrom;
    private final double[] intervalTo;
    private final double[] working;
    private final double[] entries;
    private final double sumOfExact;

    WeibullLikelihood(List<Lifetime> lifetimes) {
        exact = logarithms(lifetimes.stream()
                .filter(l -> l.failed() && l.aliveAge() == l.failedAge())
                .mapToDouble(Lifetime::failedAge));
        List<Lifetime> found = lifetimes.stream()
                .filter(l -> l.failed() && l.aliveAge() < l.failedAge())
                .toList();
        intervalFrom = logarithms(found.stream().mapToDouble(Lifetime::aliveAge));
        intervalTo = logarithms(found.stream().mapToDouble(Lifetime::failedAge));
        working = logarithms(lifetimes.stream().filter(l -> !l.failed()).mapToDouble(Lifetime::aliveAge));
        entries = logarithms(lifetimes.stream().mapToDouble(Lifetime::entryAge).filter(e -> e > 0));
        double sum = 0;
        for (double x : exact) {
            sum += x;
        }
        sumOfExact = sum;
    }

    private static double[] logarithms(java.util.stream.DoubleStream ages) {
        return ages.map(Math::log).toArray();
    }

    int failures() {
        return exact.length + intervalTo.length;
    }

    /** Ages of failure as logarithms; the middle of an interval on the scale of age. */
    double[] failureLogAges() {
        double[] all = new double[failures()];
        System.arraycopy(exact, 0, all, 0, exact.length);
        for (int i = 0; i < intervalTo.length; i++) {
            all[exact.length + i] = Math.log((Math.exp(intervalFrom[i]) + Math.exp(intervalTo[i])) / 2);
        }
        return all;
    }

    /**
     * The logarithm of the likelihood.
     *
     * @param logAge logarithm of the age by which a share {@code p} has failed
     * @param atShare {@code ln(-ln(1 - p))} of that share; 0 for the scale
     * @param logShape logarithm of the shape
     */
    double of(double logAge, double atShare, double logShape) {
        double shape = Math.exp(logShape);
        double logScale = logAge - atShare / shape;
        double sum = exact.length * (logShape - shape * logScale) + (shape - 1) * sumOfExact;
        for (double x : exact) {
            sum -= hazard(x, logScale, shape);
        }
        for (double x : working) {
            sum -= hazard(x, logScale, shape);
        }
        for (double x : entries) {
            sum += hazard(x, logScale, shape);
        }
        for (int i = 0; i < intervalTo.length; i++) {
            sum += -hazard(intervalFrom[i], logScale, shape)
                    + logOfFailing(intervalFrom[i], intervalTo[i], logScale, shape);
        }
        return sum;
    }

    /** {@code ln(1 - exp(-(H(to) - H(from))))}; for a tiny difference of hazards this is the logarithm of the difference. */
    private static double logOfFailing(double from, double to, double logScale, double shape) {
        double logDifference = shape * (to - logScale) + Math.log1p(-Math.exp(shape * (from - to)));
        if (logDifference < TINY) {
            return logDifference;
        }
        return Math.log(-Math.expm1(-Math.exp(logDifference)));
    }

    /**
     * Cumulative hazard; an age of 0 has the logarithm minus infinity and the hazard 0. Far beyond anything likely it goes
     * on as a straight line, so that differences of two huge hazards stay numbers.
     */
    private static double hazard(double logAge, double logScale, double shape) {
        double exponent = shape * (logAge - logScale);
        return exponent <= HUGE ? Math.exp(exponent) : Math.exp(HUGE) * (1 + exponent - HUGE);
    }
}
