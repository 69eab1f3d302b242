package org.docksweep.kiosk.screens;

import java.util.Optional;
import org.docksweep.kiosk.people.SignOnDesk;
import org.docksweep.kiosk.practice.PracticeTruck;

/**
 * What belongs to no page of the window.
 *
 * @param people signing on; empty where one person is on for good
 * @param setUp opens the set-up walk; empty where there is nothing to set up
 * @param practice begins practice, or ends it while it goes on; empty where there is none
 * @param truck what comes off the invented truck; present when everything here is invented, so that every screen must say so
 */
public record Around(
        Optional<SignOnDesk> people,
        Optional<Runnable> setUp,
        Optional<Runnable> practice,
        Optional<PracticeTruck> truck) {
    /** Nothing. */
    public static final Around NONE =
            new Around(Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty());
}
