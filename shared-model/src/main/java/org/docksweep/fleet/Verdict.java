package org.docksweep.fleet;

/** What the gate says of a test point or a cabinet. */
public enum Verdict {
    /** The measurement is good and nothing is out of limits. */
    PASS,
    /** The measurement is good and something is out of limits. */
    FAIL,
    /** The measurement was spoiled: it says nothing about the cabinet. */
    SWEEP_AGAIN
}
