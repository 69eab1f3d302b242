package org.docksweep.demo.rig;

import java.util.SplittableRandom;
import org.docksweep.demo.physics.Load;
import org.docksweep.sweep.SweepPlan;

/**
 * Sounds of parts that touch. A coil that rubs scrapes where the excursion turns at its outward end, when it is at least
 * half of the sweep's largest: each scrape a burst of 0.4 to 1.6 ms of noise between 1 and 15 kHz, its level rising with
 * the excursion and wandering by 3 dB, its place by some per cent of the period, and one in ten stays out. A loose part
 * is a resonator driven by the cone; it strikes when its swing passes half of its largest, and rings on in three modes
 * of some kilohertz. In a healthy cabinet air rushes in the port where the excursion is large. Sizes are assumed, no
 * source.
 */
final class Rattles {
    private static final double THRESHOLD = 0.5;
    private static final double OUT_SHARE = 0.1;
    private static final double PLACE_SPREAD = 0.02;
    private static final double LOW_HZ = 1000;
    private static final double HIGH_HZ = 15_000;
    private static final double LOOSE_PART_Q = 6;
    private static final double[] MODES_HZ = {1900, 3700, 6800};
    /** Rush of the port at the largest excursion of the sweep, rms re the sweep's peak. */
    private static final double PORT_RUSH = 0.0006;

    private final double sampleRateHz;

    Rattles(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    /**
     * Sound of everything that touches, direct.
     *
     * @param plan what plays
     * @param playback the playback
     * @param load what is swept
     * @param p sound so far, in pascals, read only
     * @param x excursion as a share of its limit
     * @return pascals, as long as p
     */
    double[] sound(SweepPlan plan, Playback playback, Load load, double[] p, double[] x) {
        double[] sound = new double[p.length];
        double largest = 0;
        for (double value : x) {
            largest = Math.max(largest, Math.abs(value));
        }
        if (largest == 0) {
            return sound;
        }
        SplittableRandom random = playback.random();
        double peak = sweepPeak(plan, playback, p);
        rush(sound, x, largest, PORT_RUSH * peak, random);
        if (load.rubDb() > Double.NEGATIVE_INFINITY) {
            rub(sound, x, largest, peak * Math.pow(10, load.rubDb() / 20), random);
        }
        if (load.rattle() != null) {
            strike(sound, x, load.rattle(), peak, random);
        }
        return sound;
    }

    private void rush(double[] sound, double[] x, double largest, double rms, SplittableRandom random) {
        double smoothing = Math.exp(-2 * Math.PI * 3000 / sampleRateHz);
        double state = 0;
        for (int k = 0; k < x.length; k++) {
            double share = x[k] / largest;
            state = smoothing * state + (1 - smoothing) * (2 * random.nextDouble() - 1) * 3;
            sound[k] += rms * share * share * state;
        }
    }

    private void rub(double[] sound, double[] x, double largest, double peak, SplittableRandom random) {
        int since = 0;
        for (int k = 1; k < x.length - 1; k++) {
            since++;
            if (x[k] > THRESHOLD * largest && x[k] >= x[k - 1] && x[k] > x[k + 1]) {
                double period = Math.min(since, sampleRateHz / 10);
                since = 0;
                if (random.nextDouble() < OUT_SHARE) {
                    continue;
                }
                double over = (x[k] / largest - THRESHOLD) / (1 - THRESHOLD);
                double level = peak * (0.5 + 0.5 * over) * Math.pow(10, -3 * random.nextDouble() / 20);
                int place = k + (int) (PLACE_SPREAD * period * normal(random));
                addBurst(sound, place, level, 0.0004 + 0.0012 * random.nextDouble(), random);
            }
        }
    }

    /** Noise through a first-order high-pass at 1 kHz and low-pass at 15 kHz under a short rise and an exponential fall. */
    private void addBurst(double[] sound, int place, double peak, double lengthS, SplittableRandom random) {
        int length = (int) (2 * lengthS * sampleRateHz);
        double[] burst = new double[length];
        double low = Math.exp(-2 * Math.PI * LOW_HZ / sampleRateHz);
        double high = Math.exp(-2 * Math.PI * HIGH_HZ / sampleRateHz);
        double slow = 0;
        double smooth = 0;
        double largest = 1e-12;
        for (int m = 0; m < length; m++) {
            double envelope = Math.min(1, m / (0.0001 * sampleRateHz)) * Math.exp(-4.0 * m / length);
            smooth = high * smooth + (1 - high) * (2 * random.nextDouble() - 1);
            slow = low * slow + (1 - low) * smooth;
            burst[m] = envelope * (smooth - slow);
            largest = Math.max(largest, Math.abs(burst[m]));
        }
        for (int m = Math.max(0, -place); m < length && place + m < sound.length; m++) {
            sound[place + m] += peak / largest * burst[m];
        }
    }

    private void strike(double[] sound, double[] x, Load.Rattle rattle, double peak, SplittableRandom random) {
        double[] swing = resonating(x, rattle.resonanceHz());
        double largest = 0;
        for (double value : swing) {
            largest = Math.max(largest, Math.abs(value));
        }
        double strength = peak * Math.pow(10, rattle.levelDb() / 20) / MODES_HZ.length * 1.6;
        boolean out = false;
        for (int k = 1; k < swing.length; k++) {
            boolean over = swing[k] > THRESHOLD * largest;
            if (over && !out) {
                double slope =
                        (swing[k] - swing[k - 1]) * sampleRateHz / (2 * Math.PI * rattle.resonanceHz() * largest);
                ring(sound, k, strength * Math.min(1, 0.4 + slope) * (0.7 + 0.3 * random.nextDouble()), random);
            }
            out = over;
        }
    }

    private void ring(double[] sound, int from, double strength, SplittableRandom random) {
        for (double modeHz : MODES_HZ) {
            double hz = modeHz * (1 + 0.01 * normal(random));
            double phase = 2 * Math.PI * random.nextDouble();
            double decayS = 0.0015 + 0.002 * random.nextDouble();
            for (int m = 0; from + m < sound.length && m < 6 * decayS * sampleRateHz; m++) {
                double t = m / sampleRateHz;
                sound[from + m] += strength * Math.exp(-t / decayS) * Math.sin(2 * Math.PI * hz * t + phase);
            }
        }
    }

    /** What a resonator does when its foot moves as x does. */
    private double[] resonating(double[] x, double resonanceHz) {
        double[] swing = new double[x.length];
        double omega = 2 * Math.PI * resonanceHz / sampleRateHz;
        double radius = Math.exp(-omega / (2 * LOOSE_PART_Q));
        double a1 = 2 * radius * Math.cos(omega);
        double a2 = -radius * radius;
        for (int k = 2; k < x.length; k++) {
            double acceleration = x[k] - 2 * x[k - 1] + x[k - 2];
            swing[k] = a1 * swing[k - 1] + a2 * swing[k - 2] + acceleration;
        }
        return swing;
    }

    /** Largest sound between 1 and 15 kHz of the sweep. */
    private double sweepPeak(SweepPlan plan, Playback playback, double[] p) {
        double start = plan.startFrame(0) + playback.latencyS() * sampleRateHz;
        double peak = 0;
        for (int k = (int) start; k < Math.min(p.length, start + plan.signal().frames()); k++) {
            double frequencyHz = plan.signal().frequencyHzAt((k - start) / sampleRateHz);
            if (frequencyHz >= LOW_HZ && frequencyHz <= HIGH_HZ) {
                peak = Math.max(peak, Math.abs(p[k]));
            }
        }
        return peak;
    }

    private static double normal(SplittableRandom random) {
        return (random.nextDouble() + random.nextDouble() + random.nextDouble() + random.nextDouble() - 2)
                * Math.sqrt(3);
    }
}
