package org.docksweep.survival;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.docksweep.fleet.Require;

/**
 * The share of parts that still work at an age, by Kaplan and Meier (1958): {@code S(t)} is the product over the ages of
 * failure up to {@code t} of {@code 1 - d/n}, with {@code d} failures among {@code n} at risk. Parts that came under
 * observation at an age are at risk from then on. Failures found at a return count at the age of the finding, so the
 * curve lags by up to the time between two returns; {@link WeibullFit} does without this.
 *
 * <p>Standard error by Greenwood: {@code S sqrt(sum d / (n (n - d)))}. Limits on the scale of {@code ln(-ln S)}, so that
 * they stay between 0 and 1 (Kalbfleisch and Prentice; as in common statistics software). Where the curve has fallen to
 * 0, Greenwood's formula says nothing; the upper limit of the step before is kept there.
 *
 * @param parts number of parts
 * @param failures failures among them
 * @param confidence level of the limits
 * @param steps the curve, one step per age with failures, rising; empty without failures
 */
public record SurvivalCurve(int parts, int failures, double confidence, List<Step> steps) {

    /**
     * A step of the curve.
     *
     * @param age age of the failures
     * @param atRisk parts at risk just before
     * @param failures failures at this age
     * @param survival share that works after this age, 0 to 1
     * @param standardError Greenwood's standard error; NaN where the share is 0
     * @param limits pointwise limits of the share
     */
    public record Step(double age, int atRisk, int failures, double survival, double standardError, Interval limits) {}

    public SurvivalCurve {
        steps = Require.copy("steps of a survival curve", steps);
    }

    /**
     * Estimates the curve.
     *
     * @param lifetimes lives of the parts, in any order
     * @param confidence level of the two-sided limits, for example 0.95
     * @return the curve
     */
    public static SurvivalCurve of(List<Lifetime> lifetimes, double confidence) {
        double z = Normal.twoSided(confidence);
        RiskTable table = new RiskTable(lifetimes);
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        double upperBefore = 1;
        int failures = 0;
        for (double age : table.ages()) {
            int atRisk = table.atRisk(age);
            int failed = table.failures(age);
            failures += failed;
            survival *= 1 - (double) failed / atRisk;
            greenwood += (double) failed / ((double) atRisk * (atRisk - failed));
            double error = survival > 0 ? survival * Math.sqrt(greenwood) : Double.NaN;
            Interval limits = survival > 0 ? limits(survival, greenwood, z) : new Interval(0, upperBefore);
            upperBefore = limits.upper();
            steps.add(new Step(age, atRisk, failed, survival, error, limits));
            if (survival == 0) {
                // With late entries the product may reach 0 early; it says nothing of what comes after.
                break;
            }
        }
        return new SurvivalCurve(lifetimes.size(), failures, confidence, steps);
    }

    private static Interval limits(double survival, double greenwood, double z) {
        double spread = z * Math.sqrt(greenwood) / Math.abs(Math.log(survival));
        return new Interval(Math.pow(survival, Math.exp(spread)), Math.pow(survival, Math.exp(-spread)));
    }

    /**
     * Share that works at an age.
     *
     * @param age age
     * @return share, 1 before the first failure
     */
    public double survivalAt(double age) {
        double survival = 1;
        for (Step step : steps) {
            if (step.age() > age) {
                break;
            }
            survival = step.survival();
        }
        return survival;
    }

    /**
     * Age at which half of the parts have failed.
     *
     * @return the first age with a share of one half or less; empty when the curve does not fall so far
     */
    public OptionalDouble median() {
        return steps.stream()
                .filter(s -> s.survival() <= 0.5)
                .mapToDouble(Step::age)
                .findFirst();
    }
}
