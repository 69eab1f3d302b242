package org.docksweep.service.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.concurrent.atomic.AtomicLong;
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
 * them all.
 */
@Component
class Durability {
    private final DataSource dataSource;
    private final AtomicLong asked = new AtomicLong();
    private final ReentrantLock oneAtATime = new ReentrantLock();
    private long covered;
    private volatile Boolean needsCheckpoint;

    Durability(DataSource dataSource) {
        this.dataSource = dataSource;
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
            long covers = asked.get();
            checkpoint();
            covered = covers;
        } finally {
            oneAtATime.unlock();
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
