package org.docksweep.fleet;

/** What was seen on a driver or in a cabinet at the bench. */
public enum Sighting {
    BURNT,
    CORRODED_JOINT,
    BROKEN_LEAD_IN,
    DEBRIS,
    RUST,
    LOOSE_PLUG,
    DEFORMED,
    CRACKED,
    TORN,
    LOOSE_GLUE,
    DRIED_FLUID,
    WATER,
    /** Looked, and nothing was seen. */
    NOTHING
}
