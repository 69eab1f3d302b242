package org.docksweep.kiosk.bench;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The bench. All state lives on one thread, where the service is asked and the rig is played as well; the stop key goes
 * past it. Every change is published as one immutable {@link BenchState}.
 */
public final class Bench implements BenchActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Bench.class);
    private static final int CLOSE_WITHIN_S = 25;

    private final BenchParts parts;
    private final List<Consumer<BenchState>> listeners = new CopyOnWriteArrayList<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "bench");
        made.setDaemon(true);
        return made;
    });
    private final BenchFlow flow;
    private volatile BenchState state;

    /**
     * Opens the bench with an empty queue; {@link #refresh()} reads it.
     *
     * @param parts what it works with
     */
    public Bench(BenchParts parts) {
        this.parts = parts;
        this.flow = new BenchFlow(parts, this::publish);
        this.state = flow.state();
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public BenchState state() {
        return state;
    }

    /**
     * Adds a listener; it hears of every state from now on, on the bench's thread.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<BenchState> listener) {
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
    public void step(BenchStep step) {
        post(() -> flow.step(step));
    }

    @Override
    public void choose(String code) {
        post(() -> flow.choose(code));
    }

    @Override
    public void stop() {
        ProofDesk.stop(parts);
    }

    private void post(Runnable work) {
        try {
            thread.execute(() -> {
                try {
                    work.run();
                } catch (RuntimeException e) {
                    LOG.error("Defect at the bench", e);
                    flow.defect(e);
                }
                publish();
            });
        } catch (RejectedExecutionException e) {
            LOG.debug("The bench is closed; what came after is ignored");
        }
    }

    private void publish() {
        BenchState newest = flow.state();
        state = newest;
        for (Consumer<BenchState> listener : listeners) {
            listener.accept(newest);
        }
    }

    @Override
    public void close() {
        thread.shutdownNow();
        stop();
        try {
            if (!thread.awaitTermination(CLOSE_WITHIN_S, TimeUnit.SECONDS)) {
                LOG.warn("The bench did not end within {} s", CLOSE_WITHIN_S);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
