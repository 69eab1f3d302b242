package org.docksweep.kiosk.rig;

import java.util.Map;
import java.util.TreeMap;

/** A field of the rig's set-up, in the order in which they are asked for. */
public enum SetUpField {
    /** Device that plays. */
    PLAY_DEVICE("playMixer", ""),
    /** Device that captures. */
    CAPTURE_DEVICE("captureMixer", ""),
    /** Samples per second. */
    SAMPLE_RATE("sampleRateHz", "48000"),
    /** Bits per sample, or auto. */
    BITS("bits", "auto"),
    /** Output with the amplifier. */
    OUTPUT("playChannel", "1"),
    /** Volts at the amplifier at full scale of the output. */
    OUTPUT_VOLTS("voltsPerFullScale", ""),
    /** Role of input 1. */
    INPUT_1("input1", "voltage"),
    /** Role of input 2. */
    INPUT_2("input2", "current"),
    /** Role of input 3. */
    INPUT_3("input3", "unused"),
    /** Role of input 4. */
    INPUT_4("input4", "unused"),
    /** Volts at the cabinet at full scale of the voltage input. */
    VOLTAGE_FULL_SCALE("voltageFullScale", ""),
    /** Sense resistor, in ohm. */
    SENSE_OHM("senseOhm", ""),
    /** Volts across the sense resistor at full scale of the current input. */
    SENSE_VOLTS("senseFullScale", ""),
    /** Pascals at full scale of the microphone input. */
    MICROPHONE_PASCALS("microphoneFullScale", ""),
    /** Pascals at full scale of the far microphone's input. */
    FAR_MICROPHONE_PASCALS("farMicrophoneFullScale", ""),
    /** Which kind of amplifier. */
    AMPLIFIER("amplifier", "bridged"),
    /** Calibration load, in ohm. */
    LOAD_OHM("standard.loadOhm", "10"),
    /** Tolerance of the load, in per cent. */
    LOAD_TOLERANCE("standard.loadTolerancePercent", "0.1"),
    /** Check resistor, in ohm. */
    CHECK_OHM("standard.checkOhm", "4.7"),
    /** Resistor of the check network, in ohm. */
    NETWORK_OHM("standard.networkOhm", "22"),
    /** Capacitor beside it, in microfarad. */
    NETWORK_MICROFARAD("standard.networkMicrofarad", "4.7");

    private final String key;
    private final String usual;

    SetUpField(String key, String usual) {
        this.key = key;
        this.usual = usual;
    }

    /**
     * Key under which the value is kept.
     *
     * @return the key
     */
    public String key() {
        return key;
    }

    /**
     * Value before anybody set one.
     *
     * @return the value; empty where a guess could harm
     */
    public String usual() {
        return usual;
    }

    /**
     * Whether the field says what an input carries.
     *
     * @return true for the four inputs
     */
    public boolean isInput() {
        return ordinal() >= INPUT_1.ordinal() && ordinal() <= INPUT_4.ordinal();
    }

    /**
     * Whether the field is a number that is typed.
     *
     * @return false for fields with a few choices
     */
    public boolean isNumber() {
        return this == OUTPUT_VOLTS || ordinal() >= VOLTAGE_FULL_SCALE.ordinal() && this != AMPLIFIER;
    }

    /**
     * What of a set-up changes what the rig measures.
     *
     * @param values values by key
     * @return those that are not of the standards or for people only
     */
    static Map<String, String> ofTheRig(Map<String, String> values) {
        Map<String, String> kept = new TreeMap<>(values);
        for (SetUpField field : values()) {
            kept.putIfAbsent(field.key, field.usual);
        }
        kept.keySet()
                .removeIf(key ->
                        key.startsWith("standard.") || key.equals(AMPLIFIER.key) || key.equals("ambientCelsius"));
        return kept;
    }
}
