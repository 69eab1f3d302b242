package org.docksweep.kiosk.dock;

import java.util.Set;
import java.util.function.Consumer;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.printing.PaperView;

/** What the person at the dock can do. All methods return at once and may be called from the event thread. */
public interface DockActions {

    /**
     * A scan, or a tag typed by hand.
     *
     * @param text raw text, without the Enter
     */
    void scan(String text);

    /**
     * The visual list is done; the probe and the sweep start.
     *
     * @param damage items that are not fine; empty for "all fine"
     */
    void lookedOver(Set<VisualItem> damage);

    /** The lead is plugged in: probe and sweep go on. */
    void plugged();

    /** Stop: silence at once. */
    void stop();

    /** Sweep again after a spoiled sweep. */
    void sweepAgain();

    /** A person ends the attempts: the cabinet goes to manual hold. */
    void holdForPerson();

    /** Print the tag (again). */
    void printTag();

    /**
     * Draws the tag of the answer that is shown, as it would be printed.
     *
     * @param shown takes it, on the dock's thread; not called when there is no tag, or when it cannot be drawn, which a notice tells
     */
    void viewTag(Consumer<PaperView> shown);

    /**
     * Draws the return sheet of the list at hand, as closing the list would print it now.
     *
     * @param shown takes it, on the dock's thread; not called when no list is at hand, or when it cannot be drawn
     */
    void viewSheet(Consumer<PaperView> shown);

    /**
     * Answer to a notice.
     *
     * @param action action chosen
     */
    void notice(DockState.NoticeAction action);

    /**
     * Registers the unknown cabinet of the notice.
     *
     * @param modelCode model chosen by the person
     */
    void register(String modelCode);

    /** Closes the return list at the end of the night and prints the return sheet. */
    void closeList();
}
