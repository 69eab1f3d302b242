package org.docksweep.sweep;

import java.util.function.DoubleFunction;

/**
 * Complex responses at the grid frequencies, each through its own gate: {@code H(f) = sum w(n) h(n) exp(-j 2 pi f n)}
 * counted from the peak.
 *
 * @param frequencyHz grid
 * @param re real parts, per response
 * @param im imaginary parts, per response
 * @param windowEnergy sum of the squared window per frequency: what turns a noise density into a variance
 */
record GatedSpectrum(double[] frequencyHz, double[][] re, double[][] im, double[] windowEnergy) {

    /**
     * Looks at impulse responses through gates.
     *
     * @param responses circular impulse responses, all of the same size
     * @param peak index of the linear response in them
     * @param sampleRateHz samples per second
     * @param frequencyHz grid
     * @param gates gate for a frequency
     * @return the spectra
     */
    static GatedSpectrum of(
            double[][] responses, int peak, int sampleRateHz, double[] frequencyHz, DoubleFunction<Gate> gates) {
        int points = frequencyHz.length;
        double[][] re = new double[responses.length][points];
        double[][] im = new double[responses.length][points];
        double[] energy = new double[points];
        Gate last = null;
        double[] window = {};
        for (int p = 0; p < points; p++) {
            Gate gate = gates.apply(frequencyHz[p]);
            if (!gate.equals(last)) {
                window = gate.window(sampleRateHz);
                last = gate;
            }
            int pre = gate.preSamples(sampleRateHz);
            double angle = 2 * Math.PI * frequencyHz[p] / sampleRateHz;
            for (int r = 0; r < responses.length; r++) {
                accumulate(responses[r], peak - pre, window, angle, pre, re[r], im[r], p);
            }
            for (double w : window) {
                energy[p] += w * w;
            }
        }
        return new GatedSpectrum(frequencyHz, re, im, energy);
    }

    private static void accumulate(
            double[] response, int from, double[] window, double angle, int pre, double[] re, double[] im, int p) {
        double stepRe = StrictMath.cos(angle);
        double stepIm = -StrictMath.sin(angle);
        double phaseRe = StrictMath.cos(angle * pre);
        double phaseIm = StrictMath.sin(angle * pre);
        double sumRe = 0;
        double sumIm = 0;
        int mask = response.length - 1;
        for (int i = 0; i < window.length; i++) {
            double value = window[i] * response[from + i & mask];
            sumRe += value * phaseRe;
            sumIm += value * phaseIm;
            double next = phaseRe * stepRe - phaseIm * stepIm;
            phaseIm = phaseRe * stepIm + phaseIm * stepRe;
            phaseRe = next;
        }
        re[p] = sumRe;
        im[p] = sumIm;
    }
}
