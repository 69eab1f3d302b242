package org.docksweep.kiosk.setup;

import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;

/**
 * What the window shows of the set-up walk: one immutable picture at a time. The token is not in it.
 *
 * @param step where the walk stands
 * @param language language chosen
 * @param done steps before this one, with what came of them
 * @param found what was found for this step, such as sound devices
 * @param choices what can be chosen by a key, in words that are names
 * @param suggestion what stands in the entry when the step begins; empty for nothing
 * @param message the last thing to be told
 * @param again whether there is something to keep: at the token the one that is known, else the settings in force
 * @param leavable whether the walk can be left, with settings in force
 * @param busy whether something is being checked
 */
public record SetUpState(
        Step step,
        String language,
        List<Line> done,
        List<Line> found,
        List<String> choices,
        String suggestion,
        Optional<Line> message,
        boolean again,
        boolean leavable,
        boolean busy) {
    public SetUpState {
        done = List.copyOf(done);
        found = List.copyOf(found);
        choices = List.copyOf(choices);
    }

    /** Steps in their order. */
    public enum Step {
        /** Language; set up or practise. */
        HELLO,
        /** Address of the service. */
        SERVICE,
        /** Token of this kiosk, typed unseen. */
        TOKEN,
        /** Number of this kiosk at the site that the service names. */
        NUMBER,
        /** Is there something to measure with? */
        RIG,
        /** Where papers go. */
        PRINTER,
        /** Everything once more, then it is stored. */
        STORE
    }

    /**
     * A fact in words.
     *
     * @param state its sign
     * @param text sentence
     */
    public record Line(ReadingState state, Reason text) {}

    /**
     * Whether what is typed now must not be seen.
     *
     * @return true for the token
     */
    public boolean isSecret() {
        return step == Step.TOKEN;
    }
}
