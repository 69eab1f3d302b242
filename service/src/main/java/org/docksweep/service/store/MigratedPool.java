package org.docksweep.service.store;

import com.zaxxer.hikari.HikariDataSource;
import java.sql.Connection;
import java.sql.SQLException;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Gives connections once the schema is up to date, and waits for that when it is closed before. */
class MigratedPool extends HikariDataSource {
    private static final Logger LOG = LoggerFactory.getLogger(MigratedPool.class);

    private volatile Migration migration;

    void after(Migration migration) {
        this.migration = migration;
    }

    @Override
    public Connection getConnection() throws SQLException {
        migration.await();
        return super.getConnection();
    }

    @Override
    public void close() {
        try {
            migration.await();
        } catch (SQLException e) {
            // Whoever started was told already; here it matters only that nobody works on the database any more.
            LOG.debug("closed without a schema", e);
        }
        super.close();
    }
}
