package org.docksweep.demo.physics;

import org.docksweep.demo.DemoModels;
import org.hipparchus.complex.Complex;

/** Asks virtual cabinets for their impedance, for tests. */
final class Probe {
    /** Low enough not to matter, high enough for the equations. */
    static final Complex SOURCE = new Complex(0.05);

    private Probe() {}

    static Complex ohm(VirtualCabinet cabinet, String testPoint, double frequencyHz) {
        return cabinet.load(testPoint).at(frequencyHz, SOURCE).impedanceOhm();
    }

    static double magnitudeOhm(VirtualCabinet cabinet, String testPoint, double frequencyHz) {
        return ohm(cabinet, testPoint, frequencyHz).norm();
    }

    static VirtualCabinet plain(String model) {
        return VirtualCabinet.nominal(DemoModels.book(), DemoModels.mechanics(), model, Realism.PLAIN);
    }

    static VirtualCabinet full(String model) {
        return VirtualCabinet.nominal(DemoModels.book(), DemoModels.mechanics(), model, Realism.FULL);
    }

    static VirtualCabinet produced(String model, long seed) {
        return VirtualCabinet.produced(DemoModels.book(), model, seed, 3);
    }

    /** Frequency of the highest |Z| (sign 1) or lowest (sign -1) between two frequencies. */
    static double extremeHz(VirtualCabinet cabinet, String testPoint, double fromHz, double toHz, int sign) {
        double best = fromHz;
        double value = Double.NEGATIVE_INFINITY;
        for (double f = fromHz; f <= toHz; f *= 1.0002) {
            double z = sign * magnitudeOhm(cabinet, testPoint, f);
            if (z > value) {
                value = z;
                best = f;
            }
        }
        return best;
    }
}
