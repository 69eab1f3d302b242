package org.docksweep.fleet;

/** An item of the visual list the dock hand goes through before the sweep. */
public enum VisualItem {
    GRILLE,
    HANDLES,
    CONNECTORS,
    /** Flying and rigging points. Damage means safety hold, whatever the sweep says. */
    RIGGING,
    /** Mains inlet of a powered cabinet. Damage means safety hold, whatever the sweep says. */
    MAINS_INLET,
    /** Signs of liquid in or on the cabinet. */
    WET,
    /** Powered cabinets: gain knobs and presets at their marks, awake from standby. */
    KNOBS_AND_PRESETS;

    /**
     * Whether damage here forces {@link Route#SAFETY_HOLD}.
     *
     * @return true for rigging and the mains inlet
     */
    public boolean forcesSafetyHold() {
        return this == RIGGING || this == MAINS_INLET;
    }
}
