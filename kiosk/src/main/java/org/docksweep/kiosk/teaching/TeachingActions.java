package org.docksweep.kiosk.teaching;

/** What a person does on the fleet page. Every method returns at once. */
public interface TeachingActions {
    /** The page has come up: look at the models again. */
    void refresh();

    /**
     * Something was scanned or typed.
     *
     * @param text asset tag, model code, badge or PIN, as the prompt asks for
     */
    void scan(String text);

    /**
     * Marks a model.
     *
     * @param index place in the list, from 0; outside it nothing happens
     */
    void mark(int index);

    /**
     * Takes a step. One that is not offered now does nothing.
     *
     * @param step the step
     */
    void step(TeachingStep step);

    /** Silence, at once. */
    void stop();
}
