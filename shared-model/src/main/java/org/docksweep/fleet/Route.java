package org.docksweep.fleet;

/** Where a cabinet goes after its check-in. */
public enum Route {
    /** Back on the shelf, ready for hire. */
    SHELF,
    /** To the repair bench, with a tag. */
    BENCH,
    /** Set aside: damaged rigging or mains inlet, whatever the sweep says, until a qualified person releases it. */
    SAFETY_HOLD,
    /** Set aside for a person to decide: spoiled measurements, nothing connected, label in doubt, cannot be judged. */
    MANUAL_HOLD
}
