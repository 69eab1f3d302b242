package org.docksweep.survival;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.distribution.continuous.ChiSquaredDistribution;
import org.hipparchus.distribution.continuous.TDistribution;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;

/**
 * A Weibull distribution fitted by maximum likelihood to lives that ended exactly, within an interval, or not yet, some of
 * them watched only from an age on.
 *
 * <p>Intervals are those of the profile likelihood: all values whose best likelihood, {@code 2 (l_max - l)}, stays below a
 * threshold. The usual threshold is the quantile of chi squared with one degree of freedom, which is right for many
 * failures and too narrow for few. Used here is {@code r ln(1 + t^2 / (r - 1))} with the number of failures {@code r} and
 * Student's {@code t} for {@code r - 1} degrees of freedom: exact for the mean of a normal sample of {@code r}, and by
 * simulation good for Weibull lives (figures in the documentation).
 *
 * @param weibull most likely distribution
 * @param parts number of parts
 * @param failures failures among them
 * @param logLikelihood logarithm of the likelihood at the maximum
 * @param confidence level of the intervals
 * @param shape interval of the shape
 * @param scale interval of the scale
 * @param tenPercentAge interval of the age by which a tenth have failed (B10)
 */
public record WeibullFit(
        Weibull weibull,
        int parts,
        int failures,
        double logLikelihood,
        double confidence,
        Interval shape,
        Interval scale,
        Interval tenPercentAge)
        implements WeibullAnswer {
    /** With fewer failures nothing is fitted: any answer would be made up. Common practice, no source. */
    public static final int FEWEST_FAILURES = 4;

    private static final double TENTH = Math.log(-Math.log1p(-0.1));
    private static final double LOWEST_LOG_SHAPE = Math.log(0.05);
    private static final double HIGHEST_LOG_SHAPE = Math.log(60);
    /** Ages beyond the oldest failure by more than this factor (as logarithm) are called unbounded. */
    private static final double FARTHEST = Math.log(1e4);

    private static final int MOST_EVALUATIONS = 2_000;

    /** How far below its maximum the likelihood may lie within an interval. */
    enum Threshold {
        /** Quantile of chi squared with one degree of freedom. */
        MANY_FAILURES,
        /** Widened for few failures. */
        FEW_FAILURES;

        double of(double confidence, int failures) {
            if (this == MANY_FAILURES) {
                return new ChiSquaredDistribution(1).inverseCumulativeProbability(confidence);
            }
            double t = new TDistribution(failures - 1.0).inverseCumulativeProbability(0.5 + confidence / 2);
            return failures * Math.log1p(t * t / (failures - 1));
        }
    }

    /**
     * Fits.
     *
     * @param lifetimes lives of the parts, in any order
     * @param confidence level of the two-sided intervals, between 0 and 1
     * @return a fit, or why there is none
     */
    public static WeibullAnswer of(List<Lifetime> lifetimes, double confidence) {
        return of(lifetimes, confidence, Threshold.FEW_FAILURES);
    }

    static WeibullAnswer of(List<Lifetime> lifetimes, double confidence, Threshold threshold) {
        Normal.twoSided(confidence);
        WeibullLikelihood likelihood = new WeibullLikelihood(lifetimes);
        int failures = likelihood.failures();
        if (failures < FEWEST_FAILURES) {
            return new Unsettled(Why.TOO_FEW_FAILURES, failures);
        }
        return new Fitter(likelihood).fit(lifetimes.size(), confidence, threshold);
    }

    private static final class Fitter {
        private final WeibullLikelihood likelihood;
        private final double lowestLogAge;
        private final double highestLogAge;

        Fitter(WeibullLikelihood likelihood) {
            this.likelihood = likelihood;
            double[] ages = likelihood.failureLogAges();
            lowestLogAge = Arrays.stream(ages).min().orElseThrow() - FARTHEST;
            highestLogAge = Arrays.stream(ages).max().orElseThrow() + FARTHEST;
        }

        WeibullAnswer fit(int parts, double confidence, Threshold threshold) {
            UnivariatePointValuePair best =
                    highest(this::bestForShape, LOWEST_LOG_SHAPE, HIGHEST_LOG_SHAPE, Math.log(1.5));
            double logShape = best.getPoint();
            double logScale = highest(
                            s -> likelihood.of(s, WeibullLikelihood.AT_SCALE, logShape), lowestLogAge, highestLogAge)
                    .getPoint();
            if (logShape > HIGHEST_LOG_SHAPE - 0.1
                    || logShape < LOWEST_LOG_SHAPE + 0.1
                    || logScale > highestLogAge - 0.1) {
                return new Unsettled(Why.NO_MAXIMUM, likelihood.failures());
            }
            Weibull weibull = new Weibull(Math.exp(logShape), Math.exp(logScale));
            double floor = best.getValue() - threshold.of(confidence, likelihood.failures()) / 2;
            return new WeibullFit(
                    weibull,
                    parts,
                    likelihood.failures(),
                    best.getValue(),
                    confidence,
                    interval(this::bestForShape, logShape, floor, LOWEST_LOG_SHAPE, HIGHEST_LOG_SHAPE),
                    interval(
                            a -> bestForAge(a, WeibullLikelihood.AT_SCALE),
                            logScale,
                            floor,
                            lowestLogAge,
                            highestLogAge),
                    interval(
                            a -> bestForAge(a, TENTH), Math.log(weibull.age(0.1)), floor, lowestLogAge, highestLogAge));
        }

        private double bestForShape(double logShape) {
            return highest(s -> likelihood.of(s, WeibullLikelihood.AT_SCALE, logShape), lowestLogAge, highestLogAge)
                    .getValue();
        }

        private double bestForAge(double logAge, double atShare) {
            return highest(s -> likelihood.of(logAge, atShare, s), LOWEST_LOG_SHAPE, HIGHEST_LOG_SHAPE)
                    .getValue();
        }

        private static UnivariatePointValuePair highest(DoubleUnaryOperator function, double from, double to) {
            return highest(function, from, to, (from + to) / 2);
        }

        private static UnivariatePointValuePair highest(
                DoubleUnaryOperator function, double from, double to, double start) {
            return new BrentOptimizer(1e-9, 1e-10)
                    .optimize(
                            new MaxEval(MOST_EVALUATIONS),
                            GoalType.MAXIMIZE,
                            new UnivariateObjectiveFunction(function::applyAsDouble),
                            new SearchInterval(from, to, start));
        }

        /** Ends of the range around the maximum within which a profile stays above a floor; zero or infinite if none. */
        private static Interval interval(
                DoubleUnaryOperator profile, double at, double floor, double lowest, double highest) {
            double lower = end(profile, at, floor, lowest);
            double upper = end(profile, at, floor, highest);
            return new Interval(
                    Double.isNaN(lower) ? 0 : Math.exp(lower),
                    Double.isNaN(upper) ? Double.POSITIVE_INFINITY : Math.exp(upper));
        }

        private static double end(DoubleUnaryOperator profile, double at, double floor, double farthest) {
            double inside = at;
            double step = Math.signum(farthest - at) * 0.05;
            while (true) {
                double outside = Math.abs(farthest - at) < Math.abs(step) ? farthest : at + step;
                if (profile.applyAsDouble(outside) < floor) {
                    double from = Math.min(inside, outside);
                    double to = Math.max(inside, outside);
                    return new BrentSolver(1e-8)
                            .solve(MOST_EVALUATIONS, x -> profile.applyAsDouble(x) - floor, from, to);
                }
                if (outside == farthest) {
                    return Double.NaN;
                }
                inside = outside;
                step *= 2;
            }
        }
    }
}
