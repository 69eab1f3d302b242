package org.docksweep.sweep;

import java.util.function.DoubleFunction;

/**
 * Complex responses at the grid frequencies, each through its own gate: {@code H(f) = sum w(n) h(n) exp(-j 2 pi f n)}
 * counted from the peak. Low frequencies are read from responses at an eighth of the rate, where long gates are cheap.
 *
 * @param frequencyHz grid
 * @param re real parts, per response
 * @param im imaginary parts, per response
 * @param windowEnergy sum of the squared window per frequency: what turns a noise density into a variance
 */
record GatedSpectrum(double[] frequencyHz, double[][] re, double[][] im, double[] windowEnergy) {
    private static final int STEP = 8;

    /** Frequencies up to this share of the sample rate are read at the lower rate (1 kHz at 48 kHz). */
    private static final double LOW_SHARE = 1.0 / 48;

    /** Low-pass before the lower rate: Blackman, cut at a sixteenth of the rate, 74 dB down where it would fold. */
    private static final double[] LOW_PASS = lowPass(8 * STEP, 1.0 / 16);

    /**
     * Looks at impulse responses through gates.
     *
     * @param responses circular impulse responses, all of the same size
     * @param peak index of the linear response in them
     * @param sampleRateHz samples per second
     * @param frequencyHz rising grid
     * @param gates gate for a frequency, never longer for a higher one
     * @return the spectra
     */
    static GatedSpectrum of(
            double[][] responses, int peak, int sampleRateHz, double[] frequencyHz, DoubleFunction<Gate> gates) {
        int points = frequencyHz.length;
        GatedSpectrum result = new GatedSpectrum(
                frequencyHz,
                new double[responses.length][points],
                new double[responses.length][points],
                new double[points]);
        int low = 0;
        while (low < points && frequencyHz[low] <= LOW_SHARE * sampleRateHz && sampleRateHz % STEP == 0) {
            low++;
        }
        if (low > 0) {
            Gate longest = gates.apply(frequencyHz[0]);
            int pre = (int) (longest.preS() * sampleRateHz / STEP) + 2;
            int post = (int) (longest.postS() * sampleRateHz / STEP) + 2;
            double[][] slow = new double[responses.length][];
            for (int r = 0; r < responses.length; r++) {
                slow[r] = thinned(responses[r], peak, pre, post);
            }
            result.read(slow, pre, sampleRateHz / STEP, STEP, 0, low, gates);
        }
        result.read(responses, peak, sampleRateHz, 1, low, points, gates);
        return result;
    }

    /** The same in pairs of responses that follow each other. */
    GatedSpectrum[] pairs() {
        GatedSpectrum[] pairs = new GatedSpectrum[re.length / 2];
        for (int k = 0; k < pairs.length; k++) {
            pairs[k] = new GatedSpectrum(
                    frequencyHz,
                    new double[][] {re[2 * k], re[2 * k + 1]},
                    new double[][] {im[2 * k], im[2 * k + 1]},
                    windowEnergy);
        }
        return pairs;
    }

    private void read(
            double[][] responses, int peak, int rateHz, int step, int from, int to, DoubleFunction<Gate> gates) {
        if (from == to) {
            return;
        }
        Gate last = null;
        int pre = 0;
        int length = 0;
        // the first gate is the longest
        double[][] seen =
                new double[responses.length][gates.apply(frequencyHz[from]).window(rateHz).length];
        Phasors.Sum sum = new Phasors.Sum();
        for (int p = from; p < to; p++) {
            Gate gate = gates.apply(frequencyHz[p]);
            if (!gate.equals(last)) {
                double[] window = gate.window(rateHz);
                pre = gate.preSamples(rateHz);
                length = window.length;
                windowEnergy[p] = step * Sums.energy(window, 0, length);
                for (int r = 0; r < responses.length; r++) {
                    copy(responses[r], peak - pre, seen[r], length);
                    for (int i = 0; i < length; i++) {
                        seen[r][i] *= window[i];
                    }
                }
                last = gate;
            } else {
                windowEnergy[p] = windowEnergy[p - 1];
            }
            double angle = -2 * Math.PI * frequencyHz[p] / rateHz;
            double startRe = step * StrictMath.cos(-angle * pre);
            double startIm = step * StrictMath.sin(-angle * pre);
            sum.turn(angle);
            for (int r = 0; r < responses.length; r++) {
                sum.of(seen[r], length);
                re[r][p] = sum.re() * startRe - sum.im() * startIm;
                im[r][p] = sum.re() * startIm + sum.im() * startRe;
            }
        }
    }

    /** Copies a stretch of a circular response. */
    private static void copy(double[] circular, int from, double[] into, int length) {
        int start = from & circular.length - 1;
        for (int done = 0; done < length; ) {
            int part = Math.min(length - done, circular.length - start);
            System.arraycopy(circular, start, into, done, part);
            done += part;
            start = 0;
        }
    }

    private static double[] thinned(double[] response, int peak, int pre, int post) {
        // A power of two, because responses are read circularly.
        double[] slow = new double[Fourier.sizeFor(pre + post)];
        int half = LOW_PASS.length / 2;
        double[] quick = new double[(pre + post - 1) * STEP + LOW_PASS.length];
        copy(response, peak - pre * STEP - half, quick, quick.length);
        for (int n = 0; n < pre + post; n++) {
            slow[n] = Sums.product(LOW_PASS, 0, quick, n * STEP, LOW_PASS.length);
        }
        return slow;
    }

    private static double[] lowPass(int half, double cut) {
        double[] taps = new double[2 * half + 1];
        double sum = 0;
        for (int t = 0; t < taps.length; t++) {
            double x = 2 * Math.PI * cut * (t - half);
            double angle = Math.PI * (t + 1) / (half + 1);
            double blackman = 0.42 - 0.5 * StrictMath.cos(angle) + 0.08 * StrictMath.cos(2 * angle);
            taps[t] = blackman * (x == 0 ? 1 : StrictMath.sin(x) / x);
            sum += taps[t];
        }
        for (int t = 0; t < taps.length; t++) {
            taps[t] /= sum;
        }
        return taps;
    }
}
