package org.docksweep.kiosk.screens;

import java.awt.Color;
import org.docksweep.gate.ReadingState;

/**
 * Meaning of a colour, by IEC 60073: green normal, yellow attention, red fault, blue act; grey carries no demand. A
 * tone is never shown without its sign and a word.
 */
enum Tone {
    PASS("pass"),
    ATTENTION("attention"),
    FAULT("fault"),
    ACT("act"),
    NEUTRAL("neutral");

    private final String key;

    Tone(String key) {
        this.key = key;
    }

    static Tone of(ReadingState state) {
        return switch (state) {
            case OK -> PASS;
            case WATCH -> ATTENTION;
            case FAULT -> FAULT;
            case NOT_JUDGED -> NEUTRAL;
        };
    }

    /** Ground of large plates. */
    Color plate() {
        return Look.color("verdict." + key + ".background");
    }

    /** Writing on plates; at least 7:1 against {@link #plate()}. */
    Color onPlate() {
        return Look.color("verdict." + key + ".foreground");
    }

    /** Signs and words straight on the page or on a card. */
    Color ink() {
        return Look.color("tone." + key);
    }

    /** Pale fill behind signs of this tone on a card. */
    Color wash() {
        return Look.color("wash." + key);
    }
}
