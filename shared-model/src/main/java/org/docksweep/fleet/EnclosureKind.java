package org.docksweep.fleet;

/** Acoustic load behind or before the drivers of an enclosure. */
public enum EnclosureKind {
    /** No box: driver resonances as given by the driver model. */
    FREE_AIR,
    /** Closed box: resonance rises to fc = fs sqrt(1 + alpha). */
    CLOSED,
    /** Vented box: two motional peaks with a dip at the tuning between them. */
    VENTED,
    /** Horn: the driver model's motional resonances already describe the driver on its horn. */
    HORN
}
