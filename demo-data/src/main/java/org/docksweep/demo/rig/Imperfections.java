package org.docksweep.demo.rig;

import java.util.SplittableRandom;

/**
 * What is not linear, and what changes while it plays.
 *
 * <p>The current distorts by {@code i (a2 x + a3 x^2)} with x the excursion as a share of its limit, the sound likewise
 * and by {@code b p^2} in the air of a horn. A suspension that gives a little late adds {@code c x |x|} to the share, odd
 * orders that never end. Sizes assumed, no source.
 */
final class Imperfections {
    private static final double CURRENT_SECOND_ORDER = 0.06;
    static final double CURRENT_THIRD_ORDER = -0.25;
    private static final double LATE_SHARE = 0.01;
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
            double late = LATE_SHARE * Math.abs(x[k]);
            double extra = i[k] * share;
            i[k] += extra;
            v[k] -= extra * source;
            p[k] += p[k] * (share + late) + AIR_SECOND_ORDER_PER_PA * p[k] * p[k];
        }
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
