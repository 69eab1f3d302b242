package org.docksweep.demo.rig;

import java.util.function.IntFunction;
import org.docksweep.sweep.SweepSignal;
import org.jtransforms.fft.DoubleFFT_1D;

/** Spectra of the last few sweeps: one sweep is played for hundreds of cabinets. */
final class DriveSpectra {
    /** A megabyte or two each; probe and sweep of two models. */
    private static final int KEPT = 4;

    private record Key(SweepSignal signal, int length) {}

    private final LastUsed<Key, double[]> spectra = new LastUsed<>(KEPT);

    /** Packed spectrum of a sweep without latency; shared, not to be changed. */
    double[] spectrum(SweepSignal signal, int length, IntFunction<DoubleFFT_1D> transforms) {
        return spectra.get(new Key(signal, length), key -> {
            double[] spectrum = java.util.Arrays.copyOf(signal.voltageSamples(), length);
            transforms.apply(length).realForward(spectrum);
            return spectrum;
        });
    }
}
