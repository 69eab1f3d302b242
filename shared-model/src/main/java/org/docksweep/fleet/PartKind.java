package org.docksweep.fleet;

/** What a part of the catalogue is. */
public enum PartKind {
    /** Diaphragm of a compression driver, with its voice coil. */
    DIAPHRAGM,
    /** Cone, coil, surround and centring of a cone driver. */
    RECONE_KIT,
    /** A whole driver, new or repaired. */
    DRIVER_UNIT,
    /** Capacitor, coil or resistor of a crossover. */
    CROSSOVER_PART,
    /** Socket, plug, spade or lead. */
    CONNECTOR,
    /** Gasket or sealing compound. */
    SEAL,
    /** Magnetic fluid for a gap. */
    MAGNETIC_FLUID,
    OTHER;

    /**
     * Whether fitting one renews the moving part of a driver, so that its polarity must be proved afterwards.
     *
     * @return true for diaphragms, recone kits and whole drivers
     */
    public boolean renewsMovingPart() {
        return this == DIAPHRAGM || this == RECONE_KIT || this == DRIVER_UNIT;
    }
}
