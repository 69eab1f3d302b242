package org.docksweep.kiosk.screens;

import java.awt.Rectangle;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.kiosk.dock.DockState.CurvePicture;

/**
 * Axes of a curve: frequency logarithmic; impedance logarithmic, acoustic level straight. The axes span the reference
 * ribbon and the whole sweep, so that nothing moves while the sweep draws itself.
 */
record CurveScale(double fromHz, double toHz, double low, double high, boolean logarithmic, Rectangle plot) {
    private static final double[] STEPS = {1, 2, 5};

    static CurveScale of(CurvePicture picture, Rectangle plot) {
        double[] hz = {20, 20};
        if (picture.frequencyHz().length + picture.ribbonHz().length > 0) {
            hz = range(picture.frequencyHz(), picture.ribbonHz());
        }
        boolean logarithmic = picture.shows() == DecidingCurve.IMPEDANCE;
        double[] values = range(picture.measured(), picture.ribbonLow(), picture.ribbonHigh(), picture.baseline());
        if (!(values[0] <= values[1])) {
            values = logarithmic ? new double[] {2, 100} : new double[] {-20, 10};
        }
        if (logarithmic) {
            values[0] = Math.max(values[0], 0.1) / 1.25;
            values[1] = Math.min(Math.max(values[1], values[0] * 4), 100_000) * 1.25;
        } else {
            values[0] -= 3;
            values[1] += 3;
        }
        return new CurveScale(hz[0], Math.max(hz[1], hz[0] * 2), values[0], values[1], logarithmic, plot);
    }

    private static double[] range(double[]... rows) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (double[] row : rows) {
            for (double value : row) {
                if (Double.isFinite(value)) {
                    low = Math.min(low, value);
                    high = Math.max(high, value);
                }
            }
        }
        return new double[] {low, high};
    }

    double x(double hz) {
        return plot.x + plot.width * Math.log(hz / fromHz) / Math.log(toHz / fromHz);
    }

    double y(double value) {
        double share = logarithmic ? Math.log(value / low) / Math.log(high / low) : (value - low) / (high - low);
        return plot.y + plot.height * (1 - share);
    }

    List<Double> frequencyTicksHz() {
        return logTicks(fromHz, toHz);
    }

    /** Ticks from low to high. */
    List<Double> valueTicks() {
        if (logarithmic) {
            return logTicks(low, high);
        }
        List<Double> ticks = new ArrayList<>();
        double step = high - low > 60 ? 20 : high - low > 30 ? 10 : 5;
        for (double db = Math.ceil(low / step) * step; db <= high; db += step) {
            ticks.add(db);
        }
        return ticks;
    }

    private static List<Double> logTicks(double from, double to) {
        List<Double> ticks = new ArrayList<>();
        for (double decade = Math.pow(10, Math.floor(Math.log10(from))); decade <= to; decade *= 10) {
            for (double step : STEPS) {
                double value = decade * step;
                if (value >= from * 0.999 && value <= to * 1.001) {
                    ticks.add(value);
                }
            }
        }
        return ticks;
    }
}
