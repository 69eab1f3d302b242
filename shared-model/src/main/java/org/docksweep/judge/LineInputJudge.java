package org.docksweep.judge;

import java.util.List;
import java.util.Optional;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.acoustic.WayBand;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.QualityIssue;
import org.docksweep.sweep.SoundPrint;
import org.docksweep.sweep.SweepAnalysis;

/**
 * Whether a powered cabinet can be judged from line input to microphone at all; {@link SoundJudge} does the rest. The
 * absolute level of the whole cabinet is not judged, since a gain knob moves it; the levels of the ways against each other
 * are.
 */
final class LineInputJudge {
    /** Gain knobs move a cabinet this far at most before it counts as silent. */
    private static final double SILENT_DB = 30;

    private final JudgeRequest request;
    private final TestPoint point;
    private final SweepAnalysis analysis;

    LineInputJudge(JudgeRequest request, TestPoint point, SweepAnalysis analysis) {
        this.request = request;
        this.point = point;
        this.analysis = analysis;
    }

    PointEvidence judge() {
        Optional<ExpectedSound> expected = ExpectedSound.of(request, point, null);
        if (!analysis.clean() && !heardAllTheSame(expected)) {
            return evidence(
                    Verdict.SWEEP_AGAIN,
                    Prompt.SWEEP_AGAIN,
                    analysis.firstIssue().orElseThrow().reason());
        }
        if (analysis.acoustic() == null || expected.isEmpty()) {
            return evidence(
                    Verdict.SWEEP_AGAIN,
                    Prompt.PERSON_DECIDES,
                    Reason.of(
                            analysis.acoustic() == null ? "judge-no-microphone" : "judge-no-reference",
                            request.model().name(),
                            point.contacts()));
        }
        List<SoundEvidence.Way> ways =
                evidence(analysis.acoustic(), expected.get()).ways();
        double loudest =
                ways.stream().mapToDouble(SoundEvidence.Way::changeDb).max().orElse(0);
        if (ways.stream().allMatch(w -> w.overNoiseDb() < SoundEvidence.HEARD_DB)) {
            boolean silent = loudest < -SILENT_DB;
            return evidence(
                    Verdict.SWEEP_AGAIN,
                    silent ? Prompt.PLUG_IN : Prompt.SWEEP_AGAIN,
                    silent ? Reason.of("judge-silent", point.contacts()) : Reason.of("judge-too-noisy"));
        }
        return evidence(Verdict.PASS, Prompt.NONE, Reason.of("verdict-pass-powered"));
    }

    /** Short noises spoil a capture, unless the sweeps agree around them or the noises are the cabinet's own. */
    private boolean heardAllTheSame(Optional<ExpectedSound> expected) {
        boolean onlyKnocks = analysis.issues().stream().allMatch(i -> i.kind() == QualityIssue.KNOCK);
        if (!onlyKnocks
                || expected.isEmpty()
                || analysis.acoustic() == null
                || analysis.acoustic().print() == null) {
            return false;
        }
        return !analysis.acoustic().print().marks().contains(SoundPrint.Mark.KNOCK)
                || evidence(analysis.acoustic(), expected.get()).touching() > 0;
    }

    private SoundEvidence evidence(AcousticCurve heard, ExpectedSound expected) {
        return new SoundEvidence(
                heard,
                expected.curve(),
                WayBand.of(request.model(), point),
                expected.wayErrorDb(),
                expected.sharedErrorDb());
    }

    private PointEvidence evidence(Verdict verdict, Prompt prompt, Reason reason) {
        return new PointEvidence(
                new PointJudgement(
                        point.code(),
                        verdict,
                        prompt,
                        reason,
                        null,
                        analysis.acoustic(),
                        List.of(),
                        List.of(),
                        List.of()),
                analysis.load(),
                0);
    }
}
