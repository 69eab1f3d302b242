package org.docksweep.kiosk.desk;

import java.time.Duration;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The one thread that all state of a desk lives on, so that the window never waits for a service, a rig or a disk. After each
 * piece of work the state is published as one immutable object.
 *
 * @param <S> the state, immutable
 */
public final class DeskThread<S> {
    private static final Logger LOG = LoggerFactory.getLogger(DeskThread.class);

    private final String name;
    private final Supplier<S> states;
    private final Consumer<RuntimeException> defect;
    private final List<Consumer<S>> listeners = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService thread;
    private volatile S state;

    /**
     * Starts the thread.
     *
     * @param name what the thread is called
     * @param states gives the state as it is; asked on the thread, and once here
     * @param defect told of a defect in a piece of work, on the thread; the desk goes on
     */
    public DeskThread(String name, Supplier<S> states, Consumer<RuntimeException> defect) {
        this.name = name;
        this.states = states;
        this.defect = defect;
        thread = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread made = new Thread(work, name);
            made.setDaemon(true);
            return made;
        });
        state = states.get();
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public S state() {
        return state;
    }

    /**
     * Adds a listener; it hears of every state from now on, on this thread.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<S> listener) {
        listeners.add(listener);
    }

    /**
     * Does a piece of work after all that came before, and publishes what it made of the state. Once closed, nothing comes any
     * more.
     *
     * @param work the work
     */
    public void post(Runnable work) {
        try {
            thread.execute(() -> {
                try {
                    work.run();
                } catch (RuntimeException e) {
                    LOG.error("Defect on the thread \"{}\"", name, e);
                    defect.accept(e);
                }
                publish();
            });
        } catch (RejectedExecutionException e) {
            LOG.debug("The thread \"{}\" has ended; what came after is ignored", name);
        }
    }

    /** Publishes the state in the middle of a piece of work; from this thread only. */
    public void publish() {
        S newest = states.get();
        if (newest.equals(state)) {
            return;
        }
        state = newest;
        for (Consumer<S> listener : listeners) {
            try {
                listener.accept(newest);
            } catch (RuntimeException e) {
                LOG.error("A listener of the thread \"{}\" failed", name, e);
            }
        }
    }

    /**
     * Looks at something again and again; what it finds is posted.
     *
     * @param look the look
     * @param every time between two
     */
    public void every(Duration every, Runnable look) {
        thread.scheduleWithFixedDelay(look, every.toMillis(), every.toMillis(), TimeUnit.MILLISECONDS);
    }

    /**
     * Waits until everything posted before has been done.
     *
     * @throws InterruptedException if stopped
     */
    public void awaitIdle() throws InterruptedException {
        CountDownLatch done = new CountDownLatch(1);
        thread.execute(done::countDown);
        done.await();
    }

    /** Takes nothing more and interrupts what is under way. */
    public void end() {
        thread.shutdownNow();
    }

    /**
     * Waits for the end of what was under way when {@link #end()} was called.
     *
     * @param within longest wait
     */
    public void awaitEnd(Duration within) {
        try {
            if (!thread.awaitTermination(within.toMillis(), TimeUnit.MILLISECONDS)) {
                LOG.warn("The thread \"{}\" did not end within {} s", name, within.toSeconds());
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
