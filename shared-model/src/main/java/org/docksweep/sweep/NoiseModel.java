package org.docksweep.sweep;

/**
 * Noise of channels in the silence before the sweep: power densities and cross densities (a woofer hears the hall, so
 * the noise of voltage and current is related). Welch's method with Hann windows, half overlapped, averaged over a
 * third of an octave.
 */
final class NoiseModel {
    /** Bins averaged at least, so that a density at low frequencies is no lottery. */
    private static final int LEAST_BINS = 5;

    private static final double HALF_WIDTH_OCTAVES = 1 / 6.0;

    private final double binHz;
    /** Per ordered pair a, b with a at most b: sums of Re and Im of A B* per bin, already per sample. */
    private final double[][][] densityRe;

    private final double[][][] densityIm;

    /**
     * Reads the noise.
     *
     * @param channels channels, hum taken off
     * @param frames frames of silence at their start
     * @param sampleRateHz samples per second
     */
    NoiseModel(double[][] channels, int frames, int sampleRateHz) {
        int length =
                Math.min(8192 * Math.max(1, sampleRateHz / 48000), Integer.highestOneBit(Math.max(64, frames / 2)));
        int hop = length / 2;
        this.binHz = sampleRateHz / (double) length;
        int n = channels.length;
        densityRe = new double[n][n][length / 2];
        densityIm = new double[n][n][length / 2];
        double[] window = Phasors.hann(length);
        double energy = 0;
        for (double value : window) {
            energy += value * value;
        }
        int segments = 0;
        double[][] spectra = new double[n][];
        for (int from = 0; from + length <= frames; from += hop) {
            for (int c = 0; c < n; c++) {
                spectra[c] = spectrum(channels[c], from, window);
            }
            for (int a = 0; a < n; a++) {
                for (int b = a; b < n; b++) {
                    add(spectra[a], spectra[b], densityRe[a][b], densityIm[a][b]);
                }
            }
            segments++;
        }
        for (int a = 0; a < n; a++) {
            for (int b = a; b < n; b++) {
                for (int k = 0; k < length / 2; k++) {
                    densityRe[a][b][k] /= Math.max(1, segments) * energy;
                    densityIm[a][b][k] /= Math.max(1, segments) * energy;
                }
            }
        }
    }

    /**
     * Power density of a channel.
     *
     * @param channel channel number
     * @param frequencyHz frequency
     * @return mean squared magnitude of a unit-energy window's spectrum, in squared units of the channel
     */
    double power(int channel, double frequencyHz) {
        return mean(densityRe[channel][channel], frequencyHz);
    }

    /** Real part of the cross density A B*, a at most b. */
    double crossRe(int a, int b, double frequencyHz) {
        return mean(densityRe[a][b], frequencyHz);
    }

    /** Imaginary part of the cross density A B*, a at most b. */
    double crossIm(int a, int b, double frequencyHz) {
        return mean(densityIm[a][b], frequencyHz);
    }

    private double mean(double[] density, double frequencyHz) {
        double spread = StrictMath.pow(2, HALF_WIDTH_OCTAVES);
        int first = (int) Math.floor(frequencyHz / spread / binHz);
        int last = (int) Math.ceil(frequencyHz * spread / binHz);
        if (last - first + 1 < LEAST_BINS) {
            int centre = (int) Math.rint(frequencyHz / binHz);
            first = centre - LEAST_BINS / 2;
            last = centre + LEAST_BINS / 2;
        }
        // Bin 0 holds what is left of the constant.
        int shift = Math.max(0, 1 - first);
        first += shift;
        last = Math.min(density.length - 1, last + shift);
        first = Math.min(first, last);
        double sum = 0;
        for (int k = first; k <= last; k++) {
            sum += density[k];
        }
        return sum / (last - first + 1);
    }

    private static double[] spectrum(double[] channel, int from, double[] window) {
        double[] work = new double[window.length];
        for (int i = 0; i < work.length; i++) {
            work[i] = channel[from + i] * window[i];
        }
        Fourier.forward(work);
        return work;
    }

    private static void add(double[] a, double[] b, double[] re, double[] im) {
        for (int k = 1; k < re.length; k++) {
            re[k] += a[2 * k] * b[2 * k] + a[2 * k + 1] * b[2 * k + 1];
            im[k] += a[2 * k + 1] * b[2 * k] - a[2 * k] * b[2 * k + 1];
        }
    }
}
