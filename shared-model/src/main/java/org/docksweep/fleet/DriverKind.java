package org.docksweep.fleet;

/** Construction of a driver. */
public enum DriverKind {
    /** Moving-coil cone driver. */
    CONE,
    /** Compression driver on a horn. */
    COMPRESSION
}
