package org.docksweep.fleet;

/** A frequency range of a cabinet with its own driver or drivers. */
public enum Way {
    /** Low frequency: cone drivers, commonly below about 1 kHz in a two-way cabinet. */
    LF,
    /** Mid frequency, only in cabinets of three or more ways. */
    MF,
    /** High frequency: usually a compression driver on a horn. */
    HF
}
