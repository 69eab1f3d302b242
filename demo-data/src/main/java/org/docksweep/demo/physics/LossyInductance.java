package org.docksweep.demo.physics;

import org.hipparchus.complex.Complex;

/**
 * Lossy inductance {@code K (j w)^n} (Leach, JAES 50(6), 2002).
 *
 * @param k K in ohm s^n, at least 0
 * @param exponent n, 0.3 to 1
 */
record LossyInductance(double k, double exponent) implements BlockedInductance {
    @Override
    public Complex ohmAt(double omegaRadPerS) {
        double magnitude = k * Math.pow(omegaRadPerS, exponent);
        double phase = exponent * Math.PI / 2;
        return new Complex(magnitude * Math.cos(phase), magnitude * Math.sin(phase));
    }
}
