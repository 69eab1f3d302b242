package org.docksweep.acoustic;

import org.docksweep.sweep.Fourier;
import org.docksweep.sweep.MicrophoneTake;

/**
 * How much stronger the early sound is than the hall's answer. A cabinet that is turned away or a microphone that has
 * moved off loses early sound and keeps the hall's; a weak driver loses both alike.
 */
final class HallShare {
    private static final double BEFORE_S = 0.06;
    private static final double QUIET_S = 0.03;
    private static final double EARLY_FROM_S = -0.001;
    private static final double EARLY_TO_S = 0.006;
    private static final double LATE_FROM_S = 0.03;
    private static final double LATE_TO_S = 0.2;
    private static final double FAR_DB = 60;

    private HallShare() {}

    /**
     * Early over late energy in the uppermost two octaves of the sweep, at most 8 kHz.
     *
     * @param take the take
     * @return dB, from -60 to 60; noise is taken off
     */
    static double directDb(MicrophoneTake take) {
        int rate = take.signal().sampleRateHz();
        int size = Fourier.sizeFor((int) ((BEFORE_S + LATE_TO_S) * rate) + 1);
        double[] part = new double[size];
        int first = take.arrival() - (int) (BEFORE_S * rate);
        int length = (int) ((BEFORE_S + LATE_TO_S) * rate);
        for (int k = 0; k < take.sweeps(); k++) {
            double[] response = take.response(k);
            int mask = response.length - 1;
            for (int i = 0; i < length; i++) {
                part[i] += response[first + i & mask];
            }
        }
        Fourier.forward(part);
        double highHz = Math.min(8000, take.signal().stopHz());
        int low = (int) (highHz / 4 * size / rate);
        int high = (int) (highHz * size / rate);
        for (int k = 0; k < size / 2; k++) {
            double weight = k < low || k > high ? 0 : 1;
            part[2 * k] *= weight;
            part[2 * k + 1] *= weight;
        }
        part[1] = 0;
        Fourier.inverse(part);
        double noise = energy(part, 0.01, QUIET_S, rate) / (QUIET_S - 0.01);
        double early = energy(part, BEFORE_S + EARLY_FROM_S, BEFORE_S + EARLY_TO_S, rate)
                - noise * (EARLY_TO_S - EARLY_FROM_S);
        double late =
                energy(part, BEFORE_S + LATE_FROM_S, BEFORE_S + LATE_TO_S, rate) - noise * (LATE_TO_S - LATE_FROM_S);
        if (!(early > 0)) {
            return -FAR_DB;
        }
        double db = late > 0 ? 10 * StrictMath.log10(early / late) : FAR_DB;
        return Math.max(-FAR_DB, Math.min(FAR_DB, db));
    }

    private static double energy(double[] samples, double fromS, double toS, int rate) {
        double sum = 0;
        for (int i = (int) (fromS * rate); i < (int) (toS * rate); i++) {
            sum += samples[i] * samples[i];
        }
        return sum;
    }
}
