package org.docksweep.acoustic;

import java.util.Arrays;
import org.docksweep.sweep.MicrophoneTake;

/**
 * Hears whether another cabinet is swept at the same time with a sweep of the same speed. Its sound folds to a short
 * arrival far from this cabinet's own and from its harmonics. A sweep of clearly other speed is spread out and only
 * raises the noise.
 */
final class ForeignSweep {
    private static final double CELL_S = 0.005;
    /** Cells of the own sound: from here before the arrival to there behind it, in seconds. */
    private static final double OWN_BEFORE_S = 0.06;

    private static final double OWN_BEHIND_S = 0.45;
    private static final double HARMONIC_REACH_S = 0.03;
    /** Energy over the mean of the neighbours on both sides from which a cell is an arrival. */
    private static final double STANDS_OUT = 12;

    private static final int NEIGHBOURS = 12;
    /** Energy of this share of the own arrival is no louder than a cabinet's own distortion. */
    private static final double OWN_SHARE = 1e-4;

    private ForeignSweep() {}

    static boolean heard(MicrophoneTake take) {
        for (int k = 0; k < take.sweeps(); k++) {
            if (heard(take, take.response(k))) {
                return true;
            }
        }
        return false;
    }

    private static boolean heard(MicrophoneTake take, double[] response) {
        int rate = take.signal().sampleRateHz();
        int cell = (int) (CELL_S * rate);
        int cells = response.length / cell;
        double[] energy = new double[cells];
        int mask = response.length - 1;
        double before = 0;
        for (int c = 0; c < cells; c++) {
            for (int i = 0; i < cell; i++) {
                double value = response[take.arrival() + c * cell + i & mask];
                // The slope weighs what is high, where arrivals are short and rumble does not reach.
                double slope = value - before;
                before = value;
                energy[c] += slope * slope;
            }
        }
        double own = Math.max(energy[0], energy[cells - 1]);
        for (int c = 0; c < cells; c++) {
            double lagS = c * CELL_S;
            double leadS = response.length / (double) rate - lagS;
            if (lagS < OWN_BEHIND_S || leadS < OWN_BEFORE_S || nearHarmonic(take, leadS)) {
                continue;
            }
            if (energy[c] > OWN_SHARE * own && energy[c] > STANDS_OUT * around(energy, c)) {
                return true;
            }
        }
        return false;
    }

    private static boolean nearHarmonic(MicrophoneTake take, double leadS) {
        for (int n = 2; n <= Harmonics.HIGHEST_ORDER; n++) {
            if (Math.abs(leadS - take.signal().harmonicLeadS(n)) < HARMONIC_REACH_S) {
                return true;
            }
        }
        return false;
    }

    /** Median of the neighbours; the later ones hold the hall's answer to an arrival, so most weight lies before. */
    private static double around(double[] energy, int cell) {
        double[] values = new double[NEIGHBOURS];
        for (int d = 1; d <= NEIGHBOURS; d++) {
            values[d - 1] = energy[Math.floorMod(cell - d, energy.length)];
        }
        Arrays.sort(values);
        return values[NEIGHBOURS / 2];
    }
}
