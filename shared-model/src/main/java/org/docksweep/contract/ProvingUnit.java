package org.docksweep.contract;

import org.docksweep.fleet.Require;

/**
 * One virtual cabinet at one moment. Equal values give equal cabinets.
 *
 * @param modelCode its true cabinet model
 * @param unitSeed what production made of it
 * @param ageYears its age, 0 to 50
 * @param fault what is wrong with it, or null
 * @param severity severity of the fault, as its kind says; 0 where unused
 * @param climate temperatures and noise
 */
public record ProvingUnit(
        String modelCode, long unitSeed, double ageYears, ProvingFault fault, double severity, Climate climate) {

    /**
     * Temperatures inside a cabinet and at the dock, and the noise of the hall.
     *
     * @param coilCelsius voice coils, -30 to 250
     * @param insideCelsius suspensions and magnets, -30 to 80
     * @param ambientCelsius air at the dock and crossover parts, -20 to 50
     * @param hallNoiseDb noise at the microphone, dB re 20 uPa, unweighted, 0 to 110
     */
    public record Climate(double coilCelsius, double insideCelsius, double ambientCelsius, double hallNoiseDb) {
        public Climate {
            Require.inRange("coilCelsius", coilCelsius, -30, 250);
            Require.inRange("insideCelsius", insideCelsius, -30, 80);
            Require.inRange("ambientCelsius", ambientCelsius, -20, 50);
            Require.inRange("hallNoiseDb", hallNoiseDb, 0, 110);
        }
    }

    public ProvingUnit {
        Require.text("proving unit modelCode", modelCode);
        Require.inRange("proving unit ageYears", ageYears, 0, 50);
        if (climate == null) {
            throw new IllegalArgumentException("proving unit of " + modelCode + ": climate is missing");
        }
    }
}
