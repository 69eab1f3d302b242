package org.docksweep.sweep;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.jtransforms.fft.DoubleFFT_1D;
import org.jtransforms.utils.CommonUtils;

/**
 * Real transforms of power-of-two length, in place. The packed spectrum of length n holds the real parts at even
 * places, the imaginary parts at odd ones, and the real value at half the sample rate in place 1.
 */
public final class Fourier {
    static {
        // Split over threads the same transform rounds differently; the last digit must not depend on the machine.
        CommonUtils.setThreadsBeginN_1D_FFT_2Threads(Long.MAX_VALUE);
        CommonUtils.setThreadsBeginN_1D_FFT_4Threads(Long.MAX_VALUE);
    }

    private static final Map<Integer, DoubleFFT_1D> TRANSFORMS = new ConcurrentHashMap<>();

    private Fourier() {}

    /**
     * Smallest power of two that holds samples.
     *
     * @param samples number of samples
     * @return size, at least 2
     */
    public static int sizeFor(int samples) {
        int highest = Integer.highestOneBit(Math.max(2, samples));
        return highest == samples ? highest : highest * 2;
    }

    /**
     * Replaces samples by their packed spectrum, sum of x[n] exp(-2 pi j k n / N).
     *
     * @param samples samples, a power of two of them; overwritten
     */
    public static void forward(double[] samples) {
        transform(samples.length).realForward(samples);
    }

    /**
     * Replaces a packed spectrum by its samples, with the factor 1/N.
     *
     * @param spectrum packed spectrum; overwritten
     */
    public static void inverse(double[] spectrum) {
        transform(spectrum.length).realInverse(spectrum, true);
    }

    private static DoubleFFT_1D transform(int size) {
        return TRANSFORMS.computeIfAbsent(size, DoubleFFT_1D::new);
    }
}
