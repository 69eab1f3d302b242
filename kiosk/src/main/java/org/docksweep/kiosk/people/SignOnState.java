package org.docksweep.kiosk.people;

import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;

/**
 * What the window shows of signing on: one immutable picture at a time.
 *
 * @param stage what is shown
 * @param person person signed on; stays while the kiosk is locked, until somebody else takes over. Empty before the first one
 * @param locked whether the pages are out of reach
 * @param asked whose PIN is asked, by name where the kiosk knows it; present in stage PIN
 * @param known names of those who may sign on by name here, in order
 * @param held scans that came while the kiosk was locked, oldest first; they are handed over when somebody signs on
 * @param message the last thing to be told
 * @param busy whether the service is being asked
 */
public record SignOnState(
        Stage stage,
        Optional<String> person,
        boolean locked,
        Optional<String> asked,
        List<String> known,
        List<String> held,
        Optional<Message> message,
        boolean busy) {
    public SignOnState {
        known = List.copyOf(known);
        held = List.copyOf(held);
        if (stage == Stage.WORK && (locked || person.isEmpty())) {
            throw new IllegalArgumentException("nobody works at a locked kiosk, or without being signed on");
        }
        if ((stage == Stage.PIN) != asked.isPresent()) {
            throw new IllegalArgumentException("a PIN is asked of somebody, and only in stage PIN");
        }
    }

    /** What is shown. */
    public enum Stage {
        /** The pages. */
        WORK,
        /** Badge or name is asked. */
        WHO,
        /** The PIN is asked. */
        PIN
    }

    /**
     * Something told.
     *
     * @param state how serious
     * @param text sentence
     */
    public record Message(ReadingState state, Reason text) {}

    /**
     * Whether the way back to the pages is open without signing on.
     *
     * @return true when the kiosk is not locked
     */
    public boolean mayGoBack() {
        return stage != Stage.WORK && !locked;
    }
}
