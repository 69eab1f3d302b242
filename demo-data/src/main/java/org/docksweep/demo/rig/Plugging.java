package org.docksweep.demo.rig;

import java.util.SplittableRandom;

/** What differs from one plug-in and playback to the next; sizes are assumed, no source. */
final class Plugging {
    private static final double LEAST_CONTACT_OHM = 0.03;
    private static final double CONTACT_SPAN_OHM = 0.12;
    /** Four centimetres of sound travel. */
    private static final double PLACEMENT_SPAN_S = 1.2e-4;

    private static final double FIRST_LATENCY_S = 0.020;
    private static final double LATENCY_SPAN_S = 0.160;

    private Plugging() {}

    static double contactOhm(SplittableRandom random) {
        return LEAST_CONTACT_OHM + CONTACT_SPAN_OHM * random.nextDouble();
    }

    static double placementShiftS(SplittableRandom random) {
        return (random.nextDouble() - 0.5) * PLACEMENT_SPAN_S;
    }

    static double latencyS(SplittableRandom random) {
        return FIRST_LATENCY_S + LATENCY_SPAN_S * random.nextDouble();
    }
}
