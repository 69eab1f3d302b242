package org.docksweep.kiosk.night;

import java.awt.AWTEvent;
import java.awt.EventQueue;
import java.awt.Toolkit;
import java.lang.management.GarbageCollectorMXBean;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.util.Arrays;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import javax.swing.SwingUtilities;

/**
 * Watches the event thread: how long each event takes from its hand-over to its end, and how long a call waits that is posted every
 * few milliseconds. Beside the time on the clock it takes the thread's own processor time, which a crowded machine does not stretch.
 * Says what the thread was doing in the longest ones.
 */
final class EdtProbe implements AutoCloseable {
    private static final int PING_MS = 5;
    /** An event that takes longer than this has its stack kept. */
    private static final long LOOK_NS = 40_000_000;

    private static final long LIMIT_NS = 100_000_000;

    private static final int KEPT = 6;
    private static final ThreadMXBean THREADS = ManagementFactory.getThreadMXBean();
    private static final long NOT_IN_EVENT = 0;

    private final Thread edt;
    private final Thread watcher = new Thread(this::watch, "edt-probe");
    private final Queue queue = new Queue();
    private final AtomicLong began = new AtomicLong(NOT_IN_EVENT);
    private final PriorityQueue<Stall> longest = new PriorityQueue<>(Comparator.comparingLong(Stall::ns));
    private final PriorityQueue<Stall> busiest = new PriorityQueue<>(Comparator.comparingLong(Stall::ownNs));
    private final long probeBegan = System.nanoTime();
    private volatile boolean closed;
    private volatile boolean paused;
    private volatile String stack = "";
    private long events;
    private long longestEventNs;
    private long longestWaitNs;
    private long longestOwnNs;
    private long ownOverLimit;
    private long overLimit;

    /** A long event. */
    private record Stall(long ns, long ownNs, double atS, String what) {
        String line() {
            return String.format("  %.0f ms, own work %.0f ms, at %.0f s: %s", ns / 1e6, ownNs / 1e6, atS, what);
        }
    }

    private EdtProbe(Thread edt) {
        this.edt = edt;
    }

    /** Begins to watch. Call it off the event thread. */
    static EdtProbe start() throws Exception {
        Thread[] edt = new Thread[1];
        SwingUtilities.invokeAndWait(() -> edt[0] = Thread.currentThread());
        EdtProbe probe = new EdtProbe(edt[0]);
        SwingUtilities.invokeAndWait(
                () -> Toolkit.getDefaultToolkit().getSystemEventQueue().push(probe.queue));
        probe.watcher.setDaemon(true);
        probe.watcher.start();
        return probe;
    }

    private final class Queue extends EventQueue {
        @Override
        protected void dispatchEvent(AWTEvent event) {
            long start = System.nanoTime();
            long collected = collectionMs();
            long ownStart = THREADS.getCurrentThreadCpuTime();
            began.set(start);
            stack = "";
            try {
                super.dispatchEvent(event);
            } finally {
                began.set(NOT_IN_EVENT);
                long own = THREADS.getCurrentThreadCpuTime() - ownStart;
                ended(event, System.nanoTime() - start, own, collectionMs() - collected);
            }
        }

        void leave() {
            pop();
        }
    }

    private static long collectionMs() {
        return ManagementFactory.getGarbageCollectorMXBeans().stream()
                .mapToLong(GarbageCollectorMXBean::getCollectionTime)
                .sum();
    }

    private synchronized void ended(AWTEvent event, long ns, long ownNs, long collectionMs) {
        if (paused) {
            return;
        }
        events++;
        longestEventNs = Math.max(longestEventNs, ns);
        overLimit += ns > LIMIT_NS ? 1 : 0;
        longestOwnNs = Math.max(longestOwnNs, ownNs);
        ownOverLimit += ownNs > LIMIT_NS ? 1 : 0;
        if (ns > LOOK_NS) {
            String name = event.getClass().getSimpleName();
            double atS = (System.nanoTime() - probeBegan) / 1e9;
            Stall stall = new Stall(ns, ownNs, atS, name + ", " + collectionMs + " ms of it collection" + stack);
            keep(longest, stall);
            keep(busiest, stall);
        }
    }

    private static void keep(PriorityQueue<Stall> most, Stall stall) {
        most.add(stall);
        if (most.size() > KEPT) {
            most.poll();
        }
    }

    private void watch() {
        try {
            while (!closed) {
                long posted = System.nanoTime();
                AtomicLong waited = new AtomicLong(-1);
                EventQueue.invokeLater(() -> {
                    waited.set(System.nanoTime() - posted);
                    synchronized (waited) {
                        waited.notifyAll();
                    }
                });
                synchronized (waited) {
                    while (waited.get() < 0 && !closed) {
                        waited.wait(PING_MS);
                        look();
                    }
                }
                synchronized (this) {
                    if (!paused) {
                        longestWaitNs = Math.max(longestWaitNs, waited.get());
                    }
                    wait(PING_MS);
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void look() {
        long start = began.get();
        if (start != NOT_IN_EVENT && stack.isEmpty() && System.nanoTime() - start > LOOK_NS) {
            stack = Arrays.stream(edt.getStackTrace())
                    .filter(f -> !f.getClassName().startsWith("java.awt.EventDispatch"))
                    .limit(14)
                    .map(StackTraceElement::toString)
                    .collect(Collectors.joining("\n      ", "\n      ", ""));
        }
    }

    /** Nothing counts until {@link #goOn}: the collection a measurement forces is no stall of the kiosk's. */
    synchronized void pause() {
        paused = true;
    }

    synchronized void goOn() {
        paused = false;
    }

    synchronized String summary() {
        return String.format(
                "event thread: %d events; longest %.0f ms, longest wait of a call %.0f ms, events above 100 ms: %d; of the"
                        + " thread's own processor time: longest %.0f ms, above 100 ms: %d",
                events, longestEventNs / 1e6, longestWaitNs / 1e6, overLimit, longestOwnNs / 1e6, ownOverLimit);
    }

    synchronized String stalls() {
        return Stream.concat(
                        longest.stream()
                                .sorted(Comparator.comparingLong(Stall::ns).reversed()),
                        busiest.stream()
                                .sorted(Comparator.comparingLong(Stall::ownNs).reversed()))
                .distinct()
                .map(Stall::line)
                .collect(Collectors.joining("\n"));
    }

    @Override
    public void close() throws InterruptedException {
        closed = true;
        watcher.join();
        EventQueue.invokeLater(queue::leave);
    }
}
