package org.docksweep.kiosk.bench;

import java.util.function.Consumer;
import org.docksweep.kiosk.printing.PaperView;

/** What a person does at the bench. Every method returns at once. */
public interface BenchActions {
    /** The page has come up: read the queue again. */
    void refresh();

    /**
     * Something was scanned or typed.
     *
     * @param text job code, asset tag, part number, serial, number or words, as the prompt asks for
     */
    void scan(String text);

    /**
     * Marks a job of the queue.
     *
     * @param index place in the queue, from 0; outside it nothing happens
     */
    void mark(int index);

    /**
     * Takes a step. One that is not offered now does nothing.
     *
     * @param step the step
     */
    void step(BenchStep step);

    /**
     * Takes a choice of the finding, or takes it back.
     *
     * @param code its code
     */
    void choose(String code);

    /**
     * Draws the card that is shown, as it would be printed.
     *
     * @param shown takes it, on the bench's thread; not called when no card can be printed now, which a message tells
     */
    void viewCard(Consumer<PaperView> shown);

    /** Silence, at once. */
    void stop();
}
