package org.docksweep.service.trends;

import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.docksweep.service.checkins.CheckInStored;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.dao.ConcurrencyFailureException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.event.TransactionalEventListener;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Looks at the readings of new check-ins after their answers were given, many cabinets at once. What is due stands in the
 * database, written with its check-in: a killed service loses none, and another one takes what is left. Who asks for the
 * watch list before the look gets it as if it had been ({@link Trends#watchList}).
 */
@Component
class TrendsDue implements DisposableBean {
    private static final Logger LOG = LoggerFactory.getLogger(TrendsDue.class);
    private static final int CABINETS_AT_ONCE = 200;

    /** So long check-ins are gathered. */
    private static final long GATHER_MS = 500;

    /** So often a look is taken anyway, for what a killed service left. */
    private static final long ANYWAY_S = 60;

    private static final long END_MS = 5_000;

    private final Trends trends;
    private final TransactionTemplate transaction;
    private final Semaphore wanted = new Semaphore(0);
    private final Semaphore stop = new Semaphore(0);
    private Thread worker;

    TrendsDue(Trends trends, PlatformTransactionManager manager) {
        this.trends = trends;
        this.transaction = new TransactionTemplate(manager);
    }

    @EventListener
    @Order(0)
    void ready(ApplicationReadyEvent event) {
        if (worker == null) {
            worker = new Thread(this::work, "trends-due");
            worker.setDaemon(true);
            worker.start();
        }
    }

    @TransactionalEventListener
    void stored(CheckInStored stored) {
        wanted.release();
    }

    private void work() {
        try {
            boolean again = true;
            while (!stop.tryAcquire(again ? GATHER_MS : 0, TimeUnit.MILLISECONDS)) {
                wanted.drainPermits();
                lookAtAll();
                again = wanted.tryAcquire(ANYWAY_S, TimeUnit.SECONDS);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** What fails stays due. */
    private void lookAtAll() {
        try {
            int looked;
            do {
                looked = transaction.execute(status -> trends.lookAtDue(CABINETS_AT_ONCE));
            } while (looked == CABINETS_AT_ONCE && stop.availablePermits() == 0);
        } catch (ConcurrencyFailureException e) {
            LOG.debug("another service looks at the same cabinets", e);
        } catch (RuntimeException e) {
            LOG.error("trends could not be looked at; tried again with the next check-in", e);
        }
    }

    @Override
    public void destroy() throws InterruptedException {
        if (worker != null) {
            stop.release();
            wanted.release();
            worker.join(END_MS);
        }
    }
}
