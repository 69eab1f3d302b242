package org.docksweep.kiosk.rig;

import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.CurveCorrection;

/**
 * How the rig stands: whether it may judge cabinets, and the correction its calibration gives.
 *
 * @param words in words, for the strip
 * @param state OK, WATCH when a check is due, FAULT when the check failed: then nothing is swept
 * @param correction correction of raw curves
 */
public record RigStanding(Reason words, ReadingState state, CurveCorrection correction) {
    /**
     * Whether cabinets may be swept.
     *
     * @return false after a failed check
     */
    public boolean maySweep() {
        return state != ReadingState.FAULT;
    }
}
