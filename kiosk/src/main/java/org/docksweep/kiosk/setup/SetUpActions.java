package org.docksweep.kiosk.setup;

/** What a person can do in the set-up walk. All methods return at once and may be called from the event thread. */
public interface SetUpActions {
    /**
     * Something was typed.
     *
     * @param text as typed
     */
    void typed(String text);

    /**
     * One of the choices was taken.
     *
     * @param index place in {@link SetUpState#choices()}
     */
    void choose(int index);

    /** Goes on: begins the walk, keeps the token there is, accepts what was found, stores. */
    void next();

    /** Looks again for what can be plugged in. */
    void look();

    /** One step back; nothing is stored. */
    void back();

    /** Leaves the walk; nothing is stored. */
    void leave();

    /** Leaves the walk for practice; nothing is stored. */
    void practise();
}
