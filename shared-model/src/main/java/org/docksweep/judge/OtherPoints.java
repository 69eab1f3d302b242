package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.suspect.SuspectRanking;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;

/** What the other test points of a cabinet, as far as they have been swept, say to the claim that it is of another model. */
final class OtherPoints {
    private final JudgeRequest request;
    private final TestPoint accused;
    private List<Shown> shown;

    OtherPoints(JudgeRequest request, TestPoint accused) {
        this.request = request;
        this.accused = accused;
    }

    /** A curve, and how well the cabinet's own model explains it, faults included. */
    private record Shown(ImpedanceCurve curve, Double ambientCelsius, double ownLogEvidence) {}

    /**
     * Logarithm of evidence for another model, healthy, against the cabinet's own; points that the other model was not taught at say
     * nothing.
     */
    double inFavourOf(CabinetModel other) {
        double sum = 0;
        for (Shown point : shown()) {
            sum += request.references().stream()
                    .filter(r -> r.taught() != null
                            && r.cabinetModelCode().equals(other.code())
                            && Impostors.comparable(point.curve(), r))
                    .mapToDouble(r -> Impostors.ranking(request, r, point.ambientCelsius())
                            .healthy(point.curve())
                            .logEvidence())
                    .max()
                    .stream()
                    .map(evidence -> evidence - point.ownLogEvidence())
                    .sum();
        }
        return sum;
    }

    /** Explained once, and only when somebody is accused at all. */
    private List<Shown> shown() {
        if (shown == null) {
            shown = new ArrayList<>();
            for (JudgeRequest.PointCapture swept : request.captures()) {
                TestPoint point = request.model().testPoint(swept.testPointCode());
                if (!point.code().equals(accused.code()) && point.kind() != TestPointKind.LINE_INPUT) {
                    show(point, swept);
                }
            }
        }
        return shown;
    }

    private void show(TestPoint point, JudgeRequest.PointCapture swept) {
        SweepAnalysis analysis = SoundEar.analyser().analyse(swept.capture());
        if (!analysis.clean() || analysis.load() != SweepAnalysis.Load.PRESENT) {
            return;
        }
        Double ambientCelsius = swept.capture().header().ambientCelsius();
        ImpedanceCurve curve = TerminalsJudge.rounded(request.correction().correct(analysis.impedance()));
        TerminalsJudge.ownReference(request, point).ifPresent(reference -> {
            double own = new SuspectRanking(
                            request.book(),
                            request.model(),
                            point,
                            TerminalsJudge.ownKnowledge(request, point, reference, ambientCelsius),
                            request.priors())
                    .explain(curve)
                    .logEvidence();
            shown.add(new Shown(curve, ambientCelsius, own));
        });
    }
}
