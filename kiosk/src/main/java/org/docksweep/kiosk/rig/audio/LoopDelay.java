package org.docksweep.kiosk.rig.audio;

import java.util.Arrays;
import java.util.OptionalInt;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Measures how much later a playback is captured than it was played: the lag of the peak of {@code X D* / (|D|^2 + e)}, X
 * the spectrum of the capture, D that of the whole playback, all repeats, so that one
 * repeat is not taken for another (a regularised deconvolution). Sound systems give another delay at
 * every start, so it is never assumed.
 */
final class LoopDelay {
    /** Share of the strongest bin below which the sweep is taken to have nothing there. */
    private static final double FLOOR = 1e-4;

    /** The peak's square must exceed the mean square so many times; noise alone reaches about 25. */
    private static final double FOUND_RATIO = 60;

    private LoopDelay() {}

    /**
     * Finds the delay.
     *
     * @param captured captured channel, any scale
     * @param from frame at which the playback would begin without delay
     * @param played the playback, any scale
     * @param longest longest delay looked for, in frames
     * @return frames from 0 to longest; empty when it is not there
     */
    static OptionalInt find(float[] captured, int from, double[] played, int longest) {
        int length = Math.min(captured.length - from, played.length + longest);
        int size = Integer.highestOneBit(Math.max(2, played.length + longest - 1)) * 2;
        double[] response = new double[size];
        for (int n = 0; n < length; n++) {
            response[n] = captured[from + n];
        }
        double[] drive = Arrays.copyOf(played, size);
        DoubleFFT_1D transform = new DoubleFFT_1D(size);
        transform.realForward(response);
        transform.realForward(drive);
        divide(response, drive);
        transform.realInverse(response, true);
        int peak = 0;
        double squares = 0;
        for (int n = 0; n < size; n++) {
            squares += response[n] * response[n];
            if (n <= longest && Math.abs(response[n]) > Math.abs(response[peak])) {
                peak = n;
            }
        }
        boolean found = response[peak] * response[peak] > FOUND_RATIO * squares / size;
        return found ? OptionalInt.of(peak) : OptionalInt.empty();
    }

    /** Packed spectra: bins 0 and size/2 are real and sit in front; a sweep has nothing at either. */
    private static void divide(double[] captured, double[] drive) {
        double strongest = 0;
        for (int k = 2; k < drive.length; k += 2) {
            strongest = Math.max(strongest, drive[k] * drive[k] + drive[k + 1] * drive[k + 1]);
        }
        captured[0] = 0;
        captured[1] = 0;
        for (int k = 2; k < drive.length; k += 2) {
            double re = captured[k] * drive[k] + captured[k + 1] * drive[k + 1];
            double im = captured[k + 1] * drive[k] - captured[k] * drive[k + 1];
            double divisor = drive[k] * drive[k] + drive[k + 1] * drive[k + 1] + FLOOR * strongest;
            captured[k] = divisor > 0 ? re / divisor : 0;
            captured[k + 1] = divisor > 0 ? im / divisor : 0;
        }
    }
}
