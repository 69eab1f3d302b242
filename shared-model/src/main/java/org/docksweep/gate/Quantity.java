package org.docksweep.gate;

/**
 * A number that a curve says of a driver, a box or the test point.
 *
 * @param kind quantity
 * @param owner position code, enclosure id, or test point code it belongs to
 * @param value value in the unit of the kind
 * @param standardUncertainty standard uncertainty in the same unit, at least 0
 */
public record Quantity(Kind kind, String owner, double value, double standardUncertainty) {

    /** What is measured. */
    public enum Kind {
        /** Resistance between the terminals at DC, at the temperature met, contact of the plug included, in ohm. */
        TERMINAL_RESISTANCE("\u03a9"),
        /** The same referred to 20 C, in ohm. */
        TERMINAL_RESISTANCE_20C("\u03a9"),
        /** Resistance of a coil at 20 C behind a network, in ohm. */
        COIL_RESISTANCE_20C("\u03a9"),
        /** Resonance of a driver without the air of its box, fs, in hertz; by model fit. */
        FREE_RESONANCE("Hz"),
        /** Place of the largest magnitude of a closed box or a horn, fc, in hertz. */
        PEAK("Hz"),
        /** Lower peak of a vented box, fL, in hertz. */
        LOWER_PEAK("Hz"),
        /** Dip between the peaks of a vented box, fM, in hertz; with losses not the tuning. */
        DIP("Hz"),
        /** Upper peak of a vented box, fH, in hertz. */
        UPPER_PEAK("Hz"),
        /** Frequency at which port and air resonate, fb, in hertz; by model fit. */
        TUNING("Hz"),
        /** Magnitude at the largest of the named peaks, in ohm. */
        PEAK_MAGNITUDE("\u03a9"),
        /** Mechanical Q of a driver at fs, creep included; by model fit. */
        QMS(""),
        /** Electrical Q of a driver at fs; by model fit. */
        QES(""),
        /** Total Q of a driver at fs; by model fit. */
        QTS(""),
        /** Exponent n of the lossy inductance K (j w)^n; by model fit, where no network hides it. */
        INDUCTANCE_EXPONENT(""),
        /** K of the lossy inductance, in ohm s^n; by model fit, where no network hides it. */
        INDUCTANCE_K("\u03a9s\u207f"),
        /** Lowest magnitude in the swept band, in ohm. */
        LOWEST("\u03a9"),
        /** The same over the rated impedance; the type, not the unit, is rated at 0.8 or more (IEC 60268-5). */
        LOWEST_OVER_RATED("");

        private final String unit;

        Kind(String unit) {
            this.unit = unit;
        }

        /**
         * Unit of values of this kind.
         *
         * @return unit symbol, empty for pure numbers
         */
        public String unit() {
            return unit;
        }
    }
}
