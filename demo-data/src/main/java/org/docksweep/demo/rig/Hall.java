package org.docksweep.demo.rig;

import java.util.Random;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The hall around the marked spot: a few early reflections, which move a little with each placement, and a decaying
 * tail, which does not. Sizes are assumed, no source: reverberation time 1.1 s, tail 11 dB below the direct sound.
 */
final class Hall {
    private static final double REVERBERATION_TIME_S = 1.1;
    private static final double TAIL_START_S = 0.020;
    private static final double TAIL_LENGTH_S = 0.8;
    private static final double TAIL_LEVEL = Math.pow(10, -11 / 20.0);
    private static final double TAIL_DARKENING_HZ = 4000;
    private static final double WALL_ABSORPTION_HZ = 5000;

    private final double[] tail;
    private final double[] delaysS = new double[6];
    private final double[] gains = new double[6];
    private final double sampleRateHz;
    /** Of the sound and its echo, of probe and sweep. */
    private final LastUsed<Integer, double[]> spectra = new LastUsed<>(4);

    Hall(long seed, double sampleRateHz) {
        Random random = new Random(seed * 31 + 7);
        this.sampleRateHz = sampleRateHz;
        double smoothing = Math.exp(-2 * Math.PI * TAIL_DARKENING_HZ / sampleRateHz);
        tail = new double[(int) (TAIL_LENGTH_S * sampleRateHz)];
        double smooth = 0;
        double energy = 0;
        for (int i = (int) (TAIL_START_S * sampleRateHz); i < tail.length; i++) {
            smooth = smoothing * smooth + (1 - smoothing) * random.nextGaussian();
            tail[i] = smooth * Math.pow(10, -3 * i / sampleRateHz / REVERBERATION_TIME_S);
            energy += tail[i] * tail[i];
        }
        for (int i = 0; i < tail.length; i++) {
            tail[i] *= TAIL_LEVEL / Math.sqrt(energy);
        }
        for (int k = 0; k < delaysS.length; k++) {
            delaysS[k] = 0.0035 + 0.0045 * k + 0.003 * random.nextDouble();
            gains[k] = (random.nextBoolean() ? 1 : -1) * Math.pow(10, -(13 + 1.5 * k + 4 * random.nextDouble()) / 20);
        }
    }

    /** Spectrum of the tail for one transform length, in the packed form of the transform; shared, not to be changed. */
    double[] tailSpectrum(int length) {
        return spectra.get(length, n -> {
            double[] spectrum = new double[n];
            System.arraycopy(tail, 0, spectrum, 0, Math.min(n, tail.length));
            new DoubleFFT_1D(n).realForward(spectrum);
            return spectrum;
        });
    }

    /** Adds the early reflections of a sound to itself; where the cabinet stands decides when they come. */
    void addReflections(double[] sound, double placementShiftS) {
        double[] dull = new double[sound.length];
        double smoothing = Math.exp(-2 * Math.PI * WALL_ABSORPTION_HZ / sampleRateHz);
        double state = 0;
        for (int i = 0; i < sound.length; i++) {
            state = smoothing * state + (1 - smoothing) * sound[i];
            dull[i] = state;
        }
        for (int k = 0; k < delaysS.length; k++) {
            double turn = (k % 2 == 0 ? 1 : -1) * (1 + 0.3 * k);
            int delay = (int) Math.round((delaysS[k] + turn * placementShiftS) * sampleRateHz);
            for (int i = delay; i < sound.length; i++) {
                sound[i] += gains[k] * dull[i - delay];
            }
        }
    }
}
