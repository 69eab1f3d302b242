package org.docksweep.judge;

import org.docksweep.fleet.Verdict;
import org.docksweep.suspect.FaultKind;

/** Which curve of a test point shows why it was judged so. */
public enum DecidingCurve {
    /** Impedance magnitude. */
    IMPEDANCE,
    /** Level at the microphone. */
    LEVEL,
    /** What touches, rattles or buzzes: short sounds that come back at the same phase. */
    BURSTS;

    /**
     * Chooses: what the first suspect of a failed point was told by, else the impedance, else the level.
     *
     * @param point judgement with at least one curve
     * @return the curve to show
     */
    public static DecidingCurve of(PointJudgement point) {
        if (point.acoustic() == null) {
            return IMPEDANCE;
        }
        DecidingCurve otherwise = point.impedance() == null ? LEVEL : IMPEDANCE;
        if (point.verdict() != Verdict.FAIL || point.suspects().isEmpty()) {
            return otherwise;
        }
        FaultKind first = point.suspects().get(0).kind();
        return switch (first) {
            case COIL_RUBS, LOOSE_PART -> showsBursts(point) ? BURSTS : otherwise;
            case WAY_WEAK, WAY_REVERSED -> LEVEL;
            case WRONG_IMPEDANCE_PART -> point.reason().key().equals("verdict-way-loud") ? LEVEL : otherwise;
            default -> otherwise;
        };
    }

    private static boolean showsBursts(PointJudgement point) {
        return point.acoustic().print() != null
                && point.acoustic().print().event() != null
                && !point.acoustic().print().bands().isEmpty();
    }
}
