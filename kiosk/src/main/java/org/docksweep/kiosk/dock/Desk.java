package org.docksweep.kiosk.dock;

import java.time.Duration;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.docksweep.fleet.TestPoint;

/** What the state machine asks of the threads around it. Everything comes back on the dock's thread. */
interface Desk {
    /**
     * Runs something slow on the rig's thread.
     *
     * @param work what
     * @param done takes the result, on the dock's thread
     * @param <T> result type
     */
    <T> void onRig(Supplier<T> work, Consumer<T> done);

    /**
     * Runs something slow on the paper thread.
     *
     * @param work what
     * @param done takes the result, on the dock's thread
     * @param <T> result type
     */
    <T> void onPaper(Supplier<T> work, Consumer<T> done);

    /**
     * An order for the rig that knows of stop and shows progress.
     *
     * @param draft check-in
     * @param point test point
     * @param plan what to play
     * @return the order
     */
    Measuring.Order order(Draft draft, TestPoint point, org.docksweep.sweep.SweepPlan plan);

    /**
     * Runs something on the dock's thread later.
     *
     * @param wait how much later
     * @param work what
     */
    void later(Duration wait, Runnable work);
}
