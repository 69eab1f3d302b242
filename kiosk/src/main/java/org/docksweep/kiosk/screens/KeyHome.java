package org.docksweep.kiosk.screens;

import javax.swing.JComponent;

/** The content of a window that gets all keys of it. Lives on the event thread. */
interface KeyHome {
    /** Where typed text goes now. */
    JComponent keyTarget();

    /**
     * Does what a command key stands for.
     *
     * @return whether it is alive now
     */
    boolean perform(Command command);

    /** Somebody is at the kiosk. */
    default void touched() {
        // Nobody needs to know.
    }

    /**
     * Takes a badge out of the entry before anything else hears of it.
     *
     * @return whether there was one
     */
    default boolean badgeEntered() {
        return false;
    }
}
