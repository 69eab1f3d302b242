package org.docksweep.kiosk.people;

/** What a person can do about who is signed on. All methods return at once and may be called from the event thread. */
public interface SignOnActions {
    /**
     * Whether something scanned on a page is a badge, so that it must not go to the page.
     *
     * @param text raw text, without the Enter
     * @return true for a badge
     */
    boolean isBadge(String text);

    /**
     * Something was scanned or typed: a badge, a name, a PIN, or a cabinet that came at the wrong moment.
     *
     * @param text raw text, without the Enter
     */
    void typed(String text);

    /**
     * Somebody known is chosen by name.
     *
     * @param index place in {@link SignOnState#known()}
     */
    void choose(int index);

    /** Shows who is signed on, and asks for another; nothing is locked by that. */
    void ask();

    /** Locks at once. A sweep that runs goes on, and is recorded for who is signed on. */
    void lock();

    /** Locks, and lets the badge alone no longer be enough for the person signed on. */
    void signOff();

    /** One step back: from the PIN to the badge, from there to the pages when the kiosk is not locked. */
    void back();

    /** Somebody touched a key, the screen or the scanner. */
    void touched();
}
