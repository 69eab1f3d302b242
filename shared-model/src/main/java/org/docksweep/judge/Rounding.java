package org.docksweep.judge;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Locale;

/** Rounds what is kept and shown, so that the last digits of floating point never make a difference. */
final class Rounding {
    private static final MathContext KEPT = new MathContext(6, RoundingMode.HALF_EVEN);

    private Rounding() {}

    /** Six significant digits. */
    static double significant(double value) {
        return Double.isFinite(value) ? new BigDecimal(value).round(KEPT).doubleValue() : value;
    }

    static double[] significant(double[] values) {
        return java.util.Arrays.stream(values).map(Rounding::significant).toArray();
    }

    static String ohm(double value) {
        return String.format(Locale.ROOT, value < 10 ? "%.1f \u03a9" : "%.0f \u03a9", value);
    }

    static String hertz(double value) {
        return value < 1000
                ? String.format(Locale.ROOT, "%.0f Hz", value)
                : String.format(Locale.ROOT, "%.1f kHz", value / 1000);
    }

    static String decibel(double value) {
        return String.format(Locale.ROOT, "%+.1f dB", value);
    }

    static String plain(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }
}
