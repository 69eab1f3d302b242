package org.docksweep.kiosk.screens;

import org.docksweep.fleet.BareDriver;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.kiosk.dock.DockState.CurvePicture;

/** Curves of plausible shape for the pictures: a vented two-way, and the same with its horn driver open. */
final class SampleCurves {
    private static final int POINTS = 480;
    private static final double FROM_HZ = 20;
    private static final double TO_HZ = 20_000;
    private static final double[] NONE = {};

    private SampleCurves() {}

    static CurvePicture healthy() {
        return picture(1, false, 0, 0);
    }

    static CurvePicture hornOpen() {
        CurvePicture open = picture(1, true, 1800, 9000);
        double[] predicted = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            predicted[i] = magnitude(open.frequencyHz()[i] * 1.01, true);
        }
        return new CurvePicture(
                open.testPointCode(),
                DecidingCurve.IMPEDANCE,
                open.frequencyHz(),
                open.measured(),
                open.ribbonHz(),
                open.ribbonLow(),
                open.ribbonHigh(),
                open.baseline(),
                open.decidedFromHz(),
                open.decidedToHz(),
                open.frequencyHz(),
                predicted);
    }

    static CurvePicture growing(double share) {
        return picture(share, false, 0, 0);
    }

    static CurvePicture flatOpen() {
        double[] hz = grid();
        double[] high = new double[POINTS];
        java.util.Arrays.fill(high, 900);
        CurvePicture reference = healthy();
        return new CurvePicture(
                "IN", DecidingCurve.IMPEDANCE, hz, high, hz, reference.ribbonLow(), reference.ribbonHigh(), NONE, 0, 0);
    }

    /** A compression driver alone on the test horn, over what five taught. */
    static CurvePicture bareHorn() {
        double[] hz = new double[POINTS];
        double[] ohm = new double[POINTS];
        double[] low = new double[POINTS];
        double[] high = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            hz[i] = 300 * Math.pow(TO_HZ / 300, i / (POINTS - 1.0));
            double healthy = 11 + peak(hz[i], 860, 2.2, 21) + peak(hz[i], 3100, 6, 3) + 2e-4 * hz[i];
            low[i] = healthy / 1.08;
            high[i] = healthy * 1.08;
            ohm[i] = healthy * (1 + 0.012 * Math.sin(i * 0.05));
        }
        return new CurvePicture(BareDriver.TEST_POINT, DecidingCurve.IMPEDANCE, hz, ohm, hz, low, high, NONE, 0, 0);
    }

    private static CurvePicture picture(double share, boolean open, double decidedFromHz, double decidedToHz) {
        double[] hz = grid();
        int measured = (int) Math.round(share * POINTS);
        double[] ohm = new double[measured];
        double[] low = new double[POINTS];
        double[] high = new double[POINTS];
        double[] baseline = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            double healthy = magnitude(hz[i], false);
            baseline[i] = healthy * 1.02;
            low[i] = healthy / 1.14;
            high[i] = healthy * 1.14;
            if (i < measured) {
                ohm[i] = magnitude(hz[i] * 1.015, open) * (1 + 0.006 * Math.sin(i * 1.7));
            }
        }
        return new CurvePicture(
                "IN", DecidingCurve.IMPEDANCE, hz, ohm, hz, low, high, baseline, decidedFromHz, decidedToHz);
    }

    private static double[] grid() {
        double[] hz = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            hz[i] = FROM_HZ * Math.pow(TO_HZ / FROM_HZ, i / (POINTS - 1.0));
        }
        return hz;
    }

    private static double magnitude(double hz, boolean open) {
        double low = 6 + peak(hz, 32, 5, 38) + peak(hz, 84, 4.5, 31) + 0.004 * Math.pow(hz, 0.68);
        double high = open
                ? Math.abs(0.9 + 34 * Math.log(hz / 3600) * Math.log(hz / 3600))
                : 9 + peak(hz, 620, 2, 6) + 2e-4 * hz + 3e9 / (hz * hz * hz);
        double split = 1 / (1 + Math.pow(hz / 1400, 4));
        return Math.exp(split * Math.log(low) + (1 - split) * Math.log(Math.max(0.9, Math.min(high, 60))));
    }

    private static double peak(double hz, double f0, double q, double ohm) {
        double detune = q * (hz / f0 - f0 / hz);
        return ohm / Math.sqrt(1 + detune * detune);
    }
}
