package org.docksweep.kiosk.night;

/** Sets the pace of the truck. */
@FunctionalInterface
public interface NightPace {
    /** As fast as the dock goes. */
    NightPace AT_ONCE = index -> {};

    /**
     * Called before a cabinet is scanned.
     *
     * @param index number of the cabinet, from 0
     * @throws InterruptedException if stopped
     */
    void before(int index) throws InterruptedException;
}
