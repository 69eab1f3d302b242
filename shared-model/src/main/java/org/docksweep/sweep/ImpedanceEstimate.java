package org.docksweep.sweep;

/**
 * Impedance from gated responses of voltage and current, Z = Hv / Hi, with the variance the noise of the silence makes:
 * {@code E|dZ|^2 = (Svv + |Z|^2 Sii - 2 Re(conj(Z) Svi)) |G|^2 sum(w^2) / (M |Hi|^2)}; half of it falls to the real and half to the
 * imaginary part. For unrelated noise of equal density this is var(ln Z) = 2 Sn Tg f / (A^2 L) (1/|Z|^2 + 1/Rs^2)
 * |Z + Rs|^2 of a source behind the resistance Rs.
 */
final class ImpedanceEstimate {
    /**
     * What the gates themselves leave in Re and Im, relative to |Z|, near the lower end of the sweep and elsewhere: the
     * typical error of simulated drivers without noise.
     */
    private static final double RIPPLE_LOW = 7e-4;

    private static final double RIPPLE = 5e-5;

    /** Where the lower end ends, as a multiple of the sweep's first frequency. */
    private static final double LOW_END = 2.2;

    /** Points on each side over which a scatter between sweeps is averaged. */
    private static final int SCATTER_REACH = 6;

    /** A scatter so many times the predicted variance is believed over the prediction. */
    private static final double SCATTER_EXCESS = 3;

    final double[] frequencyHz;
    final double[] resistanceOhm;
    final double[] reactanceOhm;
    final double[] standardUncertaintyOhm;
    /** Volts per volt of drive. */
    final double[] voltageGain;
    /** Amperes per volt of drive. */
    final double[] currentGain;
    /** Standard uncertainty of the current gain, real and imaginary part each. */
    final double[] currentGainUncertainty;

    private ImpedanceEstimate(int points, double[] frequencyHz) {
        this.frequencyHz = frequencyHz;
        resistanceOhm = new double[points];
        reactanceOhm = new double[points];
        standardUncertaintyOhm = new double[points];
        voltageGain = new double[points];
        currentGain = new double[points];
        currentGainUncertainty = new double[points];
    }

    /**
     * The impedance from the mean of some sweeps.
     *
     * @param spectra gated spectra of voltage (0) and current (1), one per sweep
     * @param used sweeps to use, at least one
     * @param capture where the noise comes from
     * @return the estimate
     */
    static ImpedanceEstimate of(GatedSpectrum[] spectra, boolean[] used, PreparedCapture capture) {
        double[] frequencyHz = spectra[0].frequencyHz();
        ImpedanceEstimate result = new ImpedanceEstimate(frequencyHz.length, frequencyHz);
        int v = capture.channel(ChannelRole.VOLTAGE);
        int i = capture.channel(ChannelRole.CURRENT);
        for (int p = 0; p < frequencyHz.length; p++) {
            double vRe = 0;
            double vIm = 0;
            double iRe = 0;
            double iIm = 0;
            int count = 0;
            for (int k = 0; k < spectra.length; k++) {
                if (used[k]) {
                    vRe += spectra[k].re()[0][p];
                    vIm += spectra[k].im()[0][p];
                    iRe += spectra[k].re()[1][p];
                    iIm += spectra[k].im()[1][p];
                    count++;
                }
            }
            double square = Math.max(Double.MIN_NORMAL, iRe * iRe + iIm * iIm);
            double re = (vRe * iRe + vIm * iIm) / square;
            double im = (vIm * iRe - vRe * iIm) / square;
            double f = frequencyHz[p];
            double gain = capture.deconvolver.noiseGain(f, Math.max(2, f / 50))
                    * spectra[0].windowEnergy()[p]
                    / count;
            double sii = capture.noise.power(i, f);
            double cross = v < i
                    ? re * capture.noise.crossRe(v, i, f) + im * capture.noise.crossIm(v, i, f)
                    : re * capture.noise.crossRe(i, v, f) - im * capture.noise.crossIm(i, v, f);
            double density = Math.max(0, capture.noise.power(v, f) + (re * re + im * im) * sii - 2 * cross);
            result.resistanceOhm[p] = re;
            result.reactanceOhm[p] = im;
            result.voltageGain[p] = Math.hypot(vRe, vIm) / count;
            result.currentGain[p] = Math.sqrt(square) / count;
            result.currentGainUncertainty[p] = Math.sqrt(sii * gain / 2);
            double noise = density * gain * count * count / square / 2;
            double ripple = (f < LOW_END * capture.signal.startHz() ? RIPPLE_LOW : RIPPLE) * Math.hypot(re, im);
            result.standardUncertaintyOhm[p] = Math.sqrt(noise + ripple * ripple);
        }
        return result;
    }

    /**
     * Widens the uncertainty where sweeps scatter more than the silence let expect.
     *
     * @param one estimate of one sweep alone
     * @param two estimate of another sweep alone
     */
    void widenByScatter(ImpedanceEstimate one, ImpedanceEstimate two) {
        int n = frequencyHz.length;
        for (int p = 0; p < n; p++) {
            double sum = 0;
            int count = 0;
            for (int q = Math.max(0, p - SCATTER_REACH); q <= Math.min(n - 1, p + SCATTER_REACH); q++) {
                double expected = 2 * (square(one.standardUncertaintyOhm[q]) + square(two.standardUncertaintyOhm[q]));
                sum += square(one.distanceOhm(two, q)) / Math.max(Double.MIN_NORMAL, expected);
                count++;
            }
            double excess = sum / count;
            if (excess > SCATTER_EXCESS) {
                standardUncertaintyOhm[p] *= Math.sqrt(excess);
            }
        }
    }

    /**
     * Whether two sweeps measured different things.
     *
     * @param other estimate of another sweep alone
     * @return true if more than a twentieth of the points differ by more than 2 % and five standard deviations
     */
    boolean differsFrom(ImpedanceEstimate other) {
        int count = 0;
        for (int p = 0; p < frequencyHz.length; p++) {
            double sd = Math.hypot(standardUncertaintyOhm[p], other.standardUncertaintyOhm[p]);
            if (distanceOhm(other, p) > Math.max(5 * Math.sqrt(2) * sd, 0.02 * magnitudeOhm(p))) {
                count++;
            }
        }
        return count > frequencyHz.length / 20;
    }

    double magnitudeOhm(int point) {
        return Math.hypot(resistanceOhm[point], reactanceOhm[point]);
    }

    Causality.Result causality() {
        return Causality.test(frequencyHz, resistanceOhm, reactanceOhm, standardUncertaintyOhm);
    }

    ImpedanceCurve curve() {
        return new ImpedanceCurve(frequencyHz, resistanceOhm, reactanceOhm, standardUncertaintyOhm);
    }

    private double distanceOhm(ImpedanceEstimate other, int point) {
        return Math.hypot(
                resistanceOhm[point] - other.resistanceOhm[point], reactanceOhm[point] - other.reactanceOhm[point]);
    }

    private static double square(double value) {
        return value * value;
    }
}
