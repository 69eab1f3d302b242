package org.docksweep.paper;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.docksweep.contract.ReliabilityReport;
import org.docksweep.contract.ReliabilityReport.CauseRow;
import org.docksweep.contract.ReliabilityReport.Comparison;
import org.docksweep.contract.ReliabilityReport.DriverRow;
import org.docksweep.contract.ReliabilityReport.Group;
import org.docksweep.contract.ReliabilityReport.Outcome;
import org.docksweep.contract.ReliabilityReport.Point;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.Reason;
import org.docksweep.survival.Lifetime;
import org.docksweep.survival.SurvivalCurve;
import org.docksweep.survival.WeibullAnswer;

/** An invented report: one driver model with two sources, one with two failures, one without any. */
final class SampleReliability {
    private SampleReliability() {}

    static ReliabilityReport report() {
        SurvivalCurve original = curve(90, 190, 3);
        SurvivalCurve aftermarket = curve(60, 95, 4);
        DriverRow much = new DriverRow(
                "SPRAY-1",
                "one-inch compression driver",
                List.of(
                        Reason.of("reliability-tenth", "38", "27", "50", "74"),
                        Reason.of("reliability-wears"),
                        Reason.of("reliability-early", "15", "74"),
                        Reason.of("reliability-compare-original", "2.1", "1.3", "3.5", "640")),
                group(null, original, fit(38, 27.0, 50.0), null),
                List.of(
                        group(PartSource.ORIGINAL, original, fit(52, 36.0, 70.0), null),
                        group(PartSource.AFTERMARKET, aftermarket, fit(22, 14.0, null), null)),
                new Comparison(Outcome.ORIGINAL_LASTS_LONGER, 36, 49.2, 38, 24.8, 10.6, 0.0011, 2.1, 1.3, 3.5, 2.0),
                List.of(
                        new CauseRow(ConfirmedCause.LEAD_IN_JOINT, 41, 17, 24),
                        new CauseRow(ConfirmedCause.COIL_BURNT, 20, 12, 8),
                        new CauseRow(null, 13, 7, 6)));
        SurvivalCurve few = SurvivalCurve.of(
                List.of(
                        Lifetime.failedAt(30),
                        Lifetime.failedAt(71),
                        Lifetime.workedUntil(60),
                        Lifetime.workedUntil(90)),
                0.95);
        DriverRow little = new DriverRow(
                "DUNE-12",
                "twelve-inch woofer",
                List.of(Reason.of("reliability-too-few", "2", "4", "28")),
                group(null, few, null, WeibullAnswer.Why.TOO_FEW_FAILURES),
                List.of(),
                null,
                List.of(new CauseRow(ConfirmedCause.COIL_OPEN, 2, 0, 0)));
        return new ReliabilityReport(
                "Marram Coast Hire", Instant.parse("2026-10-18T01:00:00Z"), 0.95, List.of(much, little));
    }

    private static ReliabilityReport.Weibull fit(double tenth, Double lower, Double upper) {
        return new ReliabilityReport.Weibull(1.4, 1.1, 1.8, 190, 150.0, 240.0, tenth, lower, upper);
    }

    private static SurvivalCurve curve(int parts, double scale, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < parts; i++) {
            double life = scale * Math.pow(-Math.log(1 - random.nextDouble()), 1 / 1.4);
            double watched = 200 * random.nextDouble();
            lives.add(life < watched ? Lifetime.failedAt(Math.max(0.2, life)) : Lifetime.workedUntil(watched));
        }
        return SurvivalCurve.of(lives, 0.95);
    }

    private static Group group(
            PartSource source, SurvivalCurve curve, ReliabilityReport.Weibull weibull, WeibullAnswer.Why why) {
        return new Group(
                source,
                curve.parts(),
                curve.parts() - curve.failures(),
                curve.failures(),
                curve.failures() / 5,
                0,
                9_120,
                1_310,
                4.1,
                2.9,
                5.6,
                curve.median().isPresent() ? curve.median().getAsDouble() : null,
                curve.steps().stream()
                        .map(s -> new Point(
                                s.age(),
                                s.atRisk(),
                                s.failures(),
                                s.survival(),
                                s.limits().lower(),
                                s.limits().upper()))
                        .toList(),
                weibull,
                why,
                4_200.0,
                116_000.0);
    }
}
