package org.docksweep.judge;

import java.util.Arrays;
import java.util.Optional;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.PointReference;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Looks whether a curve that fits its own test point badly is the healthy curve of something else: another socket of the
 * same cabinet, or another cabinet model under a wrong label. Neither is the cabinet's fault. A label is wrong for the whole
 * cabinet: what the other test points show counts for and against it as much.
 */
final class Impostors {
    /**
     * By how much (logarithm of evidence) the other explanation must beat the best of its own, faults included: strong
     * evidence by the usual scale (Kass and Raftery 1995, from memory) is about 5; a wrong accusation of the label costs
     * a minute, a missed one a bench hour.
     */
    private static final double CLEARLY_BETTER = 8;
    /** A healthy fit that strays further needs no closer look. */
    private static final double FITS = 4;

    private final JudgeRequest request;
    private final TestPoint point;
    private final ImpedanceCurve curve;
    private final Double ambientCelsius;

    Impostors(JudgeRequest request, TestPoint point, ImpedanceCurve curve, Double ambientCelsius) {
        this.ambientCelsius = ambientCelsius;
        this.request = request;
        this.point = point;
        this.curve = curve;
    }

    /** What to tell the person. */
    record Found(Prompt prompt, Reason reason, double logEvidence) {}

    Optional<Found> find(Explanation own) {
        Found best = null;
        OtherPoints elsewhere = new OtherPoints(request, point);
        for (PointReference reference : request.references()) {
            if (reference.taught() == null || isOwn(reference)) {
                continue;
            }
            CabinetModel otherModel = request.book().cabinetModel(reference.cabinetModelCode());
            TestPoint otherPoint = otherModel.testPoint(reference.testPointCode());
            boolean sameCabinet = otherModel.code().equals(request.model().code());
            if (!comparable(curve, reference)) {
                continue;
            }
            SuspectRanking other = ranking(request, reference, ambientCelsius);
            SuspectRanking.Healthy healthy = other.healthy(curve);
            if (healthy.reducedChi2() > FITS || healthy.logEvidence() < own.logEvidence() + CLEARLY_BETTER) {
                continue;
            }
            // Whose healthy curve it is said to be, that model's own gate must pass it.
            if (TerminalsJudge.fails(other.explain(curve), request.limits(), false)) {
                continue;
            }
            if (!sameCabinet
                    && healthy.logEvidence() - own.logEvidence() + elsewhere.inFavourOf(otherModel) < CLEARLY_BETTER) {
                continue;
            }
            if (best == null || healthy.logEvidence() > best.logEvidence()) {
                best = new Found(
                        sameCabinet ? Prompt.CHECK_SOCKET : Prompt.CHECK_LABEL,
                        sameCabinet
                                ? Reason.of("judge-check-socket", otherPoint.contacts(), point.contacts())
                                : Reason.of(
                                        "judge-check-label",
                                        otherModel.name(),
                                        request.model().name()),
                        healthy.logEvidence());
            }
        }
        return Optional.ofNullable(best);
    }

    private boolean isOwn(PointReference reference) {
        return reference.cabinetModelCode().equals(request.model().code())
                && reference.testPointCode().equals(point.code());
    }

    /** How well a test point of another model, healthy, explains a curve. */
    static SuspectRanking ranking(JudgeRequest request, PointReference reference, Double ambientCelsius) {
        CabinetModel model = request.book().cabinetModel(reference.cabinetModelCode());
        TestPoint point = model.testPoint(reference.testPointCode());
        return new SuspectRanking(
                request.book(),
                model,
                point,
                Knowledge.nominal(request.book(), model, point)
                        .taughtBy(reference)
                        .at(ambientCelsius)
                        .onRig(request.repeatability(), 1));
    }

    /** Evidence compares only on the same points; a reference over another band says too little. */
    static boolean comparable(ImpedanceCurve curve, PointReference reference) {
        double[] grid = curve.frequencyHz();
        double[] other = reference.frequencyHz();
        double low = Math.max(grid[0], other[0]);
        double high = Math.min(grid[grid.length - 1], other[other.length - 1]);
        long shared = Arrays.stream(grid).filter(f -> f >= low && f <= high).count();
        return shared >= 0.7 * grid.length;
    }
}
