package org.docksweep.sweep;

import org.hipparchus.complex.Complex;

/** Impedances of circuits with known formulas. */
final class Loads {
    private Loads() {}

    /** Reference driver of check-values.md section 1.2: Re 6 ohm, fs 40 Hz, RES 48 ohm, CMES and LCES from Small 1972. */
    static Complex freeDriver(double f) {
        return motional(f, null).add(6);
    }

    /** The same in a vented box: alpha 2, fb 40 Hz, QL 7 (check-values.md section 1.4). */
    static Complex ventedDriver(double f) {
        double boxH = 0.047746482927568605 / 2;
        double w = 2 * Math.PI * f;
        double boxF = 1 / (Math.pow(2 * Math.PI * 40, 2) * boxH);
        Complex box = new Complex(2 * Math.PI * 40 * boxH / 7, w * boxH - 1 / (w * boxF));
        return motional(f, box).add(6);
    }

    /** The free driver with a lossy inductance 0.03 (jw)^0.7 (check-values.md section 4). */
    static Complex lossyDriver(double f) {
        return freeDriver(f).add(new Complex(0, 2 * Math.PI * f).pow(0.7).multiply(0.03));
    }

    /**
     * Two-way cabinet whose horn driver is open: vented woofer behind 0.9 mH, and 7 uF in series with 0.9 mH (0.3 ohm)
     * left across the terminals.
     */
    static Complex hornOpen(double f) {
        double w = 2 * Math.PI * f;
        Complex woofer =
                ventedDriver(f).add(new Complex(0, w).pow(0.7).multiply(0.03)).add(new Complex(0.2, w * 0.9e-3));
        Complex dip = new Complex(0.3, w * 0.9e-3 - 1 / (w * 7e-6));
        return woofer.multiply(dip).divide(woofer.add(dip));
    }

    private static Complex motional(double f, Complex branch) {
        double w = 2 * Math.PI * f;
        Complex admittance = new Complex(1 / 48.0, w * 331.5727981081153e-6 - 1 / (w * 0.047746482927568605));
        if (branch != null) {
            admittance = admittance.add(branch.reciprocal());
        }
        return admittance.reciprocal();
    }
}
