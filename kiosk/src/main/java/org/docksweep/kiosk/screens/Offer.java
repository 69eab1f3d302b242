package org.docksweep.kiosk.screens;

/**
 * A step the person can take now, by its button or by its key.
 *
 * @param command key
 * @param kind weight of the button
 * @param label words on the button
 * @param action what it does; returns at once
 */
record Offer(Command command, Kind kind, String label, Runnable action) {

    /** Weight of a button. */
    enum Kind {
        /** The expected next step. */
        PRIMARY,
        /** Any other step. */
        PLAIN,
        /** Silence. */
        STOP
    }
}
