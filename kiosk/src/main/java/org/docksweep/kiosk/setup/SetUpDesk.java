package org.docksweep.kiosk.setup;

import java.util.function.Consumer;
import org.docksweep.kiosk.desk.DeskThread;
import org.docksweep.kiosk.setup.SetUpParts.End;

/** The set-up walk. All state lives on one thread, where everything is checked as well; the window never waits for it. */
public final class SetUpDesk implements SetUpActions, AutoCloseable {
    private final SetUpParts parts;
    private final SetUpFlow flow;
    private final DeskThread<SetUpState> thread;

    /**
     * Begins a walk.
     *
     * @param parts what it works with
     */
    public SetUpDesk(SetUpParts parts) {
        this.parts = parts;
        flow = new SetUpFlow(parts, this::publish);
        thread = new DeskThread<>("set-up", flow::state, flow::defect);
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public SetUpState state() {
        return thread.state();
    }

    /**
     * Adds a listener; it hears of every state from now on.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<SetUpState> listener) {
        thread.addListener(listener);
    }

    @Override
    public void typed(String text) {
        post(() -> flow.typed(text));
    }

    @Override
    public void choose(int index) {
        post(() -> flow.choose(index));
    }

    @Override
    public void next() {
        post(flow::next);
    }

    @Override
    public void look() {
        post(flow::look);
    }

    @Override
    public void back() {
        post(flow::back);
    }

    @Override
    public void leave() {
        post(() -> parts.ended().accept(End.LEFT));
    }

    @Override
    public void practise() {
        post(() -> parts.ended().accept(End.PRACTICE));
    }

    /** Waits until everything asked before has been done. */
    void awaitIdle() throws InterruptedException {
        thread.awaitIdle();
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
    }
}
