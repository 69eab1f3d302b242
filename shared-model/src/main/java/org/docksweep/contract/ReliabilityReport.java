package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;
import org.docksweep.survival.WeibullAnswer;

/**
 * How long moving parts last, per driver model and source. Ages are weeks since fitting.
 *
 * @param siteName the house
 * @param asOf when this was true
 * @param confidence level of all limits, 0 to 1
 * @param drivers one entry per driver model with parts on record, the most failures first
 */
public record ReliabilityReport(String siteName, Instant asOf, double confidence, List<DriverRow> drivers) {

    /**
     * One driver model.
     *
     * @param driverModelCode driver model
     * @param driverModelName its name
     * @param words what the figures say, most important first
     * @param all all its parts
     * @param groups its parts by source, original first; parts of unknown source last
     * @param comparison original against aftermarket, or null when one of them has no part with a known age
     * @param causes failures by cause, most frequent first
     */
    public record DriverRow(
            String driverModelCode,
            String driverModelName,
            List<Reason> words,
            Group all,
            List<Group> groups,
            Comparison comparison,
            List<CauseRow> causes) {}

    /**
     * Parts counted together.
     *
     * @param source source, or null for all, or where it is not known
     * @param parts parts on record
     * @param inService those in service
     * @param failures those that failed
     * @param earlyFailures those of them that failed before their first good return or within four weeks
     * @param withoutAge parts whose age is not known; they count in nothing below
     * @param partWeeks weeks watched, over all parts
     * @param returns returns of their cabinets, over all parts
     * @param failuresPerThousandWeeks failures per thousand part-weeks, or null when none were watched
     * @param rateLower lower limit of it, or null
     * @param rateUpper upper limit of it, or null
     * @param medianWeeks age by which half have failed as the curve has it, or null when it does not fall so far
     * @param curve share that works by age, with limits; the last point may have no failure and says how far it holds
     * @param weibull fitted distribution, or null
     * @param noWeibull why there is none, or null
     * @param unitCostCents mean cost of a part in hundredths of the house's currency, or null when not known
     * @param costPerThousandReturnsCents cost of the failed parts per thousand returns, or null
     */
    public record Group(
            PartSource source,
            int parts,
            int inService,
            int failures,
            int earlyFailures,
            int withoutAge,
            double partWeeks,
            long returns,
            Double failuresPerThousandWeeks,
            Double rateLower,
            Double rateUpper,
            Double medianWeeks,
            List<Point> curve,
            Weibull weibull,
            WeibullAnswer.Why noWeibull,
            Double unitCostCents,
            Double costPerThousandReturnsCents) {}

    /**
     * A step of the survival curve.
     *
     * @param weeks age
     * @param atRisk parts at risk just before
     * @param failures failures found at this age
     * @param survival share that works after it, 0 to 1
     * @param lower lower limit
     * @param upper upper limit
     */
    public record Point(double weeks, int atRisk, int failures, double survival, double lower, double upper) {}

    /**
     * A Weibull distribution with limits; a limit is null where the data set none.
     *
     * @param shape shape
     * @param shapeLower its lower limit
     * @param shapeUpper its upper limit
     * @param scaleWeeks age by which 63.2 % have failed
     * @param scaleLower its lower limit
     * @param scaleUpper its upper limit
     * @param tenPercentWeeks age by which a tenth have failed
     * @param tenPercentLower its lower limit
     * @param tenPercentUpper its upper limit
     */
    public record Weibull(
            double shape,
            Double shapeLower,
            Double shapeUpper,
            double scaleWeeks,
            Double scaleLower,
            Double scaleUpper,
            double tenPercentWeeks,
            Double tenPercentLower,
            Double tenPercentUpper) {}

    /**
     * Original against aftermarket, by the log-rank test.
     *
     * @param outcome what it says
     * @param originalFailures failures of originals
     * @param originalExpected failures of originals if both lasted alike
     * @param aftermarketFailures failures of aftermarket parts
     * @param aftermarketExpected failures of aftermarket parts if both lasted alike
     * @param chiSquared test value, one degree of freedom
     * @param probability probability of such a difference between parts that last alike
     * @param ratio how many times as often aftermarket parts fail
     * @param ratioLower its lower limit
     * @param ratioUpper its upper limit, or null where the data set none
     * @param smallestRatioToShow smallest true ratio that so many failures would show four times in five, or null when none
     */
    public record Comparison(
            Outcome outcome,
            int originalFailures,
            double originalExpected,
            int aftermarketFailures,
            double aftermarketExpected,
            double chiSquared,
            double probability,
            double ratio,
            double ratioLower,
            Double ratioUpper,
            Double smallestRatioToShow) {}

    /** What a comparison says. */
    public enum Outcome {
        /** Too few failures for any answer. */
        TOO_FEW,
        /** No difference seen; says nothing about differences smaller than could be seen. */
        NO_DIFFERENCE_SEEN,
        ORIGINAL_LASTS_LONGER,
        AFTERMARKET_LASTS_LONGER
    }

    /**
     * Failures of one cause.
     *
     * @param cause confirmed cause, or null where none was written down
     * @param failures all of them
     * @param original of original parts
     * @param aftermarket of aftermarket parts
     */
    public record CauseRow(ConfirmedCause cause, int failures, int original, int aftermarket) {}
}
