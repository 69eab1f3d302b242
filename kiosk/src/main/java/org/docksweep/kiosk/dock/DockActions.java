package org.docksweep.kiosk.dock;

import java.util.Set;
import org.docksweep.fleet.VisualItem;

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
