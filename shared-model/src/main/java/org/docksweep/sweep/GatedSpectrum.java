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
        Gate last = null;
        double[] window = {};
        double[] cosine = {};
        double[] sine = {};
        for (int p = from; p < to; p++) {
            Gate gate = gates.apply(frequencyHz[p]);
            if (!gate.equals(last)) {
                window = gate.window(rateHz);
                cosine = new double[window.length];
                sine = new double[window.length];
                last = gate;
            }
            int pre = gate.preSamples(rateHz);
            windowEnergy[p] = step * phasors(window, 2 * Math.PI * frequencyHz[p] / rateHz, pre, cosine, sine);
            for (int r = 0; r + 1 < responses.length; r += 2) {
                readTwo(responses, r, peak - pre, step, p, cosine, sine);
            }
            if (responses.length % 2 == 1) {
                readOne(responses, responses.length - 1, peak - pre, step, p, cosine, sine);
            }
        }
    }

    private void readOne(double[][] responses, int r, int from, int step, int p, double[] cosine, double[] sine) {
        double[] response = responses[r];
        int mask = response.length - 1;
        double sumRe = 0;
        double sumIm = 0;
        for (int i = 0; i < cosine.length; i++) {
            double value = response[from + i & mask];
            sumRe += value * cosine[i];
            sumIm += value * sine[i];
        }
        re[r][p] = step * sumRe;
        im[r][p] = step * sumIm;
    }

    /** Two at a time: a sum alone only waits for its own last addition. */
    private void readTwo(double[][] responses, int r, int from, int step, int p, double[] cosine, double[] sine) {
        double[] first = responses[r];
        double[] second = responses[r + 1];
        int mask = first.length - 1;
        double firstRe = 0;
        double firstIm = 0;
        double secondRe = 0;
        double secondIm = 0;
        for (int i = 0; i < cosine.length; i++) {
            double a = first[from + i & mask];
            double b = second[from + i & mask];
            firstRe += a * cosine[i];
            firstIm += a * sine[i];
            secondRe += b * cosine[i];
            secondIm += b * sine[i];
        }
        re[r][p] = step * firstRe;
        im[r][p] = step * firstIm;
        re[r + 1][p] = step * secondRe;
        im[r + 1][p] = step * secondIm;
    }

    /** Fills in the windowed phasors and returns the energy of the window. */
    private static double phasors(double[] window, double angle, int pre, double[] cosine, double[] sine) {
        double stepRe = StrictMath.cos(angle);
        double stepIm = -StrictMath.sin(angle);
        double re = StrictMath.cos(angle * pre);
        double im = StrictMath.sin(angle * pre);
        double energy = 0;
        for (int i = 0; i < window.length; i++) {
            cosine[i] = window[i] * re;
            sine[i] = window[i] * im;
            energy += window[i] * window[i];
            double next = re * stepRe - im * stepIm;
            im = re * stepIm + im * stepRe;
            re = next;
        }
        return energy;
    }

    private static double[] thinned(double[] response, int peak, int pre, int post) {
        // A power of two, because responses are read circularly.
        double[] slow = new double[Fourier.sizeFor(pre + post)];
        int half = LOW_PASS.length / 2;
        int mask = response.length - 1;
        for (int n = 0; n < pre + post; n++) {
            int centre = peak + (n - pre) * STEP;
            double sum = 0;
            for (int t = 0; t < LOW_PASS.length; t++) {
                sum += LOW_PASS[t] * response[centre + t - half & mask];
            }
            slow[n] = sum;
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
