package org.docksweep.fleet;

/** What was really wrong, as found at the bench. What fits none of these is OTHER with words. */
public enum ConfirmedCause {
    /** Lead-in or its joint broken or corroded; the coil itself is good. */
    LEAD_IN_JOINT,
    /** Voice coil open. */
    COIL_OPEN,
    /** Voice coil burnt, turns shorted. */
    COIL_BURNT,
    /** Voice coil rubs: magnet shifted, frame bent, or not seated. */
    COIL_RUBBING,
    /** Particles in the gap. */
    DEBRIS_IN_GAP,
    /** Rust in the gap. */
    RUST_IN_GAP,
    /** Magnetic fluid thickened or dried. */
    FLUID_THICKENED,
    /** Diaphragm, cone or surround cracked, torn or fatigued. */
    DIAPHRAGM_DAMAGED,
    /** Magnet weak. */
    MAGNET_WEAK,
    /** Part of another rated impedance or another driver was fitted. */
    WRONG_PART_FITTED,
    /** Polarity reversed. */
    POLARITY_REVERSED,
    /** Contact, spade or joint outside the driver corroded or loose. */
    CONTACT,
    /** Wiring shorted or broken. */
    WIRING,
    /** Crossover part open, shorted or off its value. */
    CROSSOVER_PART,
    /** Cabinet leaks air. */
    AIR_LEAK,
    /** Port blocked. */
    PORT_BLOCKED,
    /** Electronics of a powered cabinet. */
    ELECTRONICS,
    /** Nothing was wrong. */
    NO_FAULT_FOUND,
    /** Something else, said in words. */
    OTHER;

    /**
     * Whether it ends the life of the moving part: coil, lead-in, suspension, or what rubs and clogs them. Wrong parts,
     * reversed leads and what lies outside the driver do not.
     *
     * @return true if so
     */
    public boolean endsMovingPart() {
        return switch (this) {
            case LEAD_IN_JOINT,
                    COIL_OPEN,
                    COIL_BURNT,
                    COIL_RUBBING,
                    DEBRIS_IN_GAP,
                    RUST_IN_GAP,
                    FLUID_THICKENED,
                    DIAPHRAGM_DAMAGED,
                    OTHER -> true;
            case MAGNET_WEAK,
                    WRONG_PART_FITTED,
                    POLARITY_REVERSED,
                    CONTACT,
                    WIRING,
                    CROSSOVER_PART,
                    AIR_LEAK,
                    PORT_BLOCKED,
                    ELECTRONICS,
                    NO_FAULT_FOUND -> false;
        };
    }
}
