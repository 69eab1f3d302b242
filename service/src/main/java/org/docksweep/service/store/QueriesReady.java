package org.docksweep.service.store;

import java.util.concurrent.locks.LockSupport;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.BeansException;
import org.springframework.beans.factory.ListableBeanFactory;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.ContextClosedEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.Ordered;
import org.springframework.core.annotation.Order;
import org.springframework.data.repository.Repository;
import org.springframework.stereotype.Component;

/**
 * Makes all queries ready right after the start, beside the first requests: they are a fifth of what a start costs, and
 * a request that comes first makes its own ready by itself. A query that cannot be understood is told here, too.
 */
@Component
class QueriesReady {
    private static final Logger LOG = LoggerFactory.getLogger(QueriesReady.class);

    /** Long enough for whoever waits to wake up. */
    private static final long TURN_NS = 1_000_000;

    private final ListableBeanFactory beans;
    private final boolean trialStart;
    private volatile boolean stopping;

    QueriesReady(ListableBeanFactory beans, @Value("${docksweep.stop-when-ready:false}") boolean trialStart) {
        this.beans = beans;
        this.trialStart = trialStart;
    }

    /** A trial start stops once it is ready: it has all of them in its archive of classes, or tells what is wrong. */
    @EventListener
    @Order(Ordered.LOWEST_PRECEDENCE - 1)
    void ready(ApplicationReadyEvent event) {
        if (trialStart) {
            beans.getBeansOfType(Repository.class);
            return;
        }
        Thread thread = new Thread(this::makeReady, "queries-ready");
        thread.setDaemon(true);
        thread.start();
    }

    @EventListener
    void stop(ContextClosedEvent event) {
        stopping = true;
    }

    private void makeReady() {
        try {
            for (String name : beans.getBeanNamesForType(Repository.class)) {
                beans.getBean(name);
                // One is made at a time: a request that waits for its own gets its turn now, not after all of them.
                LockSupport.parkNanos(TURN_NS);
            }
        } catch (BeansException | IllegalStateException e) {
            if (!stopping) {
                LOG.error("a query cannot be made ready", e);
            }
        }
    }
}
