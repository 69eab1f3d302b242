package org.docksweep.kiosk.spool;

import java.time.Duration;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.Condition;
import java.util.concurrent.locks.ReentrantLock;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Sends the outbox in order, in the background, one record at a time. A record that can never succeed is parked and
 * the queue goes on; anything else is tried again for ever.
 */
public final class OutboxSender implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(OutboxSender.class);

    private final Spool spool;
    private final Courier courier;
    private final Backoff backoff;
    private final Runnable changed;
    private final Random jitter = new Random();
    private final ReentrantLock lock = new ReentrantLock();
    private final Condition wake = lock.newCondition();
    private final Thread thread = new Thread(this::run, "outbox");
    private boolean hurry;
    private volatile boolean closed;
    private volatile Optional<Trouble> trouble = Optional.empty();

    /**
     * Makes the sender; it starts with {@link #start()}.
     *
     * @param spool the spool
     * @param courier way to the service
     * @param backoff waits after failures
     * @param changed called from the sender's thread when counts or reachability may have changed
     */
    public OutboxSender(Spool spool, Courier courier, Backoff backoff, Runnable changed) {
        this.spool = spool;
        this.courier = courier;
        this.backoff = backoff;
        this.changed = changed;
        thread.setDaemon(true);
    }

    /** Starts sending. */
    public void start() {
        thread.start();
    }

    /** Something was recorded: look at once. */
    public void hurry() {
        lock.lock();
        try {
            hurry = true;
            wake.signalAll();
        } finally {
            lock.unlock();
        }
    }

    /**
     * Whether the service answered last time.
     *
     * @return true also before the first attempt
     */
    public boolean reachable() {
        return trouble.map(Trouble::serviceAnswered).orElse(true);
    }

    /**
     * What kept the last record from being sent.
     *
     * @return empty when it was sent, and before the first attempt
     */
    public Optional<Trouble> trouble() {
        return trouble;
    }

    private void run() {
        int failures = 0;
        while (!closed) {
            try {
                failures = sendOne(failures);
            } catch (SpoolException e) {
                LOG.error("The outbox stands still: {}", e.getMessage());
                failures++;
                pause(backoff.after(failures, jitter));
            }
        }
    }

    private int sendOne(int failures) {
        var next = spool.outbox().next();
        if (next.isEmpty()) {
            pause(backoff.cap());
            return failures;
        }
        OutboxItem item = next.get();
        Delivery delivery = courier.deliver(item);
        if (closed && !(delivery instanceof Delivery.Delivered)) {
            return failures;
        }
        if (delivery instanceof Delivery.Delivered) {
            spool.outbox().sent(item);
            trouble = Optional.empty();
            changed.run();
            return 0;
        }
        if (delivery instanceof Delivery.Refused refused) {
            LOG.warn("The service refused {} for good: {}", item.path(), refused.words());
            spool.outbox().park(item.sequence(), refused.words());
            trouble = Optional.empty();
            changed.run();
            return 0;
        }
        Delivery.NotNow notNow = (Delivery.NotNow) delivery;
        spool.outbox().triedInVain(item.sequence(), notNow.words());
        trouble = Optional.of(notNow.trouble());
        changed.run();
        pause(backoff.after(failures + 1, jitter));
        return failures + 1;
    }

    private void pause(Duration time) {
        lock.lock();
        try {
            long leftNanos = time.toNanos();
            while (!hurry && !closed && leftNanos > 0) {
                leftNanos = wake.awaitNanos(leftNanos);
            }
            hurry = false;
        } catch (InterruptedException e) {
            closed = true;
        } finally {
            lock.unlock();
        }
    }

    /** Stops after the attempt at hand; what waits stays in the spool. */
    @Override
    public void close() {
        closed = true;
        hurry();
        try {
            thread.join(TimeUnit.SECONDS.toMillis(5));
            if (thread.isAlive()) {
                thread.interrupt();
                thread.join(TimeUnit.SECONDS.toMillis(5));
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
