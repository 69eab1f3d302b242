package org.docksweep.demo.rig;

import java.util.SplittableRandom;
import org.docksweep.sweep.SweepPlan;

/**
 * What is not linear, and what changes while it plays.
 *
 * <p>The current distorts by {@code i (a2 x + a3 x^2)} with x the excursion as a share of its limit, the sound likewise
 * and by {@code b p^2} in the air of a horn; sizes assumed, no source.
 */
final class Imperfections {
    private static final double CURRENT_SECOND_ORDER = 0.06;
    static final double CURRENT_THIRD_ORDER = -0.25;
    private static final double AIR_SECOND_ORDER_PER_PA = 0.0015;

    private final Electronics electronics;
    private final double sampleRateHz;

    Imperfections(Electronics electronics, double sampleRateHz) {
        this.electronics = electronics;
        this.sampleRateHz = sampleRateHz;
    }

    void distort(double[] v, double[] i, double[] p, double[] x) {
        if (!electronics.distortion()) {
            return;
        }
        double source = electronics.sourceOhm();
        for (int k = 0; k < v.length; k++) {
            double share = CURRENT_SECOND_ORDER * x[k] + CURRENT_THIRD_ORDER * x[k] * x[k];
            double extra = i[k] * share;
            i[k] += extra;
            v[k] -= extra * source;
            p[k] += p[k] * share + AIR_SECOND_ORDER_PER_PA * p[k] * p[k];
        }
    }

    /** Bursts of 1 ms where the excursion turns at its outward end, when it is at least half of the sweep's largest. */
    void rub(SweepPlan plan, Playback playback, double rubDb, double[] p, double[] x) {
        if (rubDb == Double.NEGATIVE_INFINITY) {
            return;
        }
        double largest = 0;
        for (double value : x) {
            largest = Math.max(largest, value);
        }
        double peak = sweepPeak(plan, playback, p) * Math.pow(10, rubDb / 20);
        SplittableRandom random = playback.random();
        int burst = (int) (0.001 * sampleRateHz);
        for (int k = 1; k < x.length - burst; k++) {
            if (x[k] > 0.5 * largest && x[k] >= x[k - 1] && x[k] > x[k + 1]) {
                double before = 0;
                double strength = peak * (0.7 + 0.3 * random.nextDouble());
                for (int m = 0; m < burst; m++) {
                    double white = 2 * random.nextDouble() - 1;
                    p[k + m] += strength * Math.exp(-6.0 * m / burst) * (white - before) / 1.5;
                    before = white;
                }
            }
        }
    }

    /** Largest sound between 1 and 15 kHz of the sweep. */
    private double sweepPeak(SweepPlan plan, Playback playback, double[] p) {
        double start = plan.startFrame(0) + playback.latencyS() * sampleRateHz;
        double peak = 0;
        for (int k = (int) start; k < Math.min(p.length, start + plan.signal().frames()); k++) {
            double frequencyHz = plan.signal().frequencyHzAt((k - start) / sampleRateHz);
            if (frequencyHz >= 1000 && frequencyHz <= 15_000) {
                peak = Math.max(peak, Math.abs(p[k]));
            }
        }
        return peak;
    }

    /** Lets go at random moments for 15 to 120 ms, with edges of half a millisecond. */
    void mixFailures(Signals holding, Signals failing, Playback playback) {
        SplittableRandom random = playback.random();
        double edge = 1 / (0.0005 * sampleRateHz);
        double loose = 0;
        double target = 0;
        int left = nextHold(playback, random);
        for (int k = 0; k < holding.volts().length; k++) {
            if (left-- <= 0) {
                target = 1 - target;
                left = target == 1
                        ? (int) ((0.015 + 0.105 * random.nextDouble()) * sampleRateHz)
                        : nextHold(playback, random);
            }
            loose += Math.max(-edge, Math.min(edge, target - loose));
            if (loose > 0) {
                holding.volts()[k] += loose * (failing.volts()[k] - holding.volts()[k]);
                holding.amperes()[k] += loose * (failing.amperes()[k] - holding.amperes()[k]);
                holding.pascals()[k] += loose * (failing.pascals()[k] - holding.pascals()[k]);
            }
        }
    }

    private int nextHold(Playback playback, SplittableRandom random) {
        double meanS = 1 / Math.max(1e-3, playback.failuresPerS());
        return (int) (-Math.log(1 - random.nextDouble()) * meanS * sampleRateHz);
    }
}
