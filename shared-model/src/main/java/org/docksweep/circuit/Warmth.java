package org.docksweep.circuit;

/**
 * What the temperature of a cabinet's body does to suspensions and magnets, per kelvin, as slopes of logarithms. Common
 * practice, no source; what a material does otherwise is left to the spreads of the parameters.
 */
final class Warmth {
    /** Force factor of a ferrite magnet. */
    static final double LOG_FORCE_FACTOR = -0.002;
    /** Stiffness of a suspension: colder is stiffer. */
    static final double LOG_STIFFNESS = -0.005;
    /** Loss of a suspension: colder is lossier. */
    static final double LOG_LOSS = -0.008;

    /** fs goes with the root of the stiffness. */
    static final double LOG_RESONANCE = LOG_STIFFNESS / 2;
    /** Qms = root(stiffness mass) / loss. */
    static final double LOG_QMS = LOG_STIFFNESS / 2 - LOG_LOSS;
    /** Z0 = Res / Qms = Bl^2 / (2 pi fs mass). */
    static final double LOG_Z0 = 2 * LOG_FORCE_FACTOR - LOG_RESONANCE;
    /** Air seen through the force factor: 1 / Bl^2. */
    static final double LOG_AIR = -2 * LOG_FORCE_FACTOR;
    /** Motional resistance of a horn driver: Bl^2. */
    static final double LOG_HORN = 2 * LOG_FORCE_FACTOR;

    private Warmth() {}
}
