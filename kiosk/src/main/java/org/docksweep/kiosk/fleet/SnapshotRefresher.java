package org.docksweep.kiosk.fleet;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.spool.Spool;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Keeps the kiosk's copy of the fleet fresh, in the background. */
public final class SnapshotRefresher implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SnapshotRefresher.class);

    private final ServiceClient client;
    private final Spool spool;
    private final Consumer<LocalFleet> fresh;
    /** The copy that the spool has; read from there once. */
    private KioskSnapshot known;
    /** Told once, not every half minute. */
    private boolean away;

    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(work -> {
        Thread refresher = new Thread(work, "snapshot-refresher");
        refresher.setDaemon(true);
        return refresher;
    });

    /**
     * Makes a refresher.
     *
     * @param client way to the service
     * @param spool where the copy is kept
     * @param fresh hears of every new copy, on the refresher's thread
     */
    public SnapshotRefresher(ServiceClient client, Spool spool, Consumer<LocalFleet> fresh) {
        this.client = client;
        this.spool = spool;
        this.fresh = fresh;
    }

    /**
     * Refreshes now and then every so often.
     *
     * @param every time between two looks
     */
    public void start(Duration every) {
        thread.scheduleWithFixedDelay(this::tryOnce, 0, every.toMillis(), TimeUnit.MILLISECONDS);
    }

    private void tryOnce() {
        try {
            once();
            away = false;
        } catch (ServiceProblem | ServiceUnreachable | RuntimeException e) {
            // The copy at hand stays good; the strip shows through the outbox that the service is away.
            if (!away) {
                away = true;
                LOG.warn("Working without the service for now: {}", e.getMessage());
            }
        }
    }

    /**
     * Refreshes once, on the calling thread.
     *
     * @return whether there was something new
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if there is no answer
     */
    public boolean once() throws ServiceProblem, ServiceUnreachable {
        Optional<String> etag = spool.snapshotEtag();
        if (etag.isPresent() && known == null) {
            known = spool.snapshot().orElse(null);
        }
        Optional<ServiceClient.Fresh> answer = etag.isPresent() && known != null
                ? client.broughtUpToDate(known, etag.get())
                : client.snapshotUnless(null);
        answer.ifPresent(copy -> {
            spool.keepSnapshot(copy.snapshot(), copy.etag());
            known = copy.snapshot();
            fresh.accept(new LocalFleet(copy.snapshot(), spool.registered()));
        });
        return answer.isPresent();
    }

    @Override
    public void close() {
        thread.shutdownNow();
    }
}
