package org.docksweep.judge;

/** What a person must do before the cabinet can be judged. */
public enum Prompt {
    NONE,
    /** Nothing is connected: plug in, or re-plug. */
    PLUG_IN,
    /** The lead sits in another socket of this cabinet, or pairs are swapped. */
    CHECK_SOCKET,
    /** The curve belongs to another cabinet model: check the label. */
    CHECK_LABEL,
    /** The measurement was spoiled: sweep again. */
    SWEEP_AGAIN,
    /** The gate cannot judge this: a person decides. */
    PERSON_DECIDES
}
