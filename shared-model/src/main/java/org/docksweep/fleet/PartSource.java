package org.docksweep.fleet;

/** Where a replacement part came from. */
public enum PartSource {
    /** Made by the maker of the driver. */
    ORIGINAL,
    /** Made by somebody else to fit. */
    AFTERMARKET
}
