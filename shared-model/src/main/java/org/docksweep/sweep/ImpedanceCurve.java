package org.docksweep.sweep;

import java.util.Arrays;

/**
 * A complex impedance against frequency, with its standard uncertainty. Arrays are copied in and out.
 *
 * @param frequencyHz rising frequencies in hertz
 * @param resistanceOhm real parts in ohm
 * @param reactanceOhm imaginary parts in ohm
 * @param standardUncertaintyOhm standard uncertainty of real and imaginary part each, in ohm, at least 0
 */
public record ImpedanceCurve(
        double[] frequencyHz, double[] resistanceOhm, double[] reactanceOhm, double[] standardUncertaintyOhm) {

    public ImpedanceCurve {
        int n = frequencyHz.length;
        if (n < 2 || resistanceOhm.length != n || reactanceOhm.length != n || standardUncertaintyOhm.length != n) {
            throw new IllegalArgumentException("impedance curve needs at least 2 points and equally many of each: "
                    + n + " frequencies, " + resistanceOhm.length + " resistances, " + reactanceOhm.length
                    + " reactances, " + standardUncertaintyOhm.length + " uncertainties");
        }
        for (int i = 0; i < n; i++) {
            boolean finite = Double.isFinite(resistanceOhm[i])
                    && Double.isFinite(reactanceOhm[i])
                    && standardUncertaintyOhm[i] >= 0
                    && frequencyHz[i] > (i == 0 ? 0 : frequencyHz[i - 1]);
            if (!finite) {
                throw new IllegalArgumentException("impedance curve point " + i + " (" + frequencyHz[i]
                        + " Hz) is not a number, or its frequency does not rise");
            }
        }
        frequencyHz = frequencyHz.clone();
        resistanceOhm = resistanceOhm.clone();
        reactanceOhm = reactanceOhm.clone();
        standardUncertaintyOhm = standardUncertaintyOhm.clone();
    }

    @Override
    public double[] frequencyHz() {
        return frequencyHz.clone();
    }

    @Override
    public double[] resistanceOhm() {
        return resistanceOhm.clone();
    }

    @Override
    public double[] reactanceOhm() {
        return reactanceOhm.clone();
    }

    @Override
    public double[] standardUncertaintyOhm() {
        return standardUncertaintyOhm.clone();
    }

    /**
     * Number of points.
     *
     * @return points, at least 2
     */
    public int size() {
        return frequencyHz.length;
    }

    /**
     * Magnitude at a point.
     *
     * @param index point from 0
     * @return |Z| in ohm
     */
    public double magnitudeOhm(int index) {
        return Math.hypot(resistanceOhm[index], reactanceOhm[index]);
    }

    /**
     * Magnitudes at all points.
     *
     * @return a new array, in ohm
     */
    public double[] magnitudesOhm() {
        double[] magnitudes = new double[size()];
        Arrays.setAll(magnitudes, this::magnitudeOhm);
        return magnitudes;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ImpedanceCurve that
                && Arrays.equals(frequencyHz, that.frequencyHz)
                && Arrays.equals(resistanceOhm, that.resistanceOhm)
                && Arrays.equals(reactanceOhm, that.reactanceOhm)
                && Arrays.equals(standardUncertaintyOhm, that.standardUncertaintyOhm);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(frequencyHz) * 31 + Arrays.hashCode(resistanceOhm);
    }

    @Override
    public String toString() {
        return "ImpedanceCurve[" + size() + " points, " + frequencyHz[0] + " to " + frequencyHz[size() - 1] + " Hz]";
    }
}
