package org.docksweep.rigcal;

import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.complex.Complex;

/**
 * A known part that the rig must read right before the gate opens. Never one of the parts the calibration was taken
 * with: those read right by construction.
 *
 * @param name name on the part
 * @param kind circuit
 * @param resistanceOhm R, greater than 0
 * @param reactivePart C in farad or L in henry, greater than 0; ignored for a resistor
 */
public record CheckStandard(String name, Kind kind, double resistanceOhm, double reactivePart) {

    /** Circuit of a check standard. */
    public enum Kind {
        /** Z = R. */
        RESISTOR,
        /** Z = R / (1 + j 2 pi f R C); shows phase and frequency errors. */
        RESISTOR_PARALLEL_CAPACITOR,
        /** Z = R + j 2 pi f L. */
        RESISTOR_SERIES_COIL
    }

    public CheckStandard {
        text("check standard name", name);
        if (kind == null) {
            throw new IllegalArgumentException("check standard " + name + ": kind is missing");
        }
        positive("check standard " + name + " resistanceOhm", resistanceOhm);
        if (kind != Kind.RESISTOR) {
            positive("check standard " + name + " reactivePart", reactivePart);
        }
    }

    /**
     * A resistor.
     *
     * @param name name on the part
     * @param resistanceOhm R, greater than 0
     * @return the standard
     */
    public static CheckStandard resistor(String name, double resistanceOhm) {
        return new CheckStandard(name, Kind.RESISTOR, resistanceOhm, 0);
    }

    /**
     * The impedance it has.
     *
     * @param frequencyHz frequency in hertz
     * @return impedance in ohm
     */
    public Complex impedanceOhm(double frequencyHz) {
        double w = 2 * Math.PI * frequencyHz;
        return switch (kind) {
            case RESISTOR -> new Complex(resistanceOhm);
            case RESISTOR_PARALLEL_CAPACITOR ->
                new Complex(resistanceOhm).divide(new Complex(1, w * resistanceOhm * reactivePart));
            case RESISTOR_SERIES_COIL -> new Complex(resistanceOhm, w * reactivePart);
        };
    }

    /**
     * Holds a reading against the standard.
     *
     * @param corrected impedance the rig read, corrected by its calibration
     * @param limitShare largest accepted |Zread - Z| / |Z|; the limit itself passes
     * @return the result
     */
    public RigCheck check(ImpedanceCurve corrected, double limitShare) {
        positive("rig check limitShare", limitShare);
        double[] frequencyHz = corrected.frequencyHz();
        double[] re = corrected.resistanceOhm();
        double[] im = corrected.reactanceOhm();
        double worst = -1;
        double worstHz = frequencyHz[0];
        for (int i = 0; i < frequencyHz.length; i++) {
            Complex known = impedanceOhm(frequencyHz[i]);
            double deviation = new Complex(re[i], im[i]).subtract(known).norm() / known.norm();
            if (deviation > worst) {
                worst = deviation;
                worstHz = frequencyHz[i];
            }
        }
        return new RigCheck(name, worst <= limitShare, worst, worstHz, limitShare);
    }
}
