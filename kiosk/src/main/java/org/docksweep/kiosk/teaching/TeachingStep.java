package org.docksweep.kiosk.teaching;

/** What a person can do next on the fleet page. */
public enum TeachingStep {
    /** Teach the marked model, or teach it anew. */
    TEACH,
    /** Draw a model that the house does not know yet. */
    NEW_MODEL,
    /** Another box, or another number of woofers. */
    OTHER_DRAWING,
    /** Another rated impedance. */
    OTHER_IMPEDANCE,
    /** Another crossover frequency. */
    OTHER_CROSSOVER,
    /** Another slope. */
    OTHER_SLOPE,
    /** Another size of the woofers. */
    OTHER_SIZE,
    /** Another pad before the horn. */
    OTHER_PAD,
    /** The drawing is right: on to the units. */
    BEGIN,
    /** The lead is plugged in: sweep the unit at hand. */
    SWEEP,
    /** Drop the unit swept last. */
    DROP_LAST,
    /** Hand in what was taught. */
    FINISH,
    /** One step back; from the units, the lesson is dropped. */
    BACK
}
