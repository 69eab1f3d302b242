package org.docksweep.service.store;

import java.sql.SQLException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import org.flywaydb.core.Flyway;
import org.springframework.beans.factory.SmartInitializingSingleton;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.stereotype.Component;

/**
 * Brings the schema up to date beside everything else of a start, on connections of Flyway's own. Nobody gets a connection
 * of the pool before it is done ({@link MigratedPool}), and no port is opened; where it fails, the start fails.
 */
@Component
class Migration implements FlywayMigrationStrategy, SmartInitializingSingleton {
    private volatile FutureTask<Void> task;

    @Override
    public void migrate(Flyway flyway) {
        FutureTask<Void> started = new FutureTask<>(flyway::migrate, null);
        task = started;
        // No daemon: a start that is refused meanwhile, for its settings, must not leave half a schema behind.
        new Thread(started, "migration").start();
    }

    /**
     * Returns once the schema is up to date.
     *
     * @throws SQLException if it could not be brought up to date, or the wait was interrupted
     */
    void await() throws SQLException {
        FutureTask<Void> started = task;
        if (started == null) {
            return;
        }
        try {
            started.get();
        } catch (ExecutionException e) {
            throw new SQLException("the schema of the database could not be brought up to date", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new SQLException("interrupted while the schema is brought up to date", e);
        }
    }

    /** Before the port is opened, and before anybody is told of what failed for want of a schema. */
    @Override
    public void afterSingletonsInstantiated() {
        try {
            await();
        } catch (SQLException e) {
            throw e.getCause() instanceof RuntimeException cause ? cause : new IllegalStateException(e);
        }
    }
}
