package org.docksweep.kiosk.people;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Signing on. All state lives on one thread, where the service is asked as well, so that neither the window nor the dock ever waits for
 * it. Every change is published as one immutable {@link SignOnState}.
 */
public final class SignOnDesk implements SignOnActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SignOnDesk.class);

    private final SignOnParts parts;
    private final SignOnFlow flow;
    private final List<Consumer<SignOnState>> listeners = new CopyOnWriteArrayList<>();
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread people = new Thread(work, "people");
        people.setDaemon(true);
        return people;
    });
    private volatile SignOnState state;
    private volatile long touchedNs;

    /**
     * Opens the desk: locked, nobody signed on.
     *
     * @param parts what it works with
     */
    public SignOnDesk(SignOnParts parts) {
        this.parts = parts;
        flow = new SignOnFlow(parts, this::publish);
        state = flow.state();
        touchedNs = parts.ticksNs().getAsLong();
        thread.scheduleWithFixedDelay(this::look, 1, 1, TimeUnit.SECONDS);
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public SignOnState state() {
        return state;
    }

    /**
     * Who what is recorded now is recorded for: the person signed on, also while the kiosk is locked; the kiosk itself before the first
     * one.
     *
     * @return a name
     */
    public String operator() {
        return state.person().orElse(parts.kioskName());
    }

    /**
     * Adds a listener; it hears of every state from now on.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<SignOnState> listener) {
        listeners.add(listener);
    }

    @Override
    public boolean isBadge(String text) {
        return flow.isBadge(text);
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
    public void ask() {
        post(flow::ask);
    }

    @Override
    public void lock() {
        post(flow::lock);
    }

    @Override
    public void signOff() {
        post(flow::signOff);
    }

    @Override
    public void back() {
        post(flow::back);
    }

    @Override
    public void touched() {
        touchedNs = parts.ticksNs().getAsLong();
    }

    /** Looks at once whether the kiosk has been left alone, as it does every second by itself. */
    void look() {
        long afterNs = parts.settings().lockAfter().toNanos();
        if (afterNs == 0) {
            return;
        }
        if (parts.working().getAsBoolean()) {
            // What runs is somebody's work, and its answer must be seen.
            touched();
        } else if (parts.ticksNs().getAsLong() - touchedNs >= afterNs) {
            post(flow::leftAlone);
        }
    }

    /** Waits until everything asked before has been done. */
    void awaitIdle() throws InterruptedException {
        java.util.concurrent.CountDownLatch done = new java.util.concurrent.CountDownLatch(1);
        thread.execute(done::countDown);
        done.await();
    }

    private void post(Runnable work) {
        try {
            thread.execute(() -> {
                try {
                    work.run();
                } catch (UncheckedIOException e) {
                    LOG.error("The people known here cannot be kept", e);
                    flow.cannotKeep(e.getCause());
                } catch (RuntimeException e) {
                    LOG.error("Defect while signing on", e);
                    flow.defect(e);
                }
                publish();
            });
        } catch (RejectedExecutionException e) {
            LOG.debug("The kiosk is closed; what came after is ignored");
        }
    }

    private void publish() {
        SignOnState newest = flow.state();
        if (newest.equals(state)) {
            return;
        }
        state = newest;
        for (Consumer<SignOnState> listener : listeners) {
            try {
                listener.accept(newest);
            } catch (RuntimeException e) {
                LOG.error("A listener of the sign-on failed", e);
            }
        }
    }

    @Override
    public void close() {
        thread.shutdownNow();
        try {
            if (!thread.awaitTermination(10, TimeUnit.SECONDS)) {
                LOG.warn("The thread of the sign-on did not end within 10 s");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Work that writes to the disk. */
    @FunctionalInterface
    interface Disk {
        void run() throws IOException;
    }

    static void onDisk(Disk work) {
        try {
            work.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
