package org.docksweep.acoustic;

import org.docksweep.sweep.MicrophoneTake;

/**
 * Hears whether another cabinet is swept at the same time with a sweep of the same speed. Its sound folds to a short
 * arrival far from this cabinet's own and from its harmonics, in every sweep. A sweep of clearly other speed is spread out and only
 * raises the noise.
 */
final class ForeignSweep {
    /** The own sound takes this long before its arrival and behind it, in seconds. */
    private static final double OWN_BEFORE_S = 0.06;

    private static final double OWN_BEHIND_S = 0.45;
    private static final double HARMONIC_REACH_S = 0.03;

    /** Length over which the mean square is taken that a peak is held against, in seconds. */
    private static final double AROUND_S = 0.05;

    /** Square over that mean from which a peak is an arrival; noise and knocks, which fold to chirps, reach about 25. */
    private static final double STANDS_OUT = 70;

    /** A square below this share of the own arrival's is no louder than a cabinet's own distortion. */
    private static final double OWN_SHARE = 1e-4;

    private static final int BOX = 6;

    private ForeignSweep() {}

    static boolean heard(MicrophoneTake take) {
        for (int k = 0; k < take.sweeps(); k++) {
            double[] smooth = middleBand(take, take.response(k));
            boolean heard = heard(take, smooth);
            take.giveBack(smooth);
            if (!heard) {
                return false;
            }
        }
        return true;
    }

    /**
     * Boxes of an eighth of a millisecond, three times: nothing is left near the upper end of the sweep, where the fade lifts what is noise
     * into a spike.
     */
    private static double[] middleBand(MicrophoneTake take, double[] response) {
        double[] once = take.room(response.length);
        double[] twice = take.room(response.length);
        box(response, once);
        box(once, twice);
        box(twice, once);
        take.giveBack(twice);
        return once;
    }

    private static void box(double[] samples, double[] smooth) {
        int mask = samples.length - 1;
        double sum = 0;
        for (int i = 0; i < BOX; i++) {
            sum += samples[mask - i];
        }
        for (int i = 0; i < smooth.length; i++) {
            sum += samples[i] - samples[i - BOX & mask];
            smooth[i] = sum / BOX;
        }
    }

    private static boolean heard(MicrophoneTake take, double[] response) {
        int rate = take.signal().sampleRateHz();
        int size = response.length;
        int mask = size - 1;
        int arrival = take.arrival();
        double own = 0;
        for (int i = arrival - 48; i < arrival + 48; i++) {
            own = Math.max(own, slope(response, i, mask));
        }
        int around = (int) (AROUND_S * rate);
        int longest = Math.min(size - (int) ((OWN_BEHIND_S + 0.2) * rate), (int)
                (0.93 * take.signal().durationS() * rate));
        double sum = 0;
        int first = arrival - longest;
        for (int i = first - around; i < first; i++) {
            sum += slope(response, i, mask);
        }
        for (int i = first; i < arrival - OWN_BEFORE_S * rate; i++) {
            double square = slope(response, i, mask);
            if (square > OWN_SHARE * own
                    && square * around > STANDS_OUT * sum
                    && square * around > STANDS_OUT * behind(response, i, around, mask)
                    && !nearHarmonic(take, (arrival - i) / (double) rate)) {
                return true;
            }
            sum += square - slope(response, i - around, mask);
        }
        for (int i = arrival + (int) (OWN_BEHIND_S * rate); i < arrival + size - longest - 2 * around; i++) {
            double square = slope(response, i, mask);
            double before = 0;
            if (square > OWN_SHARE * own) {
                for (int k = i - around; k < i; k++) {
                    before += slope(response, k, mask);
                }
                if (square * around > STANDS_OUT * Math.max(before, behind(response, i, around, mask))) {
                    return true;
                }
            }
        }
        return false;
    }

    /** A knock begins as suddenly, but it goes on. */
    private static double behind(double[] response, int index, int around, int mask) {
        double sum = 0;
        for (int i = index + around / 16; i < index + around / 16 + around; i++) {
            sum += slope(response, i, mask);
        }
        return sum;
    }

    /** Square of the step over a box: weighs what is high, where arrivals are short and rumble does not reach. */
    private static double slope(double[] response, int index, int mask) {
        double step = response[index & mask] - response[index - BOX & mask];
        return step * step;
    }

    private static boolean nearHarmonic(MicrophoneTake take, double leadS) {
        for (int n = 2; n <= Harmonics.HIGHEST_ORDER; n++) {
            if (Math.abs(leadS - take.signal().harmonicLeadS(n)) < HARMONIC_REACH_S) {
                return true;
            }
        }
        return false;
    }
}
