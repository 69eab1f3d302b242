package org.docksweep.paper;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Finding;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.judge.PointJudgement;

/**
 * The curve a tag shows: that of the test point that decided, with its reference.
 *
 * @param judgement judgement of the point with at least one curve
 * @param reference reference of the point, or null
 */
record CurveChoice(PointJudgement judgement, PointReference reference) {

    /** Last judgement of every test point, in the order in which the points were first swept. */
    static List<PointJudgement> lastJudgements(CheckInBody checkIn) {
        Map<String, MeasurementBody> last = new LinkedHashMap<>();
        for (MeasurementBody measurement : checkIn.measurements()) {
            last.merge(
                    measurement.judgement().testPointCode(), measurement, (a, b) -> b.attempt() >= a.attempt() ? b : a);
        }
        return last.values().stream().map(MeasurementBody::judgement).toList();
    }

    /**
     * Chooses: a failed point before others, among these one that reaches the position at fault, else the first; points
     * without a curve never.
     */
    static Optional<CurveChoice> of(CheckInBody checkIn, CabinetModel model, List<PointReference> references) {
        return lastJudgements(checkIn).stream()
                .filter(p -> p.impedance() != null || p.acoustic() != null)
                .min(Comparator.comparing((PointJudgement p) -> p.verdict() != Verdict.FAIL)
                        .thenComparing(p -> !reaches(model, p.testPointCode(), checkIn.faultPositionCode())))
                .map(p -> new CurveChoice(
                        p,
                        references.stream()
                                .filter(r -> r.cabinetModelCode().equals(checkIn.modelCode())
                                        && r.testPointCode().equals(p.testPointCode()))
                                .findFirst()
                                .orElse(null)));
    }

    private static boolean reaches(CabinetModel model, String testPointCode, String positionCode) {
        return positionCode != null
                && model.testPoint(testPointCode).positionCodes().contains(positionCode);
    }

    /** What is shown. */
    DecidingCurve shows() {
        return DecidingCurve.of(judgement);
    }

    /** The finding that decided, with its frequency range, if one is a fault and has a range. */
    Optional<Finding> decided() {
        return judgement.findings().stream()
                .filter(f -> f.severity() == ReadingState.FAULT && f.fromHz() != null && f.toHz() != null)
                .findFirst();
    }
}
