package org.docksweep.kiosk.screens;

import java.util.List;
import java.util.Optional;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;

/**
 * One question to the person, as {@link AskPane} shows it.
 *
 * @param guide the large word
 * @param sentence what is asked
 * @param lines facts under it
 * @param message what came of the answer before
 * @param offers keys that are alive
 * @param hint what is typed below
 * @param secret whether it is typed unseen
 */
record Asked(
        Guide guide,
        String sentence,
        List<Line> lines,
        Optional<Notice> message,
        List<Offer> offers,
        String hint,
        boolean secret) {
    Asked {
        lines = List.copyOf(lines);
        offers = List.copyOf(offers);
    }

    /**
     * A fact.
     *
     * @param state its sign
     * @param label what
     * @param value how it is; empty when the label says all
     */
    record Line(ReadingState state, String label, String value) {}
}
