package org.docksweep.kiosk.bench;

import java.time.Duration;
import java.util.function.Consumer;
import org.docksweep.kiosk.desk.DeskThread;
import org.docksweep.kiosk.printing.PaperView;

/**
 * The bench. All state lives on one thread, where the service is asked and the rig is played as well; the stop key goes
 * past it. Every change is published as one immutable {@link BenchState}.
 */
public final class Bench implements BenchActions, AutoCloseable {
    private static final Duration CLOSE_WITHIN = Duration.ofSeconds(25);

    private final BenchParts parts;
    private final BenchFlow flow;
    private final DeskThread<BenchState> thread;

    /**
     * Opens the bench with an empty queue; {@link #refresh()} reads it.
     *
     * @param parts what it works with
     */
    public Bench(BenchParts parts) {
        this.parts = parts;
        this.flow = new BenchFlow(parts, this::publish);
        thread = new DeskThread<>("bench", flow::state, flow::defect);
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public BenchState state() {
        return thread.state();
    }

    /**
     * Adds a listener; it hears of every state from now on, on the bench's thread.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<BenchState> listener) {
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
    public void step(BenchStep step) {
        post(() -> flow.step(step));
    }

    @Override
    public void viewCard(Consumer<PaperView> shown) {
        post(() -> flow.viewCard(shown));
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
