package org.docksweep.sweep;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.positive;

import org.docksweep.fleet.LevelMask;

/**
 * A synchronised exponential sweep with a voltage that may vary with frequency:
 * {@code u(t) = w(t) sqrt(2) U(f(t)) sin(2 pi f1 L exp(t / L))}, {@code f(t) = f1 exp(t / L)},
 * {@code L = round(f1 T / ln(f2/f1)) / f1} (Novak, Lotton, Simon, JAES 63(10), 2015). The rounding changes the
 * duration: {@link #durationS()} is the real one, {@code L ln(f2/f1)}. w(t) fades in and out with half cosines.
 *
 * @param startHz f1, greater than 0
 * @param stopHz f2, greater than f1, below half the sample rate
 * @param rateConstantS L in seconds, greater than 0
 * @param sampleRateHz samples per second, 8000 to 384000
 * @param level U(f) in volts rms; must cover f1 to f2
 * @param fadeInS length of the fade-in in seconds, at least 0
 * @param fadeOutS length of the fade-out in seconds, at least 0
 */
public record SweepSignal(
        double startHz,
        double stopHz,
        double rateConstantS,
        int sampleRateHz,
        LevelMask level,
        double fadeInS,
        double fadeOutS) {

    /** Longest sweep accepted, in seconds: a guard against absurd headers. */
    public static final double MAX_DURATION_S = 60;

    public SweepSignal {
        positive("sweep startHz", startHz);
        inRange("sweep sampleRateHz", sampleRateHz, 8000, 384000);
        if (!(stopHz > startHz && stopHz < sampleRateHz / 2.0)) {
            throw new IllegalArgumentException("sweep stopHz must be above startHz (" + startHz
                    + ") and below half the sample rate (" + sampleRateHz / 2.0 + "), but is " + stopHz);
        }
        positive("sweep rateConstantS", rateConstantS);
        inRange("sweep duration", rateConstantS * StrictMath.log(stopHz / startHz), 0.01, MAX_DURATION_S);
        if (level == null || !(level.lowestHz() <= startHz * 1.000001 && level.highestHz() >= stopHz * 0.999999)) {
            throw new IllegalArgumentException("sweep level must cover " + startHz + " to " + stopHz + " Hz");
        }
        inRange("sweep fadeInS", fadeInS, 0, MAX_DURATION_S);
        inRange("sweep fadeOutS", fadeOutS, 0, MAX_DURATION_S);
    }

    /**
     * Makes a synchronised sweep near a wanted duration.
     *
     * @param startHz f1
     * @param stopHz f2
     * @param wantedDurationS duration asked for, in seconds
     * @param sampleRateHz samples per second
     * @param level voltage against frequency
     * @return the sweep; read its real duration back
     */
    public static SweepSignal synchronised(
            double startHz, double stopHz, double wantedDurationS, int sampleRateHz, LevelMask level) {
        double cycles = Math.max(1, Math.rint(startHz * wantedDurationS / StrictMath.log(stopHz / startHz)));
        double rateConstantS = cycles / startHz;
        double fadeInS = rateConstantS * StrictMath.log(2) / 4;
        double fadeOutS = rateConstantS * StrictMath.log(2) / 12;
        return new SweepSignal(startHz, stopHz, rateConstantS, sampleRateHz, level, fadeInS, fadeOutS);
    }

    /**
     * Real duration, L ln(f2/f1).
     *
     * @return seconds
     */
    public double durationS() {
        return rateConstantS * StrictMath.log(stopHz / startHz);
    }

    /**
     * Number of samples of the sweep.
     *
     * @return samples, at least 1
     */
    public int frames() {
        return (int) Math.ceil(durationS() * sampleRateHz);
    }

    /**
     * Instantaneous frequency.
     *
     * @param timeS time since the start of the sweep, in seconds
     * @return frequency in hertz
     */
    public double frequencyHzAt(double timeS) {
        return startHz * StrictMath.exp(timeS / rateConstantS);
    }

    /**
     * How much earlier than the linear response the response of harmonic order n appears: L ln n (Farina 2000).
     *
     * @param order order n, at least 1
     * @return seconds
     */
    public double harmonicLeadS(int order) {
        return rateConstantS * StrictMath.log(order);
    }

    /**
     * The sweep in volts.
     *
     * @return a new array of {@link #frames()} samples
     */
    public double[] voltageSamples() {
        double[] samples = new double[frames()];
        voltageSamples(samples);
        return samples;
    }

    /**
     * Writes the sweep in volts into an array.
     *
     * @param samples at least {@link #frames()} values
     */
    void voltageSamples(double[] samples) {
        double durationS = durationS();
        int frames = frames();
        for (int i = 0; i < frames; i++) {
            double timeS = i / (double) sampleRateHz;
            double frequencyHz = Math.min(stopHz, Math.max(startHz, frequencyHzAt(timeS)));
            double levelHz = Math.min(level.highestHz(), Math.max(level.lowestHz(), frequencyHz));
            double phase = 2 * Math.PI * startHz * rateConstantS * StrictMath.exp(timeS / rateConstantS);
            samples[i] = Math.sqrt(2) * level.voltageVrmsAt(levelHz) * fade(timeS, durationS) * StrictMath.sin(phase);
        }
    }

    private double fade(double timeS, double durationS) {
        double in = fadeInS > 0 && timeS < fadeInS ? 0.5 - 0.5 * StrictMath.cos(Math.PI * timeS / fadeInS) : 1;
        double leftS = durationS - timeS;
        double out = fadeOutS > 0 && leftS < fadeOutS ? 0.5 - 0.5 * StrictMath.cos(Math.PI * leftS / fadeOutS) : 1;
        return in * out;
    }
}
