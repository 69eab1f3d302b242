package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.fleet.Require;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.SweepAnalysis;

/**
 * The gate: captures, calibration, model, references and limits in; curves, findings, verdict and suspects out. A pure
 * function: nothing else enters the result.
 */
public final class Judge {
    /** Version of the judgement. Changes whenever the same captures could be judged differently. */
    public static final String VERSION = "11";

    private Judge() {}

    /**
     * Judges a cabinet from the captures made so far.
     *
     * @param request everything the judgement depends on
     * @return the judgement
     * @throws IllegalArgumentException if there is no capture
     */
    public static CabinetJudgement judge(JudgeRequest request) {
        Require.notEmpty("captures", request.captures());
        List<PointEvidence> points = new ArrayList<>();
        for (JudgeRequest.PointCapture capture : request.captures()) {
            TestPoint point = request.model().testPoint(capture.testPointCode());
            SweepAnalysis analysis = SoundEar.analyser().analyse(capture.capture());
            Double ambientCelsius = capture.capture().header().ambientCelsius();
            PointEvidence evidence = point.kind() == TestPointKind.LINE_INPUT
                    ? new LineInputJudge(request, point, analysis).judge()
                    : new TerminalsJudge(request, point, analysis, ambientCelsius).judge();
            points.add(new SoundJudge(request, point, capture.capture(), analysis).combine(evidence));
        }
        return new CabinetVerdict(request, points).combine();
    }
}
