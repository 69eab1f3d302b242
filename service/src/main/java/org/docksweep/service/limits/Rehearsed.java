package org.docksweep.service.limits;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.LimitRehearsal;
import org.docksweep.contract.LimitRehearsal.Why;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.judge.StoredCurve;
import org.docksweep.service.models.Models;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Priors;
import org.docksweep.sweep.CurveCorrection;

/**
 * One check-in under its own limits and under a draft. Points without a curve keep their verdict: an open or shorted load, a spoiled
 * sweep and an intermittent contact are not a matter of limits. A curve is explained once and held against both.
 *
 * @param checkIn the check-in
 * @param model its model as it is now
 * @param then limits its verdict was made with; empty when they are not on record
 * @param references references of all models in force then
 * @param baselines baselines of the cabinet in force then
 */
record Rehearsed(
        CheckInBody checkIn,
        CabinetModel model,
        Optional<LimitSet> then,
        List<PointReference> references,
        List<Baseline> baselines) {

    private static final Set<FaultKind> HEARD =
            Set.of(FaultKind.WAY_WEAK, FaultKind.WAY_REVERSED, FaultKind.COIL_RUBS, FaultKind.LOOSE_PART);

    /** What came of it: a change, a reason why nothing can be said, or neither. */
    record Outcome(LimitRehearsal.Change change, LimitRehearsal.NotJudged notJudged) {}

    /** A point under both limits. */
    private record Point(
            String code,
            Verdict before,
            Verdict after,
            boolean watchBefore,
            boolean watchAfter,
            double faultProbability,
            double misfit) {
        static Point fixed(PointJudgement judgement) {
            boolean failed = judgement.verdict() == Verdict.FAIL;
            return new Point(
                    judgement.testPointCode(),
                    judgement.verdict(),
                    judgement.verdict(),
                    false,
                    false,
                    failed ? 1 : 0,
                    0);
        }
    }

    /** Stops the work on a check-in: nothing can be said of it. */
    private static final class NothingToSay extends Exception {
        private static final long serialVersionUID = 1L;
        private final Why why;

        NothingToSay(Why why, String words) {
            super(words);
            this.why = why;
        }
    }

    Outcome under(LimitSet draft, ModelBook book, Priors priors) {
        try {
            return judged(draft, book, priors);
        } catch (NothingToSay e) {
            return new Outcome(
                    null,
                    new LimitRehearsal.NotJudged(
                            checkIn.id(),
                            checkIn.tag(),
                            checkIn.finishedAt(),
                            checkIn.verdict(),
                            e.why,
                            e.getMessage()));
        }
    }

    private Outcome judged(LimitSet draft, ModelBook book, Priors priors) throws NothingToSay {
        if (checkIn.verdict() == null) {
            throw new NothingToSay(Why.NOT_SWEPT, "nothing was swept");
        }
        LimitSet old = then.orElseThrow(() -> new NothingToSay(
                Why.LIMITS_NOT_KNOWN, "limits of version " + checkIn.limitsVersion() + " are not on record"));
        List<Point> points = new ArrayList<>();
        for (MeasurementBody measurement : lastOfEachPoint()) {
            points.add(point(measurement, old, draft, book, priors));
        }
        Verdict before = together(points.stream().map(Point::before).toList());
        if (before != checkIn.verdict()) {
            throw new NothingToSay(
                    Why.NOT_REPRODUCED,
                    "its points say " + before + " together, but it was answered " + checkIn.verdict());
        }
        Verdict after = together(points.stream().map(Point::after).toList());
        boolean watchBefore = before == Verdict.PASS && points.stream().anyMatch(Point::watchBefore);
        boolean watchAfter = after == Verdict.PASS && points.stream().anyMatch(Point::watchAfter);
        if (before == after && watchBefore == watchAfter) {
            return new Outcome(null, null);
        }
        Point deciding = points.stream()
                .filter(p -> p.before() != p.after() || p.watchBefore() != p.watchAfter())
                .max(java.util.Comparator.comparingDouble(Point::faultProbability))
                .orElseThrow();
        return new Outcome(
                new LimitRehearsal.Change(
                        checkIn.id(),
                        checkIn.tag(),
                        checkIn.modelCode(),
                        checkIn.finishedAt(),
                        before,
                        watchBefore,
                        after,
                        watchAfter,
                        deciding.code(),
                        deciding.faultProbability(),
                        deciding.misfit()),
                null);
    }

    /** A repeat replaces what was spoiled before it. */
    private Iterable<MeasurementBody> lastOfEachPoint() {
        Map<String, MeasurementBody> last = new LinkedHashMap<>();
        checkIn.measurements().forEach(m -> last.put(m.judgement().testPointCode(), m));
        return last.values();
    }

    private static Verdict together(List<Verdict> verdicts) {
        return verdicts.contains(Verdict.FAIL)
                ? Verdict.FAIL
                : verdicts.contains(Verdict.SWEEP_AGAIN) ? Verdict.SWEEP_AGAIN : Verdict.PASS;
    }

    private Point point(MeasurementBody measurement, LimitSet old, LimitSet draft, ModelBook book, Priors priors)
            throws NothingToSay {
        PointJudgement stored = measurement.judgement();
        TestPoint point = testPoint(stored.testPointCode());
        if (point.kind() == TestPointKind.LINE_INPUT) {
            throw new NothingToSay(Why.SOUND, "test point " + point.code() + " was judged by the sound alone");
        }
        boolean spoiled = stored.verdict() == Verdict.SWEEP_AGAIN
                && stored.prompt() != Prompt.CHECK_LABEL
                && stored.prompt() != Prompt.CHECK_SOCKET;
        if (stored.reason().key().equals("judge-no-reference")) {
            throw new NothingToSay(Why.NO_REFERENCE, "test point " + point.code() + " had no reference then");
        }
        if (stored.impedance() == null || spoiled || stored.reason().key().equals("verdict-intermittent-contact")) {
            return Point.fixed(stored);
        }
        StoredCurve curve = curve(measurement, point, draft, book, priors);
        Verdict before = curve.under(old);
        Verdict after = curve.under(draft);
        boolean heard = stored.verdict() == Verdict.FAIL
                && !stored.suspects().isEmpty()
                && HEARD.contains(stored.suspects().get(0).kind())
                && before == Verdict.PASS;
        boolean soundLimitsMoved =
                draft.wayLevelLimitDb() != old.wayLevelLimitDb() || draft.guardFactor() != old.guardFactor();
        if (after == Verdict.PASS && (heard || stored.acoustic() != null && soundLimitsMoved)) {
            throw new NothingToSay(
                    Why.SOUND, "the curve of test point " + point.code() + " passes, but the sound counts as well");
        }
        if (!heard && before != stored.verdict()) {
            throw new NothingToSay(
                    Why.NOT_REPRODUCED,
                    "test point " + point.code() + " was answered " + stored.verdict() + ", but comes out as " + before
                            + " with what is on record now");
        }
        return new Point(
                point.code(),
                stored.verdict(),
                after,
                curve.watch(old),
                curve.watch(draft),
                curve.faultProbability(),
                curve.misfit());
    }

    private TestPoint testPoint(String code) throws NothingToSay {
        try {
            return model.testPoint(code);
        } catch (IllegalArgumentException e) {
            throw new NothingToSay(Why.MODEL_CHANGED, e.getMessage());
        }
    }

    private StoredCurve curve(
            MeasurementBody measurement, TestPoint point, LimitSet draft, ModelBook book, Priors priors)
            throws NothingToSay {
        boolean taught = references.stream()
                .anyMatch(r -> r.cabinetModelCode().equals(model.code())
                        && r.testPointCode().equals(point.code()));
        if (!taught) {
            throw new NothingToSay(Why.NO_REFERENCE, "test point " + point.code() + " has no reference from then");
        }
        List<PointReference> fitting = references.stream()
                .filter(r ->
                        book.cabinetModels().stream().anyMatch(m -> m.code().equals(r.cabinetModelCode())))
                .toList();
        try {
            return new StoredCurve(
                    new JudgeRequest(book, model, List.of(), CurveCorrection.NONE, fitting, baselines, draft, priors),
                    point,
                    measurement.judgement().impedance(),
                    measurement.ambientCelsius());
        } catch (IllegalArgumentException e) {
            boolean changed = String.valueOf(e.getMessage()).contains("another version of the model");
            throw new NothingToSay(
                    changed ? Why.MODEL_CHANGED : Why.CURVE_UNUSABLE,
                    "test point " + point.code() + ": " + e.getMessage());
        }
    }

    static List<PointReference> inForce(List<Models.Revision> revisions, Instant at) {
        Map<List<String>, PointReference> newest = new LinkedHashMap<>();
        revisions.stream()
                .filter(r -> r.storedAt().isBefore(at))
                .map(Models.Revision::reference)
                .forEach(r -> newest.put(List.of(r.cabinetModelCode(), r.testPointCode()), r));
        return List.copyOf(newest.values());
    }
}
