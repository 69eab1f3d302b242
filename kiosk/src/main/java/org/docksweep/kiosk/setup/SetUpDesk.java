package org.docksweep.kiosk.setup;

import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.function.Consumer;
import org.docksweep.kiosk.setup.SetUpParts.End;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The set-up walk. All state lives on one thread, where everything is checked as well; the window never waits for it. */
public final class SetUpDesk implements SetUpActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SetUpDesk.class);

    private final SetUpParts parts;
    private final SetUpFlow flow;
    private final List<Consumer<SetUpState>> listeners = new CopyOnWriteArrayList<>();
    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread setUp = new Thread(work, "set-up");
        setUp.setDaemon(true);
        return setUp;
    });
    private volatile SetUpState state;

    /**
     * Begins a walk.
     *
     * @param parts what it works with
     */
    public SetUpDesk(SetUpParts parts) {
        this.parts = parts;
        flow = new SetUpFlow(parts, this::publish);
        state = flow.state();
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public SetUpState state() {
        return state;
    }

    /**
     * Adds a listener; it hears of every state from now on.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<SetUpState> listener) {
        listeners.add(listener);
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
        CountDownLatch done = new CountDownLatch(1);
        thread.execute(done::countDown);
        done.await();
    }

    private void post(Runnable work) {
        try {
            thread.execute(() -> {
                try {
                    work.run();
                } catch (RuntimeException e) {
                    LOG.error("Defect in the set-up", e);
                    flow.defect(e);
                }
                publish();
            });
        } catch (RejectedExecutionException e) {
            LOG.debug("The set-up is over; what came after is ignored");
        }
    }

    private void publish() {
        SetUpState newest = flow.state();
        state = newest;
        for (Consumer<SetUpState> listener : listeners) {
            try {
                listener.accept(newest);
            } catch (RuntimeException e) {
                LOG.error("A listener of the set-up failed", e);
            }
        }
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}
