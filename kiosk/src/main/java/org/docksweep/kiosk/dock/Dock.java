package org.docksweep.kiosk.dock;

import java.time.Duration;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.printing.PaperView;
import org.docksweep.sweep.SweepPlan;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The return dock. All state lives on one thread; the rig and the printer work on threads of their own, so that a scan
 * or the stop key is never held up. Every change is published as one immutable {@link DockState}.
 */
public final class Dock implements DockActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Dock.class);
    private static final Duration STRIP_EVERY = Duration.ofSeconds(1);
    /** Progress is shown in steps of this share; more often no eye sees. */
    private static final double PROGRESS_STEP = 0.02;

    private final DockParts parts;
    private final List<DockListener> listeners = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService dockThread = Executors.newSingleThreadScheduledExecutor(named("dock"));
    private final ExecutorService rigThread = Executors.newSingleThreadExecutor(named("rig"));
    private final ExecutorService paperThread = Executors.newSingleThreadExecutor(named("paper"));
    private final AtomicInteger stops = new AtomicInteger();
    private final DockFlow flow;
    private volatile DockState state;

    /**
     * Opens the dock.
     *
     * @param parts what it works with
     * @param fleet fleet as known now
     */
    public Dock(DockParts parts, LocalFleet fleet) {
        this.parts = parts;
        this.flow = new DockFlow(parts, new Threads(), fleet);
        this.state = flow.state();
        dockThread.scheduleWithFixedDelay(
                () -> run(this::refreshStrip), STRIP_EVERY.toMillis(), STRIP_EVERY.toMillis(), TimeUnit.MILLISECONDS);
    }

    /**
     * Has the gate judge something made up, beside all else, so that the first cabinet does not wait for what a program does the first
     * time only. A gate that cannot is no worse off than without.
     *
     * @param fleet fleet as known now
     */
    public void warmUp(LocalFleet fleet) {
        Thread thread = named("warm-up").newThread(() -> {
            try {
                boolean judged = new WarmUp(parts.gate()).judge(fleet);
                LOG.debug("The gate is warm: {}", judged);
            } catch (RuntimeException e) {
                LOG.warn("The gate could not be warmed up; the first answer may take longer", e);
            }
        });
        thread.setPriority(Thread.MIN_PRIORITY);
        thread.start();
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public DockState state() {
        return state;
    }

    /**
     * Whether the dock probes, sweeps or judges.
     *
     * @return true while a cabinet is being measured
     */
    public boolean isSounding() {
        DockState.Phase phase = state.phase();
        return phase == DockState.Phase.PROBE || phase == DockState.Phase.SWEEP || phase == DockState.Phase.JUDGE;
    }

    /**
     * Whether a cabinet is at hand that has no route yet.
     *
     * @return true from the visual list to the answer
     */
    public boolean isAtWork() {
        DockState now = state;
        boolean answered = now.answer().filter(a -> a.route().isPresent()).isPresent();
        return now.phase() != DockState.Phase.READY && !(now.phase() == DockState.Phase.ANSWER && answered);
    }

    /**
     * Tells the person something.
     *
     * @param seriousness how serious
     * @param text sentence with what to do
     */
    public void tell(ReadingState seriousness, Reason text) {
        post(() -> flow.tell(seriousness, text));
    }

    /**
     * Adds a listener; it hears of every state from now on.
     *
     * @param listener the listener
     */
    public void addListener(DockListener listener) {
        listeners.add(listener);
    }

    /**
     * Takes a newer copy of the fleet. A check-in under way is finished with the one it began with.
     *
     * @param fleet the copy
     */
    public void fleetRefreshed(LocalFleet fleet) {
        post(() -> flow.refreshed(fleet));
    }

    /**
     * Shows that the service refused a record for good.
     *
     * @param words what it said
     */
    public void recordParked(String words) {
        post(() -> flow.recordParked(words));
    }

    /**
     * A scan from before, when nobody could take it: comes after the cabinet at hand, never instead of it.
     *
     * @param text raw text, without the Enter
     */
    public void scanNext(String text) {
        post(() -> flow.scannedNext(text));
    }

    /** Somebody else is signed on: shows it at once. */
    public void personChanged() {
        post(() -> {});
    }

    /**
     * How the list at hand stands.
     *
     * @return the report; empty when no list is open
     */
    public java.util.Optional<ReturnReport> report() {
        try {
            return dockThread.submit(flow::report).get();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("stopped while reading the return list", e);
        } catch (java.util.concurrent.ExecutionException e) {
            throw new IllegalStateException("the return list cannot be read", e.getCause());
        }
    }

    @Override
    public void scan(String text) {
        post(() -> flow.scanned(text));
    }

    @Override
    public void lookedOver(Set<VisualItem> damage) {
        Set<VisualItem> copy = Set.copyOf(damage);
        post(() -> flow.lookedOver(copy));
    }

    @Override
    public void plugged() {
        post(flow::goOn);
    }

    @Override
    public void stop() {
        // Straight to the rig, from the thread that pressed the key: silence does not wait for a queue.
        stops.incrementAndGet();
        parts.rig().stop();
    }

    @Override
    public void sweepAgain() {
        post(flow::goOn);
    }

    @Override
    public void holdForPerson() {
        post(flow::holdForPerson);
    }

    @Override
    public void printTag() {
        post(flow::printTag);
    }

    @Override
    public void viewTag(Consumer<PaperView> shown) {
        post(() -> flow.viewTag(shown));
    }

    @Override
    public void viewSheet(Consumer<PaperView> shown) {
        post(() -> flow.viewSheet(shown));
    }

    @Override
    public void notice(DockState.NoticeAction action) {
        post(() -> flow.notice(action));
    }

    @Override
    public void register(String modelCode) {
        post(() -> flow.register(modelCode));
    }

    @Override
    public void closeList() {
        post(flow::closeList);
    }

    private void post(Runnable work) {
        try {
            dockThread.execute(() -> run(() -> {
                work.run();
                publish();
            }));
        } catch (RejectedExecutionException e) {
            LOG.debug("The dock is closed; what came after is ignored");
        }
    }

    private void run(Runnable work) {
        try {
            work.run();
        } catch (RuntimeException e) {
            LOG.error("Defect at the dock", e);
            flow.defect(e);
            publish();
        }
    }

    private void publish() {
        DockState newest = flow.state();
        state = newest;
        for (DockListener listener : listeners) {
            try {
                listener.changed(newest);
            } catch (RuntimeException e) {
                LOG.error("A listener of the dock failed", e);
            }
        }
    }

    private void refreshStrip() {
        DockState.Strip before = state.strip();
        DockState.Strip now = flow.state().strip();
        boolean same = before.waitingToSend() == now.waitingToSend()
                && before.refused() == now.refused()
                && before.trouble().equals(now.trouble())
                && before.rig().equals(now.rig())
                && before.operator().equals(now.operator())
                && before.now().getEpochSecond() / 60 == now.now().getEpochSecond() / 60;
        if (!same) {
            publish();
        }
    }

    @Override
    public void close() {
        dockThread.shutdownNow();
        rigThread.shutdownNow();
        paperThread.shutdown();
        parts.rig().stop();
        try {
            boolean ended = paperThread.awaitTermination(10, TimeUnit.SECONDS)
                    && rigThread.awaitTermination(10, TimeUnit.SECONDS)
                    && dockThread.awaitTermination(10, TimeUnit.SECONDS);
            if (!ended) {
                LOG.warn("The dock's threads did not end within 10 s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static java.util.concurrent.ThreadFactory named(String name) {
        return work -> {
            Thread thread = new Thread(work, name);
            thread.setDaemon(true);
            return thread;
        };
    }

    /** The threads, as the state machine sees them. */
    private final class Threads implements Desk {
        @Override
        public <T> void onRig(Supplier<T> work, Consumer<T> done) {
            on(rigThread, work, done);
        }

        @Override
        public <T> void onPaper(Supplier<T> work, Consumer<T> done) {
            on(paperThread, work, done);
        }

        private <T> void on(ExecutorService thread, Supplier<T> work, Consumer<T> done) {
            thread.execute(() -> {
                try {
                    T result = work.get();
                    post(() -> done.accept(result));
                } catch (RuntimeException e) {
                    // Told on the dock's thread, where defects are handled.
                    post(() -> {
                        throw e;
                    });
                }
            });
        }

        @Override
        public Measuring.Order order(Draft draft, TestPoint point, SweepPlan plan) {
            int stopsBefore = stops.get();
            int attempt = draft.attempt();
            double[] shown = {0};
            return new Measuring.Order(draft.cabinet.tag(), point, plan, () -> stops.get() != stopsBefore, share -> {
                if (share - shown[0] >= PROGRESS_STEP) {
                    shown[0] = share;
                    post(() -> flow.progress(
                            draft, new DockState.SweepProgress(point.code(), point.contacts(), share, attempt)));
                }
            });
        }

        @Override
        public void later(Duration wait, Runnable work) {
            dockThread.schedule(() -> post(work), wait.toMillis(), TimeUnit.MILLISECONDS);
        }
    }
}
