package org.docksweep.service.trends;

import org.docksweep.gate.ReadingKind;
import org.docksweep.survival.Trend;

/**
 * A quantity that is followed: of one driver (or, with an empty owner, of a whole test point) of a cabinet model.
 *
 * @param modelCode cabinet model
 * @param testPointCode test point
 * @param owner driver position, or empty
 * @param kind what is read
 */
record Quantity(String modelCode, String testPointCode, String owner, ReadingKind kind) {

    /** How a kind of reading is followed. Values are common practice, no source. */
    enum Followed {
        LEVEL(ReadingKind.WAY_LEVEL, false, 0.5, 1.5),
        RESONANCE(ReadingKind.PEAK_FREQUENCY, true, 0.03, 0.1),
        PEAK(ReadingKind.PEAK_MAGNITUDE, true, 0.06, 0.2),
        TUNING(ReadingKind.TUNING, true, 0.02, 0.08),
        /** Referred to 20 C; copper does not grow, so a rise is a contact or a joint. */
        RESISTANCE(ReadingKind.DC_RESISTANCE_20C, true, 0.015, 0.05);

        private final ReadingKind kind;
        private final boolean asRatio;
        private final double usualSpread;
        private final double concern;

        Followed(ReadingKind kind, boolean asRatio, double usualSpread, double concern) {
            this.kind = kind;
            this.asRatio = asRatio;
            this.usualSpread = usualSpread;
            this.concern = concern;
        }

        double usualSpread() {
            return usualSpread;
        }

        Trend.Rule rule(double spread) {
            return new Trend.Rule(spread, concern);
        }

        double concern() {
            return concern;
        }

        boolean asRatio() {
            return asRatio;
        }

        /** Levels are followed in decibel, everything else by its logarithm, so that a change is a share. */
        double scaled(double value) {
            return asRatio ? Math.log(value) : value;
        }

        double unscaled(double scaled) {
            return asRatio ? Math.exp(scaled) : scaled;
        }
    }

    /** How it is followed, or null where it is not. */
    static Followed followed(ReadingKind kind) {
        for (Followed followed : Followed.values()) {
            if (followed.kind == kind) {
                return followed;
            }
        }
        return null;
    }

    Followed followed() {
        return followed(kind);
    }
}
