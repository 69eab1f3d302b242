package org.docksweep.fleet;

/** What a test point gives access to. */
public enum TestPointKind {
    /** Loudspeaker terminals: voltage and current can be measured. */
    TERMINALS,
    /** Line input of a powered cabinet: only the microphone sees the result. */
    LINE_INPUT,
    /** A driver taken out, on the bench rig. */
    BARE_DRIVER
}
