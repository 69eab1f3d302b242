package org.docksweep.demo.physics;

import org.hipparchus.complex.Complex;

/** Something the rig's lead can be plugged into. Linear; the rig adds what is not. */
public interface Load {

    /**
     * What happens when a source of 1 V drives it.
     *
     * @param frequencyHz frequency, greater than 0
     * @param sourceOhm impedance between the source and the contacts
     * @return voltage, current, sound and movement
     */
    Response at(double frequencyHz, Complex sourceOhm);

    /**
     * Level of a coil rub, peak of its bursts re the sweep's peak in 1 to 15 kHz.
     *
     * @return dB, or negative infinity without a rub
     */
    default double rubDb() {
        return Double.NEGATIVE_INFINITY;
    }

    /**
     * A loose part.
     *
     * @return what rattles, or null
     */
    default Rattle rattle() {
        return null;
    }

    /**
     * A loose part that strikes when the cabinet shakes it.
     *
     * @param levelDb peak of a strike re the sweep's peak in 1 to 15 kHz, in dB
     * @param resonanceHz frequency at which it swings most
     */
    record Rattle(double levelDb, double resonanceHz) {}

    /**
     * Response to a source of 1 V.
     *
     * @param voltage voltage at the contacts, in V/V
     * @param current current into the contacts, in A/V
     * @param pressurePaPerV sound pressure at 1 m on axis, in Pa/V
     * @param excursion excursion of the cone (or diaphragm) that moves most, as a share of its limit, in 1/V
     */
    record Response(Complex voltage, Complex current, Complex pressurePaPerV, Complex excursion) {

        /**
         * Impedance of the load.
         *
         * @return voltage over current, in ohm
         */
        public Complex impedanceOhm() {
            return voltage.divide(current);
        }
    }
}
