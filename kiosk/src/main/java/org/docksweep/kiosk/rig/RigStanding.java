package org.docksweep.kiosk.rig;

import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.CurveCorrection;

/**
 * How the rig stands: whether it may judge cabinets, and the correction its calibration gives.
 *
 * @param words in words, for the strip
 * @param state OK, WATCH when a check is due, FAULT when there is no valid one: then nothing is swept
 * @param correction correction of raw curves
 * @param refusal why nothing is swept and what to do, said when a cabinet comes while the state is FAULT
 * @param repeatability what the study in force found; {@link RigRepeatability#UNKNOWN} without one
 * @param microphoneDoubt why the microphone is not proved and what to do; powered cabinets then are not swept, and of others only
 *     the current counts. Empty when it is proved
 */
public record RigStanding(
        Reason words,
        ReadingState state,
        CurveCorrection correction,
        Reason refusal,
        RigRepeatability repeatability,
        Optional<Reason> microphoneDoubt) {
    /**
     * A standing without a book, hence without a study and with a microphone that is taken as it is; its only fault can be a failed
     * check.
     *
     * @param words in words, for the strip
     * @param state state
     * @param correction correction of raw curves
     */
    public RigStanding(Reason words, ReadingState state, CurveCorrection correction) {
        this(words, state, correction, Reason.of("dock-rig-check-failed"), RigRepeatability.UNKNOWN, Optional.empty());
    }

    /**
     * Whether cabinets may be swept.
     *
     * @return false after a failed check, without one, and when the last one is too old
     */
    public boolean maySweep() {
        return state != ReadingState.FAULT;
    }
}
