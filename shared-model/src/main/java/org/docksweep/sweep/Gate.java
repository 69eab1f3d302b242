package org.docksweep.sweep;

/**
 * A window on an impulse response for one frequency: half-cosine rise before the linear response, flat, half-cosine
 * fall behind it. Voltage, current and their noise always go through the same gate.
 *
 * @param preS time before the peak, in seconds
 * @param postS time after the peak, in seconds
 */
record Gate(double preS, double postS) {
    /** Share of the time behind the peak over which the window falls. */
    private static final double FALL_SHARE = 0.4;

    /** Share of the time before the peak over which the window rises. */
    private static final double RISE_SHARE = 0.6;

    /** Share of the lead of the 2nd harmonic that the gate may use; the rest is left for the harmonic to die away. */
    private static final double LEAD_SHARE = 0.5;

    /**
     * No harmonic of the sweep lies below twice its first frequency, so down there the time before the peak is free. It is needed:
     * the end of the band rings before the peak as well as behind it.
     */
    private static final double BELOW_HARMONICS = 1.8;

    private static final double LOW_PRE_S = 0.4;

    /** Three plans' worth of windows, 2 MB each. */
    private static final RecentlyUsed<Key, double[]> WINDOWS = new RecentlyUsed<>(900);

    private record Key(Gate gate, int sampleRateHz) {}

    /**
     * The gate for the electrical channels: long where drivers resonate, short where noise would come in. In cycles
     * because a resonance of given Q rings for a given number of cycles: exp(-pi n / Q) is -60 dB at n = 2.2 Q.
     */
    static Gate electrical(double frequencyHz, SweepSignal signal, AnalysisSettings settings) {
        double postS = Math.min(
                settings.longestGateS(), Math.max(settings.shortestGateS(), settings.gateCycles() / frequencyHz));
        if (frequencyHz < BELOW_HARMONICS * signal.startHz()) {
            return new Gate(LOW_PRE_S, postS);
        }
        double preS = Math.min(0.12, Math.max(0.01, 12 / frequencyHz));
        return new Gate(Math.min(preS, LEAD_SHARE * signal.harmonicLeadS(2)), postS);
    }

    /** The gate for microphones: some cycles, before the hall answers. */
    static Gate acoustic(double frequencyHz, SweepSignal signal) {
        double postS = Math.min(0.08, Math.max(0.006, 4 / frequencyHz));
        return new Gate(Math.min(Math.max(0.002, 0.5 * postS), LEAD_SHARE * signal.harmonicLeadS(2)), postS);
    }

    int preSamples(int sampleRateHz) {
        return (int) Math.round(preS * sampleRateHz);
    }

    /**
     * The window.
     *
     * @param sampleRateHz samples per second
     * @return values from {@code -preSamples} on, each from 0 to 1; not a copy
     */
    double[] window(int sampleRateHz) {
        return WINDOWS.get(new Key(this, sampleRateHz), key -> key.gate().made(key.sampleRateHz()));
    }

    private double[] made(int sampleRateHz) {
        int pre = preSamples(sampleRateHz);
        int post = Math.max(1, (int) Math.round(postS * sampleRateHz));
        double[] window = new double[pre + post];
        int rise = (int) (pre * RISE_SHARE);
        int fall = (int) (post * FALL_SHARE);
        java.util.Arrays.fill(window, 1);
        Phasors.rise(window, 0, rise, Math.PI / rise);
        Phasors.rise(window, window.length - fall, fall, Math.PI / fall);
        for (int i = window.length - fall; i < window.length; i++) {
            window[i] = 1 - window[i];
        }
        return window;
    }
}
