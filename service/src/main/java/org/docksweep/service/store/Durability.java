package org.docksweep.service.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.springframework.dao.DataAccessResourceFailureException;
import org.springframework.stereotype.Component;

/**
 * Forces what was committed to the disk. H2 with {@code WRITE_DELAY=0} hands a commit to the operating system, which
 * survives a killed process but not a power cut; {@code CHECKPOINT SYNC} closes that gap. PostgreSQL forces at commit.
 */
@Component
class Durability {
    private final DataSource dataSource;
    private volatile Boolean needsCheckpoint;

    Durability(DataSource dataSource) {
        this.dataSource = dataSource;
    }

    void force() {
        if (Boolean.FALSE.equals(needsCheckpoint)) {
            return;
        }
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
