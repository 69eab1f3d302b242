package org.docksweep.kiosk.night;

import java.util.Map;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.sweep.CurveCorrection;

/** The rig of the night before the gate opens: calibration and check on the practice standards. */
final class NightRig {
    private NightRig() {}

    static RigStanding calibrated(Map<String, String> rigSettings, Gate gate) {
        return new RigStanding(Reason.of("dock-rig-not-calibrated"), ReadingState.WATCH, CurveCorrection.NONE);
    }
}
