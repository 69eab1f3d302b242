package org.docksweep.demo.physics;

import static org.docksweep.fleet.Require.positive;

/**
 * What a driver model is mechanically and acoustically, beyond its impedance. Invented values of ordinary size.
 *
 * @param sensitivityDb pass-band level at 1 m for 2.83 V rms into half space, in dB re 20 uPa
 * @param effectiveAreaCm2 effective piston area Sd, in square centimetres
 * @param maxExcursionMm one-way excursion at which the suspension ends, in millimetres
 * @param breakupHz frequency above which the cone (or the front chamber of a compression driver) rolls off, in hertz
 */
public record DriverMechanics(double sensitivityDb, double effectiveAreaCm2, double maxExcursionMm, double breakupHz) {
    public DriverMechanics {
        positive("sensitivityDb", sensitivityDb);
        positive("effectiveAreaCm2", effectiveAreaCm2);
        positive("maxExcursionMm", maxExcursionMm);
        positive("breakupHz", breakupHz);
    }
}
