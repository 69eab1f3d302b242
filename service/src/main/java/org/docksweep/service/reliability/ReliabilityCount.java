package org.docksweep.service.reliability;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.docksweep.contract.ReliabilityReport.CauseRow;
import org.docksweep.contract.ReliabilityReport.Comparison;
import org.docksweep.contract.ReliabilityReport.DriverRow;
import org.docksweep.contract.ReliabilityReport.Group;
import org.docksweep.contract.ReliabilityReport.Outcome;
import org.docksweep.contract.ReliabilityReport.Point;
import org.docksweep.contract.ReliabilityReport.Weibull;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.PartSource;
import org.docksweep.survival.FailureRate;
import org.docksweep.survival.Interval;
import org.docksweep.survival.Lifetime;
import org.docksweep.survival.LogRank;
import org.docksweep.survival.SurvivalCurve;
import org.docksweep.survival.WeibullAnswer;
import org.docksweep.survival.WeibullFit;

/** Counts the parts of one driver model. */
final class ReliabilityCount {
    static final double CONFIDENCE = 0.95;
    /** The test's probability below which a difference is called one. */
    private static final double DIFFERENT = 0.05;
    /** A comparison with fewer failures in all, or fewer expected in a group, is not made. Common practice, no source. */
    private static final int FEWEST_COMPARED = 6;

    private static final double FEWEST_EXPECTED = 2;

    private final ZoneId zone;

    ReliabilityCount(ZoneId zone) {
        this.zone = zone;
    }

    DriverRow driver(String code, String name, List<PartHistory> parts) {
        Group all = group(null, parts);
        List<Group> groups = new ArrayList<>();
        for (PartSource source : PartSource.values()) {
            if (parts.stream().anyMatch(p -> p.life().source() == source)) {
                groups.add(group(source, from(parts, source)));
            }
        }
        if (!groups.isEmpty() && parts.stream().anyMatch(p -> p.life().source() == null)) {
            groups.add(group(null, from(parts, null)));
        }
        Comparison comparison = comparison(parts);
        return new DriverRow(code, name, ReliabilityWords.of(all, comparison), all, groups, comparison, causes(parts));
    }

    private static List<PartHistory> from(List<PartHistory> parts, PartSource source) {
        return parts.stream().filter(p -> p.life().source() == source).toList();
    }

    private List<Lifetime> lifetimes(List<PartHistory> parts) {
        return parts.stream()
                .flatMap(p -> p.lifetime(zone).stream())
                .filter(l -> l.watched() > 0)
                .toList();
    }

    private Group group(PartSource source, List<PartHistory> parts) {
        List<Lifetime> lives = lifetimes(parts);
        int aged =
                (int) parts.stream().filter(p -> p.lifetime(zone).isPresent()).count();
        int failures = (int) parts.stream().filter(p -> p.life().failed()).count();
        double partWeeks = lives.stream().mapToDouble(Lifetime::watched).sum();
        int agedFailures = (int) lives.stream().filter(Lifetime::failed).count();
        FailureRate rate = partWeeks > 0 ? new FailureRate(agedFailures, partWeeks) : null;
        Interval limits = rate == null ? null : rate.limitsPerThousandWeeks(CONFIDENCE);
        SurvivalCurve curve = SurvivalCurve.of(lives, CONFIDENCE);
        WeibullAnswer answer = WeibullFit.of(lives, CONFIDENCE);
        long returns = parts.stream().mapToLong(p -> p.life().returnCount()).sum();
        Double unitCost = meanCost(parts);
        return new Group(
                source,
                parts.size(),
                (int) parts.stream().filter(p -> p.life().endedAt() == null).count(),
                failures,
                (int) parts.stream().filter(p -> p.failedEarly(zone)).count(),
                parts.size() - aged,
                rounded(partWeeks),
                returns,
                rate == null ? null : rounded(rate.perThousandWeeks()),
                limits == null ? null : rounded(limits.lower()),
                limits == null ? null : rounded(limits.upper()),
                curve.median().isPresent() ? rounded(curve.median().getAsDouble()) : null,
                points(curve, lives),
                answer instanceof WeibullFit fit ? weibull(fit) : null,
                answer instanceof WeibullAnswer.Unsettled unsettled ? unsettled.why() : null,
                unitCost,
                unitCost == null || returns == 0 ? null : rounded(unitCost * failures * 1000 / returns));
    }

    /** The steps, and where the oldest part without failure has got to: the curve holds until there and no farther. */
    private static List<Point> points(SurvivalCurve curve, List<Lifetime> lives) {
        List<Point> points = new ArrayList<>();
        for (SurvivalCurve.Step s : curve.steps()) {
            points.add(new Point(
                    rounded(s.age()),
                    s.atRisk(),
                    s.failures(),
                    rounded(s.survival()),
                    rounded(s.limits().lower()),
                    rounded(s.limits().upper())));
        }
        double oldest = lives.stream().mapToDouble(Lifetime::endAge).max().orElse(0);
        if (!points.isEmpty() && rounded(oldest) > points.get(points.size() - 1).weeks()) {
            Point last = points.get(points.size() - 1);
            int there = (int) lives.stream().filter(l -> l.endAge() == oldest).count();
            points.add(new Point(rounded(oldest), there, 0, last.survival(), last.lower(), last.upper()));
        }
        return points;
    }

    private static Double meanCost(List<PartHistory> parts) {
        var costs = parts.stream()
                .map(p -> p.life().unitCostCents())
                .filter(Objects::nonNull)
                .mapToInt(Integer::intValue)
                .average();
        return costs.isPresent() ? rounded(costs.getAsDouble()) : null;
    }

    private static Weibull weibull(WeibullFit fit) {
        return new Weibull(
                rounded(fit.weibull().shape()),
                bound(fit.shape().lower()),
                bound(fit.shape().upper()),
                rounded(fit.weibull().scale()),
                bound(fit.scale().lower()),
                bound(fit.scale().upper()),
                rounded(fit.weibull().age(0.1)),
                bound(fit.tenPercentAge().lower()),
                bound(fit.tenPercentAge().upper()));
    }

    /** Null for an end that the data did not set: JSON knows no infinity. */
    private static Double bound(double end) {
        return end == 0 || Double.isInfinite(end) ? null : rounded(end);
    }

    private Comparison comparison(List<PartHistory> parts) {
        List<Lifetime> originals = lifetimes(from(parts, PartSource.ORIGINAL));
        List<Lifetime> others = lifetimes(from(parts, PartSource.AFTERMARKET));
        if (originals.isEmpty() || others.isEmpty()) {
            return null;
        }
        LogRank test = LogRank.of(others, originals);
        Interval ratio = test.hazardRatio(CONFIDENCE);
        double smallest = test.smallestRatioToShow();
        return new Comparison(
                outcome(test),
                test.second().failures(),
                rounded(test.second().expected()),
                test.first().failures(),
                rounded(test.first().expected()),
                rounded(test.chiSquared()),
                rounded(test.probability()),
                rounded(test.hazardRatio()),
                rounded(ratio.lower()),
                bound(ratio.upper()),
                Double.isInfinite(smallest) ? null : rounded(smallest));
    }

    private static Outcome outcome(LogRank test) {
        boolean tooFew = test.first().failures() + test.second().failures() < FEWEST_COMPARED
                || Math.min(test.first().expected(), test.second().expected()) < FEWEST_EXPECTED;
        if (tooFew) {
            return Outcome.TOO_FEW;
        }
        if (test.probability() >= DIFFERENT) {
            return Outcome.NO_DIFFERENCE_SEEN;
        }
        return test.first().failures() > test.first().expected()
                ? Outcome.ORIGINAL_LASTS_LONGER
                : Outcome.AFTERMARKET_LASTS_LONGER;
    }

    private static List<CauseRow> causes(List<PartHistory> parts) {
        Map<ConfirmedCause, int[]> counts = new HashMap<>();
        for (PartHistory part : parts) {
            if (part.life().failed()) {
                int[] count = counts.computeIfAbsent(part.life().cause(), c -> new int[3]);
                count[0]++;
                if (part.life().source() == PartSource.ORIGINAL) {
                    count[1]++;
                } else if (part.life().source() == PartSource.AFTERMARKET) {
                    count[2]++;
                }
            }
        }
        return counts.entrySet().stream()
                .map(e -> new CauseRow(e.getKey(), e.getValue()[0], e.getValue()[1], e.getValue()[2]))
                .sorted(Comparator.comparingInt(CauseRow::failures)
                        .reversed()
                        .thenComparing(r -> String.valueOf(r.cause())))
                .toList();
    }

    /** Six digits: more says nothing, and would differ between machines. */
    private static double rounded(double value) {
        return value == 0 || !Double.isFinite(value)
                ? value
                : new java.math.BigDecimal(value)
                        .round(new java.math.MathContext(6))
                        .doubleValue();
    }
}
