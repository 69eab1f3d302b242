package org.docksweep.gate;

/** Quantities read from the curves, with their units. */
public enum ReadingKind {
    /** Resistance at low current-limiting frequency, at the temperature met, in ohm. */
    DC_RESISTANCE("\u03a9"),
    /** The same referred to 20 C, in ohm. */
    DC_RESISTANCE_20C("\u03a9"),
    /** Frequency of the largest motional peak, in hertz. */
    PEAK_FREQUENCY("Hz"),
    /** Magnitude of the largest motional peak, in ohm. */
    PEAK_MAGNITUDE("\u03a9"),
    /** Frequency of the dip between the two peaks of a vented box, in hertz. */
    TUNING("Hz"),
    /** Lowest magnitude in the band, in ohm. */
    MINIMUM("\u03a9"),
    /** Deviation of the impedance from the model's reference in the third of an octave that strays most, in decibel. */
    IMPEDANCE_DEVIATION("dB"),
    /** The same against the cabinet's own baseline, in decibel. */
    BASELINE_DEVIATION("dB"),
    /**
     * Contact of the dock's plug in series, in ohm, beyond what the calibration took off, by the curve alone: where coil and contact
     * look alike the baseline's contact counts as the usual one, so that changes are told and not the value itself.
     */
    PLUG_CONTACT("\u03a9"),
    /** Relative standard deviation of |Z| that was held of the rig by its repeatability study, in per cent. */
    RIG_REPEATABILITY("%"),
    /** Level of a way at the microphone against its reference, in decibel. */
    WAY_LEVEL("dB"),
    /** Median rise of the harmonics 2 to 9 over the expected ones, third octaves above 100 Hz, in decibel. */
    HARMONICS("dB"),
    /**
     * Impulsive distortion: bursts above the 10th order that come back at the same phase, re the largest sound of the
     * sweep between 1 and 15 kHz, in decibel; without any, the level from which they would be heard.
     */
    IMPULSIVE_DISTORTION("dB");

    private final String unit;

    ReadingKind(String unit) {
        this.unit = unit;
    }

    /**
     * Unit of values of this kind.
     *
     * @return unit symbol
     */
    public String unit() {
        return unit;
    }
}
