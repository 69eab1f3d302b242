package org.docksweep.kiosk.teaching;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.docksweep.kiosk.desk.DeskThread;

/**
 * What is behind the fleet page. All state lives on one thread, where the service is asked, the rig is played and models are taught;
 * the stop key goes past it. Every change is published as one immutable {@link TeachingState}.
 */
public final class Teaching implements TeachingActions, AutoCloseable {
    private static final Duration CLOSE_WITHIN = Duration.ofSeconds(25);

    private final TeachingParts parts;
    /** Pressed by a person, read by whatever plays. */
    private final AtomicInteger stops = new AtomicInteger();

    private final TeachingFlow flow;
    private final DeskThread<TeachingState> thread;

    /**
     * Opens it with what the local copy of the fleet knows.
     *
     * @param parts what it works with
     */
    public Teaching(TeachingParts parts) {
        this.parts = parts;
        this.flow = new TeachingFlow(parts, stops, this::publish);
        thread = new DeskThread<>("teaching", flow::state, flow::defect);
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public TeachingState state() {
        return thread.state();
    }

    /**
     * Adds a listener; it hears of every state from now on, on the thread of this.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<TeachingState> listener) {
        thread.addListener(listener);
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
        thread.post(work);
    }

    private void publish() {
        thread.publish();
    }

    @Override
    public void close() {
        thread.end();
        stop();
        thread.awaitEnd(CLOSE_WITHIN);
    }
}
