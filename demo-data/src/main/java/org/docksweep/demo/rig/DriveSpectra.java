package org.docksweep.demo.rig;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.IntFunction;
import org.docksweep.sweep.SweepSignal;
import org.jtransforms.fft.DoubleFFT_1D;

/** Spectra of the last few sweeps: one sweep is played for hundreds of cabinets. */
final class DriveSpectra {
    /** A megabyte or two each. */
    private static final int KEPT = 12;

    private record Key(SweepSignal signal, int length) {}

    private final Map<Key, double[]> spectra = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, double[]> eldest) {
            return size() > KEPT;
        }
    };

    /** Packed spectrum of a sweep without latency; shared, not to be changed. */
    synchronized double[] spectrum(SweepSignal signal, int length, IntFunction<DoubleFFT_1D> transforms) {
        return spectra.computeIfAbsent(new Key(signal, length), key -> {
            double[] spectrum = java.util.Arrays.copyOf(signal.voltageSamples(), length);
            transforms.apply(length).realForward(spectrum);
            return spectrum;
        });
    }
}
