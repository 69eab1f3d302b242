package org.docksweep.demo.physics;

import org.hipparchus.complex.Complex;

/** Impedance of a blocked voice coil beyond its DC resistance. */
sealed interface BlockedInductance permits LossyInductance, SemiInductance {
    /**
     * Impedance at an angular frequency.
     *
     * @param omegaRadPerS angular frequency, greater than 0
     * @return impedance in ohm
     */
    Complex ohmAt(double omegaRadPerS);
}
