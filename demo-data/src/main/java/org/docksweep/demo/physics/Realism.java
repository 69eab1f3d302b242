package org.docksweep.demo.physics;

/** How much of the world beyond a plain lumped model is simulated. */
public enum Realism {
    /** Linear text-book elements only; for checks against published numbers. */
    PLAIN,
    /**
     * Semi-inductance, suspension creep, port loss, a panel mode, core and skin loss, dielectric loss, coupling of
     * crossover coils, ripple spread.
     */
    FULL
}
