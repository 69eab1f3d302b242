package org.docksweep.service.reliability;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.docksweep.contract.ReliabilityReport.Comparison;
import org.docksweep.contract.ReliabilityReport.Group;
import org.docksweep.contract.ReliabilityReport.Weibull;
import org.docksweep.fleet.Reason;

/** Says the figures of a driver model in words, most important first. Small numbers are said to be small. */
final class ReliabilityWords {
    /** From this share of early failures on, and two of them, they are pointed out. Common practice, no source. */
    private static final double EARLY_SHARE = 0.2;

    private ReliabilityWords() {}

    static List<Reason> of(Group all, Comparison comparison) {
        List<Reason> words = new ArrayList<>();
        words.add(life(all));
        if (all.weibull() != null) {
            words.add(shape(all.weibull()));
        }
        if (all.earlyFailures() >= 2 && all.earlyFailures() >= EARLY_SHARE * all.failures()) {
            words.add(Reason.of("reliability-early", count(all.earlyFailures()), count(all.failures())));
        }
        if (comparison != null) {
            words.add(compared(comparison));
        }
        if (all.withoutAge() > 0) {
            words.add(Reason.of("reliability-without-age", count(all.withoutAge()), count(all.parts())));
        }
        return words;
    }

    private static Reason life(Group all) {
        Weibull weibull = all.weibull();
        if (weibull == null) {
            return all.rateUpper() == null
                    ? Reason.of("reliability-nothing", count(all.parts()))
                    : Reason.of(
                            "reliability-too-few", count(all.failures()), count(all.parts()), digits(all.rateUpper()));
        }
        if (weibull.tenPercentUpper() == null || weibull.tenPercentLower() == null) {
            return Reason.of("reliability-tenth-open", weeks(weibull.tenPercentWeeks()), count(all.failures()));
        }
        return Reason.of(
                "reliability-tenth",
                weeks(weibull.tenPercentWeeks()),
                weeks(weibull.tenPercentLower()),
                weeks(weibull.tenPercentUpper()),
                count(all.failures()));
    }

    private static Reason shape(Weibull weibull) {
        if (weibull.shapeLower() != null && weibull.shapeLower() > 1) {
            return Reason.of("reliability-wears");
        }
        if (weibull.shapeUpper() != null && weibull.shapeUpper() < 1) {
            return Reason.of("reliability-young");
        }
        return Reason.of("reliability-age-unclear");
    }

    private static Reason compared(Comparison comparison) {
        String ratio = digits(comparison.ratio());
        return switch (comparison.outcome()) {
            case TOO_FEW ->
                Reason.of(
                        "reliability-compare-too-few",
                        count(comparison.originalFailures()),
                        count(comparison.aftermarketFailures()));
            case NO_DIFFERENCE_SEEN -> Reason.of("reliability-compare-none", digits(comparison.smallestRatioToShow()));
            case ORIGINAL_LASTS_LONGER ->
                Reason.of(
                        "reliability-compare-original",
                        ratio,
                        digits(comparison.ratioLower()),
                        digits(comparison.ratioUpper()),
                        oneIn(comparison.probability()));
            case AFTERMARKET_LASTS_LONGER ->
                Reason.of(
                        "reliability-compare-aftermarket",
                        digits(1 / comparison.ratio()),
                        digits(1 / comparison.ratioUpper()),
                        digits(1 / comparison.ratioLower()),
                        oneIn(comparison.probability()));
        };
    }

    private static String oneIn(double probability) {
        double comparisons = 1 / Math.max(probability, 1e-4);
        return String.format(Locale.ROOT, "%.0f", comparisons);
    }

    private static String count(int count) {
        return Integer.toString(count);
    }

    private static String weeks(double weeks) {
        return String.format(Locale.ROOT, weeks < 10 ? "%.1f" : "%.0f", weeks);
    }

    private static String digits(double value) {
        return String.format(Locale.ROOT, value < 10 ? "%.1f" : "%.0f", value);
    }
}
