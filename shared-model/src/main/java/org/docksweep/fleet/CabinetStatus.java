package org.docksweep.fleet;

/** Where a cabinet stands in the fleet. */
public enum CabinetStatus {
    /** On the shelf, can be hired. */
    READY,
    /** With a customer. */
    OUT,
    /** At the bench with an open job. */
    BENCH,
    /** Held until a qualified person releases it. */
    SAFETY_HOLD,
    /** Held for a person to decide. */
    MANUAL_HOLD,
    /** Was due back and did not come. */
    MISSING,
    /** Taken out of the fleet for good. */
    RETIRED
}
