package org.docksweep.kiosk.listening;

import org.docksweep.acoustic.ResidueSound;

/**
 * How loud a residue is played. All are scaled alike, by the level of their own sweep, so that cabinets can be compared by ear: what is 30
 * dB below the sweep's peak reaches the ceiling, which nothing passes. The ceiling begins at -26 dB re full scale and rises by 6 dB with each
 * step (own choice; how loud that is, is set at the headphones).
 */
final class SafeLevel {
    /** Steps of loudness. */
    static final int STEPS = 3;

    private static final double FIRST_CEILING_DB = -26;
    private static final double STEP_DB = 6;
    private static final double AT_CEILING_DB = -30;

    /** Nothing begins at once. */
    private static final double RISE_S = 0.2;

    private SafeLevel() {}

    /** Largest sample of a step. */
    static double ceiling(int step) {
        return Math.pow(10, (FIRST_CEILING_DB + STEP_DB * step) / 20);
    }

    /** The sound at a step of loudness, from 0. */
    static double[] samples(ResidueSound sound, int step) {
        double ceiling = ceiling(step);
        double full = sound.sweepPeakPa() * Math.pow(10, AT_CEILING_DB / 20);
        double[] samples = sound.pascals();
        int rise = (int) (RISE_S * sound.sampleRateHz());
        for (int i = 0; i < samples.length; i++) {
            double gain = Math.min(1, i / (double) rise);
            samples[i] = gain * ceiling * Math.tanh(samples[i] / full);
        }
        return samples;
    }
}
