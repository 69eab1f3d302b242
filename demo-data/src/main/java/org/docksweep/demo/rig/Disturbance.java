package org.docksweep.demo.rig;

import java.util.Locale;

/** What can go wrong with a capture itself, on purpose, for practice and tests. */
public enum Disturbance {
    /** Nothing. */
    NONE,
    /** Somebody turned the amplifier up: the voltage channel reaches full scale. */
    CLIP,
    /** The audio system lost 600 frames in the middle of a sweep; everything after comes early. */
    DROPOUT,
    /** A case falls over in the middle of a sweep. */
    KNOCK,
    /** The microphone is not plugged in: its channel holds converter noise only. */
    MIC_UNPLUGGED,
    /** The current channel holds converter noise only. */
    CURRENT_DEAD,
    /** The amplifier is off: no channel sees the sweep. */
    SILENT,
    /** The amplifier is turned nearly down. */
    QUIET,
    /** The capture ends half way. */
    SHORT,
    /** Voltage and current plugs are exchanged. */
    CHANNELS_SWAPPED,
    /** The microphone's gain is turned up far too much. */
    MIC_OVERLOADED,
    /** The microphone's gain was turned up by 4 dB. */
    MIC_GAIN,
    /** The capsule has lost 3 dB above 2 kHz: dust, a blow, moisture. */
    MIC_CAPSULE,
    /** The microphone stands 0.3 m farther from the cabinet. */
    MIC_MOVED,
    /** The microphone's channel holds the sense resistor's signal: its plug is in the wrong input. */
    MIC_WRONG_CHANNEL,
    /** A forklift passes by. */
    FORKLIFT,
    /** Wind from an open door blows on the microphone. */
    WIND,
    /** Another dock sweeps a cabinet of its own at the same time. */
    NEIGHBOUR,
    /** The cabinet's back is turned to the microphone. */
    FACING_AWAY,
    /** The cabinet stands in a bare corner: the hall answers 12 dB louder. */
    REVERBERANT;

    static Disturbance named(String text) {
        try {
            return valueOf(text.strip().toUpperCase(Locale.ROOT).replace('-', '_'));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "\"" + text + "\" is not a disturbance; expected one of " + java.util.Arrays.toString(values()), e);
        }
    }
}
