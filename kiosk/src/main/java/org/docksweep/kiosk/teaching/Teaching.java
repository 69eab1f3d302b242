package org.docksweep.kiosk.teaching;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * What is behind the fleet page. All state lives on one thread, where the service is asked, the rig is played and models are taught;
 * the stop key goes past it. Every change is published as one immutable {@link TeachingState}.
 */
public final class Teaching implements TeachingActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Teaching.class);
    private static final int CLOSE_WITHIN_S = 25;

    private final TeachingParts parts;
    private final List<Consumer<TeachingState>> listeners = new CopyOnWriteArrayList<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "teaching");
        made.setDaemon(true);
        return made;
    });
    /** Pressed by a person, read by whatever plays. */
    private final AtomicInteger stops = new AtomicInteger();

    private final TeachingFlow flow;
    private volatile TeachingState state;

    /**
     * Opens it with what the local copy of the fleet knows.
     *
     * @param parts what it works with
     */
    public Teaching(TeachingParts parts) {
        this.parts = parts;
        this.flow = new TeachingFlow(parts, stops, this::publish);
        this.state = flow.state();
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public TeachingState state() {
        return state;
    }

    /**
     * Adds a listener; it hears of every state from now on, on the thread of this.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<TeachingState> listener) {
        listeners.add(listener);
    }

    @Override
    public void refresh() {
        post(flow::refresh);
    }

    @Override
    public void scan(String text) {
        post(() -> flow.scanned(text));
    }

    @Override
    public void mark(int index) {
        post(() -> flow.mark(index));
    }

    @Override
    public void step(TeachingStep step) {
        post(() -> flow.step(step));
    }

    @Override
    public void stop() {
        stops.incrementAndGet();
        parts.dock().rig().stop();
    }

    private void post(Runnable work) {
        try {
            thread.execute(() -> {
                try {
                    work.run();
                } catch (RuntimeException e) {
                    LOG.error("Defect at the fleet page", e);
                    flow.defect(e);
                }
                publish();
            });
        } catch (RejectedExecutionException e) {
            LOG.debug("The fleet page is closed; what came after is ignored");
        }
    }

    private void publish() {
        TeachingState newest = flow.state();
        state = newest;
        for (Consumer<TeachingState> listener : listeners) {
            listener.accept(newest);
        }
    }

    @Override
    public void close() {
        thread.shutdownNow();
        stop();
        try {
            if (!thread.awaitTermination(CLOSE_WITHIN_S, TimeUnit.SECONDS)) {
                LOG.warn("The fleet page did not end within {} s", CLOSE_WITHIN_S);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
