package org.docksweep.demo.physics;

import org.docksweep.fleet.Require;

/**
 * Temperatures inside a cabinet; they differ for hours after a cold truck.
 *
 * @param coilCelsius voice coils, -30 to 250
 * @param suspensionCelsius suspensions, -30 to 80
 * @param magnetCelsius magnets, -30 to 150
 * @param ambientCelsius air and crossover parts, -30 to 60
 */
public record Climate(double coilCelsius, double suspensionCelsius, double magnetCelsius, double ambientCelsius) {
    /** Copper's resistance coefficient per kelvin at 20 C (IEC 60028). */
    static final double COPPER_PER_K = 0.00393;
    /** Force factor of a ferrite magnet per kelvin (common practice, no source). */
    static final double FERRITE_PER_K = -0.002;
    /** Suspension stiffness per kelvin; colder is stiffer (common practice, no source for the value). */
    static final double STIFFNESS_PER_K = -0.006;
    /** Suspension loss per kelvin; colder is lossier (common practice, no source for the value). */
    static final double LOSS_PER_K = -0.010;
    /** Reference temperature of all model values. */
    static final double REFERENCE_CELSIUS = 20;

    public Climate {
        Require.inRange("coilCelsius", coilCelsius, -30, 250);
        Require.inRange("suspensionCelsius", suspensionCelsius, -30, 80);
        Require.inRange("magnetCelsius", magnetCelsius, -30, 150);
        Require.inRange("ambientCelsius", ambientCelsius, -30, 60);
    }

    /**
     * The same temperature everywhere.
     *
     * @param celsius temperature
     * @return the climate
     */
    public static Climate even(double celsius) {
        return new Climate(celsius, celsius, celsius, celsius);
    }

    double copperFactor() {
        return 1 + COPPER_PER_K * (coilCelsius - REFERENCE_CELSIUS);
    }

    double ambientCopperFactor() {
        return 1 + COPPER_PER_K * (ambientCelsius - REFERENCE_CELSIUS);
    }

    double forceFactor() {
        return 1 + FERRITE_PER_K * (magnetCelsius - REFERENCE_CELSIUS);
    }

    double stiffnessFactor() {
        return 1 + STIFFNESS_PER_K * (suspensionCelsius - REFERENCE_CELSIUS);
    }

    double lossFactor() {
        return Math.max(0.5, 1 + LOSS_PER_K * (suspensionCelsius - REFERENCE_CELSIUS));
    }
}
