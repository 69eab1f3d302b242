package org.docksweep.kiosk.dock;

import java.util.List;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPoint;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;

/** What the dock plays: the probe is quiet and short, the sweep goes along the level mask. */
final class DockPlans {
    private static final double PROBE_VRMS = 0.1;

    private DockPlans() {}

    static SweepPlan probe(TestPoint point, int sampleRateHz) {
        double low = Math.max(point.levelMask().lowestHz(), 200);
        double high = Math.min(Math.min(point.levelMask().highestHz(), 3000), sampleRateHz * 0.45);
        LevelMask level = new LevelMask(List.of(
                new LevelMask.Point(low, Math.min(PROBE_VRMS, point.levelMask().voltageVrmsAt(low))),
                new LevelMask.Point(high, Math.min(PROBE_VRMS, point.levelMask().voltageVrmsAt(high)))));
        return new SweepPlan(SweepSignal.synchronised(low, high, 0.4, sampleRateHz, level), 0.2, 0.3, 1);
    }

    static SweepPlan sweep(TestPoint point, int sampleRateHz) {
        double high = Math.min(point.levelMask().highestHz(), sampleRateHz * 0.45);
        return new SweepPlan(
                SweepSignal.synchronised(point.levelMask().lowestHz(), high, 2.5, sampleRateHz, point.levelMask()),
                0.3,
                0.5,
                1);
    }
}
