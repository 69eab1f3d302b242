package org.docksweep.kiosk.rig;

import java.util.List;

/** A step of a walk along the rig: something is plugged, then measured and judged at once. */
public enum WalkStep {
    /** Both wires of the current input on the cabinet's side of the sense resistor. */
    COMMON_MODE,
    /** Far plug in the air. */
    OPEN,
    /** Far plug shorted. */
    SHORT,
    /** Known resistor at the far plug. */
    LOAD,
    /** The short plug again, behind the calibration: what is left is the contact of the dock's plug. */
    PLUG,
    /** Second resistor. */
    CHECK_RESISTOR,
    /** Resistor and capacitor. */
    CHECK_NETWORK,
    /** First part of a repeatability study. */
    STUDY_FIRST,
    /** Second part of a repeatability study. */
    STUDY_SECOND,
    /** The known cabinet at its marked spot, for the microphone. */
    SOUND;

    /** Steps of a calibration; the check closes it, so that nothing is gated on an unchecked one. */
    public static final List<WalkStep> CALIBRATION =
            List.of(COMMON_MODE, OPEN, SHORT, LOAD, CHECK_RESISTOR, CHECK_NETWORK);

    /** Steps of the daily check. */
    public static final List<WalkStep> CHECK = List.of(PLUG, CHECK_RESISTOR, CHECK_NETWORK);

    /** Parts of a repeatability study, which are plugged in turn. */
    public static final List<WalkStep> STUDY = List.of(STUDY_FIRST, STUDY_SECOND);

    /** Whether the walk may go on without it. */
    boolean maySkip() {
        return this == COMMON_MODE || this == PLUG;
    }
}
