package org.docksweep.kiosk.dock;

import org.docksweep.fleet.TestPoint;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;

/** What the dock asks of measurement and judgement. */
public interface Gate {
    /**
     * The quiet probe before a sweep.
     *
     * @param point test point
     * @param sampleRateHz sample rate of the rig
     * @return what to play
     */
    SweepPlan probe(TestPoint point, int sampleRateHz);

    /**
     * The sweep of the gate.
     *
     * @param point test point
     * @param sampleRateHz sample rate of the rig
     * @return what to play
     */
    SweepPlan sweep(TestPoint point, int sampleRateHz);

    /**
     * The sweep of the gate at no more than the level of the probe, for loads that looked open or shorted.
     *
     * @param point test point
     * @param sampleRateHz sample rate of the rig
     * @return what to play
     */
    SweepPlan quietSweep(TestPoint point, int sampleRateHz);

    /**
     * Looks at a probe.
     *
     * @param probe its capture
     * @return what it says
     */
    SweepAnalysis analyse(Capture probe);

    /**
     * Judges.
     *
     * @param request everything the judgement depends on
     * @return the judgement
     */
    CabinetJudgement judge(JudgeRequest request);
}
