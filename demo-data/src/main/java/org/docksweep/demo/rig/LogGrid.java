package org.docksweep.demo.rig;

import java.util.function.DoubleFunction;
import org.hipparchus.complex.Complex;

/**
 * Complex values on a logarithmic frequency grid, read between its points by cubic (Catmull-Rom) interpolation. Circuits
 * are solved on the grid only: their curves are smooth against log frequency, and a long transform has many more bins.
 */
final class LogGrid {
    /** Lowest frequency; below it nothing is played. */
    static final double LOWEST_HZ = 1;

    private static final double POINTS_PER_OCTAVE = 96;
    private static final double LOG_2 = Math.log(2);

    private LogGrid() {}

    static int points(double sampleRateHz) {
        return (int) Math.ceil(Math.log(sampleRateHz / 2 / LOWEST_HZ) / LOG_2 * POINTS_PER_OCTAVE) + 4;
    }

    static double frequencyHz(int point) {
        return LOWEST_HZ * Math.exp((point - 1) / POINTS_PER_OCTAVE * LOG_2);
    }

    static Complex[] sample(double sampleRateHz, DoubleFunction<Complex> value) {
        Complex[] values = new Complex[points(sampleRateHz)];
        for (int i = 0; i < values.length; i++) {
            values[i] = value.apply(frequencyHz(i));
        }
        return values;
    }

    /** Positions of the bins of a transform on the grid, in grid points; negative where nothing is played. */
    static double[] positions(int length, double sampleRateHz) {
        double[] positions = new double[length / 2];
        for (int bin = 0; bin < positions.length; bin++) {
            double frequencyHz = bin * sampleRateHz / length;
            positions[bin] =
                    frequencyHz < LOWEST_HZ ? -1 : 1 + Math.log(frequencyHz / LOWEST_HZ) / LOG_2 * POINTS_PER_OCTAVE;
        }
        return positions;
    }

    /**
     * Multiplies a packed real spectrum by several sets of grid values.
     *
     * @param spectrum packed spectrum (re0, re of half the rate, re1, im1, ...)
     * @param positions bins on the grid
     * @param values sets of grid values
     * @return a new packed spectrum for each set; mean and highest bin are 0
     */
    static double[][] times(double[] spectrum, double[] positions, Complex[]... values) {
        int points = values[0].length;
        double[][] parts = new double[values.length][2 * points];
        for (int set = 0; set < values.length; set++) {
            for (int i = 0; i < points; i++) {
                parts[set][2 * i] = values[set][i].getRealPart();
                parts[set][2 * i + 1] = values[set][i].getImaginaryPart();
            }
        }
        double[][] products = new double[values.length][spectrum.length];
        for (int bin = 1; bin < positions.length; bin++) {
            if (positions[bin] < 0) {
                continue;
            }
            int i = (int) positions[bin];
            double t = positions[bin] - i;
            double w0 = t * (-0.5 + t * (1 - 0.5 * t));
            double w1 = 1 + t * t * (-2.5 + 1.5 * t);
            double w2 = t * (0.5 + t * (2 - 1.5 * t));
            double w3 = t * t * (-0.5 + 0.5 * t);
            double x = spectrum[2 * bin];
            double y = spectrum[2 * bin + 1];
            int at = 2 * (i - 1);
            for (int set = 0; set < parts.length; set++) {
                double[] part = parts[set];
                double a = w0 * part[at] + w1 * part[at + 2] + w2 * part[at + 4] + w3 * part[at + 6];
                double b = w0 * part[at + 1] + w1 * part[at + 3] + w2 * part[at + 5] + w3 * part[at + 7];
                products[set][2 * bin] = x * a - y * b;
                products[set][2 * bin + 1] = x * b + y * a;
            }
        }
        return products;
    }
}
