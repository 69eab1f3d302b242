package org.docksweep.service.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.locks.LockSupport;
import java.util.concurrent.locks.ReentrantLock;
import javax.sql.DataSource;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.stereotype.Component;

/**
 * Forces what was committed to the disk before an answer is given. H2 keeps a commit in memory until its writer comes by;
 * {@code CHECKPOINT SYNC} writes all that was committed and forces it, once for all who wait, instead of once per commit
 * and again at the end. PostgreSQL forces at commit.
 *
 * <p>Writers that wait while one checkpoint runs share the next one: it begins after all of them committed, so it covers
 * them all. One that finds others still at work waits for them, but no longer than {@value #COMPANY_MS} ms: a checkpoint
 * writes every page that was touched, most of them the same for two check-ins as for one. A writer alone waits for nobody.
 */
@Component
class Durability {
    private static final int COMPANY_MS = 8;
    /** Between two looks at who is still at work. */
    private static final long GLANCE_NS = 200_000;

    private final DataSource dataSource;
    private final AtomicInteger atWork = new AtomicInteger();
    private final AtomicLong asked = new AtomicLong();
    private final ReentrantLock oneAtATime = new ReentrantLock();
    private long covered;
    private volatile Boolean needsCheckpoint;

    Durability(DataSource dataSource) {
        this.dataSource = dataSource;
    }

    /** A write begins that will be forced. */
    void begins() {
        atWork.incrementAndGet();
    }

    /** It ended, well or not, and goes on to {@link #force()} if well. */
    void ended() {
        atWork.decrementAndGet();
    }

    /** Returns once everything this thread committed before is on the disk. */
    void force() {
        if (Boolean.FALSE.equals(needsCheckpoint)) {
            return;
        }
        long mine = asked.incrementAndGet();
        oneAtATime.lock();
        try {
            if (covered >= mine) {
                return;
            }
            awaitCompany();
            long covers = asked.get();
            checkpoint();
            covered = covers;
        } finally {
            oneAtATime.unlock();
        }
    }

    private void awaitCompany() {
        long patienceEnds = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(COMPANY_MS);
        while (atWork.get() > 0 && System.nanoTime() < patienceEnds) {
            LockSupport.parkNanos(GLANCE_NS);
        }
    }

    private void checkpoint() {
        try (Connection connection = dataSource.getConnection()) {
            if (needsCheckpoint == null) {
                needsCheckpoint = "H2".equals(connection.getMetaData().getDatabaseProductName());
            }
            if (needsCheckpoint) {
                try (Statement statement = connection.createStatement()) {
                    statement.execute("CHECKPOINT SYNC");
                }
            }
        } catch (SQLException e) {
            throw new DataAccessResourceFailureException("committed, but could not be forced to the disk", e);
        }
    }
}
