package org.docksweep.kiosk.proving;

/** What the gate knows of a returned cabinet beforehand. */
public enum Knowing {
    /** Its own last good curve, and the reference of its model. */
    BASELINE,
    /** The reference of its model only. */
    REFERENCE
}
