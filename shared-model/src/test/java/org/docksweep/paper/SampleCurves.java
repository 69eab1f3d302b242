package org.docksweep.paper;

import java.util.Arrays;
import org.docksweep.gate.PointReference;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Curves that look like those of a vented two-way cabinet with a second-order crossover. They are drawn, not judged, so
 * a closed formula is enough: low branch (coil, lossy inductance, two peaks) beside a high branch (capacitor and coil,
 * then pad and driver).
 */
final class SampleCurves {
    static final int POINTS = 400;

    private SampleCurves() {}

    static ImpedanceCurve healthy() {
        return curve(8);
    }

    /** An open horn driver leaves capacitor and coil in series across the terminals: a dip near the crossover. */
    static ImpedanceCurve hornOpen() {
        return curve(1e9);
    }

    static PointReference reference() {
        ImpedanceCurve mean = healthy();
        double[] spread = new double[POINTS];
        Arrays.setAll(spread, i -> 0.03 + 0.05 * Math.exp(-Math.pow(Math.log(mean.frequencyHz()[i] / 80), 2)));
        return new PointReference(
                "TIDE-12",
                "IN",
                7,
                mean.frequencyHz(),
                Arrays.stream(mean.magnitudesOhm()).map(Math::log).toArray(),
                new double[POINTS],
                spread,
                new double[0],
                new double[0],
                new double[0],
                null);
    }

    static AcousticCurve microphone(double hornLossDb) {
        double[] level = new double[POINTS];
        double[] hz = grid();
        Arrays.setAll(level, i -> level(hz[i]) - hornLossDb / (1 + Math.pow(2000 / hz[i], 8)));
        double[] noise = new double[POINTS];
        Arrays.fill(noise, -60);
        return new AcousticCurve(hz, level, noise);
    }

    static PointReference microphoneReference() {
        double[] hz = grid();
        double[] spread = new double[POINTS];
        Arrays.fill(spread, 1.2);
        return new PointReference(
                "SKIFF-P",
                "LINE",
                5,
                new double[0],
                new double[0],
                new double[0],
                new double[0],
                hz,
                Arrays.stream(hz).map(SampleCurves::level).toArray(),
                spread,
                null);
    }

    private static double level(double hz) {
        return -10 * Math.log10(1 + Math.pow(55 / hz, 8)) + 1.5 * Math.sin(2.5 * Math.log(hz)) + 4;
    }

    private static double[] grid() {
        double[] hz = new double[POINTS];
        Arrays.setAll(hz, i -> 20 * Math.pow(1000, i / (POINTS - 1.0)));
        return hz;
    }

    private static ImpedanceCurve curve(double hornOhm) {
        double[] hz = grid();
        double[] re = new double[POINTS];
        double[] im = new double[POINTS];
        double[] uncertainty = new double[POINTS];
        Arrays.fill(uncertainty, 0.02);
        for (int i = 0; i < POINTS; i++) {
            double w = 2 * Math.PI * hz[i];
            double[] low = {5.6 + 0.4, w * 1.2e-3 * 0.6};
            add(low, peak(hz[i], 30, 4, 42));
            add(low, peak(hz[i], 83, 5, 55));
            double[] shunt = parallel(new double[] {0.3, w * 0.5e-3}, new double[] {hornOhm, 0});
            double[] high = {shunt[0] + 0.1, shunt[1] - 1 / (w * 10e-6)};
            double[] both = parallel(low, high);
            re[i] = both[0];
            im[i] = both[1];
        }
        return new ImpedanceCurve(hz, re, im, uncertainty);
    }

    private static double[] peak(double hz, double centreHz, double q, double heightOhm) {
        double x = q * (hz / centreHz - centreHz / hz);
        return new double[] {heightOhm / (1 + x * x), -heightOhm * x / (1 + x * x)};
    }

    private static void add(double[] sum, double[] term) {
        sum[0] += term[0];
        sum[1] += term[1];
    }

    private static double[] parallel(double[] a, double[] b) {
        double numRe = a[0] * b[0] - a[1] * b[1];
        double numIm = a[0] * b[1] + a[1] * b[0];
        double denRe = a[0] + b[0];
        double denIm = a[1] + b[1];
        double size = denRe * denRe + denIm * denIm;
        return new double[] {(numRe * denRe + numIm * denIm) / size, (numIm * denRe - numRe * denIm) / size};
    }
}
