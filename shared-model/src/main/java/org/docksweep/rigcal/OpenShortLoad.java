package org.docksweep.rigcal;

import org.hipparchus.complex.Complex;

/**
 * Compensation of fixture, cable and channel gains from measured standards at the far plug, at one frequency. Formulas
 * from impedance measurement handbooks; open/short/load is the inverse of a general linear two-port.
 */
public final class OpenShortLoad {
    private OpenShortLoad() {}

    /**
     * Open/short compensation, {@code Z = (Zm - Zs) / (1 - (Zm - Zs) Yo)} with {@code Yo = 1 / (Zo - Zs)}. Takes out a series and a shunt
     * part, not a gain.
     *
     * @param measured Zm, in ohm
     * @param open Zo, measured with the plug open, in ohm
     * @param shorted Zs, measured with the plug shorted, in ohm
     * @return impedance at the plug, in ohm
     */
    public static Complex openShort(Complex measured, Complex open, Complex shorted) {
        Complex series = measured.subtract(shorted);
        Complex leak = open.subtract(shorted).reciprocal();
        return series.divide(Complex.ONE.subtract(series.multiply(leak)));
    }

    /**
     * Open/short/load compensation, {@code Z = Zstd (Zo - Zsm)(Zm - Zs) / ((Zsm - Zs)(Zo - Zm))}.
     *
     * @param measured Zm, in ohm
     * @param open Zo, measured with the plug open, in ohm
     * @param shorted Zs, measured with the plug shorted, in ohm
     * @param load Zsm, measured with the standard, in ohm
     * @param standard Zstd, true impedance of the standard, in ohm
     * @return impedance at the plug, in ohm
     */
    public static Complex openShortLoad(
            Complex measured, Complex open, Complex shorted, Complex load, Complex standard) {
        return standard.multiply(open.subtract(load))
                .multiply(measured.subtract(shorted))
                .divide(load.subtract(shorted).multiply(open.subtract(measured)));
    }
}
