package org.docksweep.gate;

import java.util.function.DoubleUnaryOperator;

/** Places of peaks and dips of a smooth magnitude. */
final class Extrema {
    private static final double STEP = StrictMath.pow(2, 1 / 48.0);
    private static final int HALVINGS = 50;
    private static final double GOLDEN = 0.3819660112501051;

    private Extrema() {}

    /**
     * First maximum (or minimum) walking from a frequency in one direction.
     *
     * @param direction -1 downwards, 1 upwards
     * @return its place, or NaN when the end comes first
     */
    static double nearest(DoubleUnaryOperator f, double fromHz, double endHz, int direction, boolean maximum) {
        double step = direction > 0 ? STEP : 1 / STEP;
        double sign = maximum ? 1 : -1;
        double before = fromHz;
        double here = fromHz * step;
        double valueBefore = sign * f.applyAsDouble(before);
        double valueHere = sign * f.applyAsDouble(here);
        for (double next = here * step; direction * (endHz - next) >= 0; next *= step) {
            double valueNext = sign * f.applyAsDouble(next);
            if (valueHere >= valueBefore && valueHere > valueNext) {
                return refine(f, Math.min(before, next), Math.max(before, next), maximum);
            }
            before = here;
            here = next;
            valueBefore = valueHere;
            valueHere = valueNext;
        }
        return Double.NaN;
    }

    /** Place of the largest (or smallest) value strictly between two frequencies, or NaN when it sits at an end. */
    static double between(DoubleUnaryOperator f, double lowHz, double highHz, boolean maximum) {
        double sign = maximum ? 1 : -1;
        double best = Double.NaN;
        double bestValue = Math.max(sign * f.applyAsDouble(lowHz), sign * f.applyAsDouble(highHz));
        for (double hz = lowHz * STEP; hz < highHz / STEP; hz *= STEP) {
            double value = sign * f.applyAsDouble(hz);
            if (value > bestValue) {
                bestValue = value;
                best = hz;
            }
        }
        return Double.isNaN(best) ? best : refine(f, best / STEP, best * STEP, maximum);
    }

    /** Place of the smallest value, ends included. */
    static double lowest(DoubleUnaryOperator f, double lowHz, double highHz) {
        double inside = between(f, lowHz, highHz, false);
        return !Double.isNaN(inside) ? inside : f.applyAsDouble(lowHz) < f.applyAsDouble(highHz) ? lowHz : highHz;
    }

    private static double refine(DoubleUnaryOperator f, double lowHz, double highHz, boolean maximum) {
        double sign = maximum ? 1 : -1;
        double low = lowHz;
        double high = highHz;
        for (int i = 0; i < HALVINGS; i++) {
            double a = low + GOLDEN * (high - low);
            double b = high - GOLDEN * (high - low);
            if (sign * f.applyAsDouble(a) > sign * f.applyAsDouble(b)) {
                high = b;
            } else {
                low = a;
            }
        }
        return (low + high) / 2;
    }
}
