package org.docksweep.fleet;

/** Who bears a repair, as far as the finding tells. */
public enum ChargeClass {
    /** Driven beyond what it may take. */
    OVERDRIVEN,
    /** Worn by age and use. */
    WORN,
    /** Damaged in transport. */
    TRANSPORT,
    /** The finding does not tell. */
    UNKNOWN
}
