package org.docksweep.service.backup;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import javax.sql.DataSource;
import org.springframework.boot.health.contributor.AbstractHealthIndicator;
import org.springframework.boot.health.contributor.Health;
import org.springframework.stereotype.Component;

/**
 * Down when the clocks of service and database are apart, or when the service's stands before this software was made:
 * histories would come out of order.
 */
@Component
class ClockHealthIndicator extends AbstractHealthIndicator {
    private static final Duration MOST_APART = Duration.ofSeconds(30);
    private static final Instant MADE = Instant.parse("2026-01-01T00:00:00Z");

    private final Clock clock;
    private final DataSource database;

    ClockHealthIndicator(Clock clock, DataSource database) {
        super("the database does not tell its time");
        this.clock = clock;
        this.database = database;
    }

    @Override
    protected void doHealthCheck(Health.Builder builder) throws SQLException {
        Instant theirs;
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("select current_timestamp")) {
            result.next();
            theirs = result.getObject(1, OffsetDateTime.class).toInstant();
        }
        Instant ours = clock.instant();
        Duration apart = Duration.between(theirs, ours);
        builder.withDetail("apartFromDatabaseMs", apart.toMillis());
        if (apart.abs().compareTo(MOST_APART) > 0 || ours.isBefore(MADE)) {
            builder.down();
        } else {
            builder.up();
        }
    }
}
