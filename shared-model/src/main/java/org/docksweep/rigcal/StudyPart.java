package org.docksweep.rigcal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.complex.Complex;

/** All sweeps of one part of a {@link RigStudy}, as deviations from their mean. */
final class StudyPart {
    private final double[] frequencyHz;
    private final Complex[][][] deviation;
    private final Complex[] conductance;
    private final double sumOfReal;
    private final double sumOfSquares;

    /**
     * Takes the mean off.
     *
     * @param sweeps sweeps[plug-in][repeat]
     * @param plugIns plug-ins wanted
     * @param repeats repeats wanted
     * @param number of the part from 1, for words
     */
    StudyPart(RigStudy.Sweep[][] sweeps, int plugIns, int repeats, int number) {
        if (sweeps.length != plugIns || Arrays.stream(sweeps).anyMatch(s -> s.length != repeats)) {
            throw new IllegalArgumentException("a repeatability study needs equally many sweeps everywhere: part "
                    + number + " has others than part 1; measure the missing ones");
        }
        if (plugIns == 0 || repeats == 0) {
            throw new IllegalArgumentException(
                    "a repeatability study needs at least 2 plug-ins and 2 repeats; measure more");
        }
        frequencyHz = sweeps[0][0].impedance().frequencyHz();
        int n = frequencyHz.length;
        Complex[] mean = new Complex[n];
        Arrays.fill(mean, Complex.ZERO);
        for (RigStudy.Sweep[] plugIn : sweeps) {
            for (RigStudy.Sweep sweep : plugIn) {
                if (!Arrays.equals(frequencyHz, sweep.impedance().frequencyHz())) {
                    throw new IllegalArgumentException("sweeps of part " + number
                            + " of the repeatability study have different frequencies; sweep it with one plan");
                }
                for (int i = 0; i < n; i++) {
                    mean[i] = mean[i].add(at(sweep.impedance(), i).divide(plugIns * repeats));
                }
            }
        }
        deviation = new Complex[plugIns][repeats][n];
        conductance = new Complex[n];
        double real = 0;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            conductance[i] = mean[i].reciprocal();
            real += conductance[i].getRealPart();
            squares += Math.pow(conductance[i].norm(), 2);
            for (int o = 0; o < plugIns; o++) {
                for (int r = 0; r < repeats; r++) {
                    deviation[o][r][i] =
                            at(sweeps[o][r].impedance(), i).divide(mean[i]).log();
                }
            }
        }
        sumOfReal = real;
        sumOfSquares = squares;
    }

    private static Complex at(ImpedanceCurve curve, int i) {
        return new Complex(curve.resistanceOhm()[i], curve.reactanceOhm()[i]);
    }

    /** Share of a scale's square that is left when a contact is fitted: 0 for a plain resistor. */
    double scaleLeft() {
        return 1 - sumOfReal * sumOfReal / (frequencyHz.length * sumOfSquares);
    }

    /**
     * Solves every sweep for its contact.
     *
     * @param withScale whether a scale is solved for besides
     * @param contactOhm receives the contacts in ohm, [plug-in][repeat]
     * @return ln |Z| without the contact, one [plug-in][repeat] per octave
     */
    List<double[][]> takeOffContact(boolean withScale, double[][] contactOhm) {
        int n = frequencyHz.length;
        int octaves = (int) Math.max(1, Math.round(Math.log(frequencyHz[n - 1] / frequencyHz[0]) / Math.log(2)));
        List<double[][]> rest = new ArrayList<>();
        for (int k = 0; k < octaves; k++) {
            rest.add(new double[contactOhm.length][contactOhm[0].length]);
        }
        for (int o = 0; o < contactOhm.length; o++) {
            for (int r = 0; r < contactOhm[o].length; r++) {
                Complex[] d = deviation[o][r];
                contactOhm[o][r] = contact(d, withScale);
                double[] sum = new double[octaves];
                int[] points = new int[octaves];
                for (int i = 0; i < n; i++) {
                    int k = Math.min(octaves - 1, i * octaves / n);
                    sum[k] += d[i].getRealPart() - contactOhm[o][r] * conductance[i].getRealPart();
                    points[k]++;
                }
                for (int k = 0; k < octaves; k++) {
                    rest.get(k)[o][r] = sum[k] / points[k];
                }
            }
        }
        return rest;
    }

    private double contact(Complex[] d, boolean withScale) {
        double onScale = 0;
        double onContact = 0;
        for (int i = 0; i < d.length; i++) {
            onScale += d[i].getRealPart();
            onContact += d[i].multiply(conductance[i].conjugate()).getRealPart();
        }
        int n = d.length;
        return withScale
                ? (n * onContact - sumOfReal * onScale) / (n * sumOfSquares - sumOfReal * sumOfReal)
                : onContact / sumOfSquares;
    }
}
