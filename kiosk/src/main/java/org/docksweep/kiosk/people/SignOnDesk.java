package org.docksweep.kiosk.people;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.function.Consumer;
import org.docksweep.kiosk.desk.DeskThread;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Signing on. All state lives on one thread, where the service is asked as well, so that neither the window nor the dock ever waits for
 * it. Every change is published as one immutable {@link SignOnState}.
 */
public final class SignOnDesk implements SignOnActions, AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SignOnDesk.class);
    private static final Duration CLOSE_WITHIN = Duration.ofSeconds(10);

    private final SignOnParts parts;
    private final SignOnFlow flow;
    private final DeskThread<SignOnState> thread;
    private volatile long touchedNs;

    /**
     * Opens the desk: locked, nobody signed on.
     *
     * @param parts what it works with
     */
    public SignOnDesk(SignOnParts parts) {
        this.parts = parts;
        flow = new SignOnFlow(parts, this::publish);
        thread = new DeskThread<>("people", flow::state, this::defect);
        touchedNs = parts.ticksNs().getAsLong();
        thread.every(Duration.ofSeconds(1), this::look);
    }

    /**
     * The newest state.
     *
     * @return the state
     */
    public SignOnState state() {
        return thread.state();
    }

    /**
     * Who what is recorded now is recorded for: the person signed on, also while the kiosk is locked; the kiosk itself before the first
     * one.
     *
     * @return a name
     */
    public String operator() {
        return state().person().orElse(parts.kioskName());
    }

    /**
     * Adds a listener; it hears of every state from now on.
     *
     * @param listener the listener
     */
    public void addListener(Consumer<SignOnState> listener) {
        thread.addListener(listener);
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
        if (parts.working().getAsBoolean()) {
            // What runs is somebody's work, and its answer must be seen.
            touched();
        } else if (isLeftAlone()) {
            post(() -> {
                // Asked again: somebody may have come while this waited.
                if (isLeftAlone()) {
                    flow.leftAlone();
                }
            });
        }
    }

    private boolean isLeftAlone() {
        long afterNs = parts.settings().lockAfter().toNanos();
        return afterNs != 0 && parts.ticksNs().getAsLong() - touchedNs >= afterNs;
    }

    /** Waits until everything asked before has been done. */
    void awaitIdle() throws InterruptedException {
        thread.awaitIdle();
    }

    private void defect(RuntimeException e) {
        if (e instanceof UncheckedIOException disk) {
            LOG.error("The people known here cannot be kept: {}", disk.getMessage());
            flow.cannotKeep(disk.getCause());
        } else {
            flow.defect(e);
        }
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
        thread.awaitEnd(CLOSE_WITHIN);
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
