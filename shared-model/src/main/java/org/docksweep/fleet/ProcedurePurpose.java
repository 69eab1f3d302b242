package org.docksweep.fleet;

/** What a procedure at the bench is for. */
public enum ProcedurePurpose {
    /** Replace the diaphragm of a compression driver. */
    DIAPHRAGM_REPLACEMENT,
    /** Give a cone driver a new cone, coil and suspension. */
    RECONE,
    /** Exchange a whole driver. */
    DRIVER_SWAP,
    /** Replace a crossover part by value and rating. */
    CROSSOVER_PART,
    /** Clean, re-seat or replace a connector, spade or lead. */
    CONNECTOR,
    /** Make a cabinet air-tight again. */
    AIR_TIGHTNESS
}
