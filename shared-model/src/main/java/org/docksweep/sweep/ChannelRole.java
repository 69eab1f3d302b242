package org.docksweep.sweep;

/** What a captured channel holds. */
public enum ChannelRole {
    /** Voltage at the amplifier or cabinet end, in volts. */
    VOLTAGE,
    /** Current through the sense resistor, in amperes (voltage across it over its resistance). */
    CURRENT,
    /** Sound pressure at the marked spot, in pascals. */
    MICROPHONE,
    /** Sound pressure at the far microphone, in pascals. */
    FAR_MICROPHONE
}
