package org.docksweep.sweep;

/** What can be wrong with a capture itself, as opposed to the cabinet. */
public enum QualityIssue {
    /** A channel reached digital full scale. */
    CLIPPED,
    /** The drive did not arrive at the level it should have. */
    TOO_QUIET,
    /** Fewer samples than the plan asks for. */
    TOO_SHORT,
    /** All channels are silent: nothing was played or nothing was captured. */
    SILENT,
    /** One channel holds nothing although its neighbours do. */
    CHANNEL_DEAD,
    /** Mains hum above what can be removed. */
    HUM,
    /** A short disturbance in the capture: knock, door slam. */
    KNOCK,
    /** Noise of the hall or the rig is too high for the decision. */
    NOISE,
    /** Samples are missing inside the capture: torn by the audio system. */
    TORN,
    /** Voltage and current channels are exchanged. */
    CHANNELS_SWAPPED,
    /** Repeated sweeps do not agree with each other. */
    REPEATS_DIFFER,
    /** The impedance found is not that of a passive load. */
    NOT_PASSIVE,
    /** Real and imaginary part do not belong together: the load or the rig changed during the sweep. */
    INCONSISTENT
}
