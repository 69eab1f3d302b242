package org.docksweep.gate;

/** How a reading stands to its limits. */
public enum ReadingState {
    OK,
    /** Near a limit: good enough for the shelf, to be watched. */
    WATCH,
    FAULT,
    /** Shown, but no limit applies (for example no reference yet). */
    NOT_JUDGED
}
