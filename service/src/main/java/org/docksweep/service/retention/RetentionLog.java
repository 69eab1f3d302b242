package org.docksweep.service.retention;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Clock;
import java.time.ZoneOffset;
import org.docksweep.service.store.StoredJson;

/** Writes the lines of the audit log, in the transaction that removes. */
final class RetentionLog {
    private final Clock clock;
    private final String by;
    private final String requestId;

    /**
     * A log.
     *
     * @param by who asked for it
     * @param requestId id of the request, or null without one
     */
    RetentionLog(Clock clock, String by, String requestId) {
        this.clock = clock;
        this.by = by;
        this.requestId = requestId;
    }

    void removed(Connection connection, String what) throws SQLException {
        try (PreparedStatement line =
                connection.prepareStatement("insert into audit_entry (at, done_by, action, target, outcome, request_id)"
                        + " values (?, ?, 'REMOVE', ?, 'STORED', ?)")) {
            line.setObject(1, StoredJson.cut(clock.instant()).atOffset(ZoneOffset.UTC));
            line.setString(2, by);
            line.setString(3, "retention: " + what);
            line.setString(4, requestId);
            line.executeUpdate();
        }
    }
}
