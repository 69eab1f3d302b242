package org.docksweep.kiosk.commands;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as printed: from the exact binary value, half to even, so that every Java runtime prints the same digits
 * (formatting of doubles changed between releases).
 */
final class Digits {
    private Digits() {}

    static String significant(double value, int digits) {
        return value == 0
                ? "0"
                : new BigDecimal(value)
                        .round(new MathContext(digits, RoundingMode.HALF_EVEN))
                        .toString();
    }

    static String decimals(double value, int places) {
        return new BigDecimal(value).setScale(places, RoundingMode.HALF_EVEN).toPlainString();
    }
}
