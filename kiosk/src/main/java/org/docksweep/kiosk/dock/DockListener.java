package org.docksweep.kiosk.dock;

/** Hears of every new state of the dock, in order, on one thread that is never the event thread. */
@FunctionalInterface
public interface DockListener {
    /**
     * A new state.
     *
     * @param state the state
     */
    void changed(DockState state);
}
