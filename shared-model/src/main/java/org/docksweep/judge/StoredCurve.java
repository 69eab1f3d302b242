package org.docksweep.judge;

import java.util.Optional;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.suspect.Explanation;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * A curve that was measured some time ago, to be judged again under other limits. The explanation is computed once; limits only decide
 * what follows from it. What needs the capture itself (an intermittent contact, the sound) is not judged here.
 */
public final class StoredCurve {
    private final JudgeRequest request;
    private final TestPoint point;
    private final ImpedanceCurve curve;
    private final Double ambientCelsius;
    private final Explanation explanation;
    private final boolean ownBaseline;
    private Optional<Impostors.Found> impostor;

    /**
     * Explains the curve.
     *
     * @param request models, references, baselines, priors; no captures, and its limits do not matter
     * @param point test point with terminals, of the request's model
     * @param curve calibrated impedance as stored
     * @param ambientCelsius air temperature, or null
     * @throws IllegalArgumentException if the point has no reference, or one for another version of the model
     */
    public StoredCurve(JudgeRequest request, TestPoint point, ImpedanceCurve curve, Double ambientCelsius) {
        this.request = request;
        this.point = point;
        this.curve = curve;
        this.ambientCelsius = ambientCelsius;
        PointReference reference = request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code()))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException(
                        "model " + request.model().code() + " has no reference at test point " + point.code()));
        Knowledge taught =
                Knowledge.nominal(request.book(), request.model(), point).taughtBy(reference);
        Optional<Baseline> own = request.baselines().stream()
                .filter(b -> b.testPointCode().equals(point.code()) && b.impedance() != null)
                .findFirst();
        this.ownBaseline = own.isPresent();
        this.explanation = new SuspectRanking(
                        request.book(),
                        request.model(),
                        point,
                        own.map(taught::sharpenedBy).orElse(taught).at(ambientCelsius),
                        request.priors())
                .explain(curve);
    }

    /**
     * The verdict of the point under limits.
     *
     * @param limits limits
     * @return PASS, FAIL, or SWEEP_AGAIN where it is rather the healthy curve of something else
     */
    public Verdict under(LimitSet limits) {
        if (!TerminalsJudge.fails(explanation, limits, ownBaseline)) {
            return Verdict.PASS;
        }
        if (impostor == null) {
            impostor = new Impostors(request, point, curve, ambientCelsius).find(explanation);
        }
        return impostor.isPresent() ? Verdict.SWEEP_AGAIN : Verdict.FAIL;
    }

    /**
     * Whether a pass gets a watch mark.
     *
     * @param limits limits
     * @return true if so
     */
    public boolean watch(LimitSet limits) {
        return TerminalsJudge.watch(explanation, limits);
    }

    /**
     * Probability that something is wrong.
     *
     * @return 0 to 1
     */
    public double faultProbability() {
        return explanation.faultProbability();
    }

    /**
     * What the best explanation leaves over.
     *
     * @return reduced chi squared, as {@link Explanation#reducedChi2()}
     */
    public double misfit() {
        return explanation.reducedChi2();
    }
}
