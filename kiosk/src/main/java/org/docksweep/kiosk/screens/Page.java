package org.docksweep.kiosk.screens;

import javax.swing.JComponent;

/**
 * A page of the window. Lives on the event thread. While it is shown it gets all keys: command keys through
 * {@link #perform}, everything else through its {@link #keyTarget()}, which has the focus.
 */
interface Page {
    /** Which page this is; a window has each at most once. */
    PageName name();

    /** What is shown. */
    JComponent component();

    /** Part of the component that hears typed text. */
    JComponent keyTarget();

    /**
     * Does what a command key stands for. Stop must be answered also while nothing plays.
     *
     * @return whether the key is alive now
     */
    boolean perform(Command command);

    /** Whether a badge that is scanned now is meant for the page itself. */
    default boolean wantsBadge() {
        return false;
    }

    /** Hears that the page has come up or has gone behind another one. */
    void shown(boolean up);
}
