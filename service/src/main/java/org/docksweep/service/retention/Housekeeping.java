package org.docksweep.service.retention;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.docksweep.contract.RetentionReport;
import org.docksweep.service.site.Site;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.DisposableBean;
import org.springframework.boot.context.event.ApplicationReadyEvent;
import org.springframework.context.event.EventListener;
import org.springframework.core.annotation.Order;
import org.springframework.stereotype.Component;

/**
 * Once a day: partitions for the months to come, and retention where it is set. Several services on one database do it
 * each; the second finds nothing left to do.
 */
@Component
class Housekeeping implements DisposableBean {
    private static final Logger LOG = LoggerFactory.getLogger(Housekeeping.class);
    private static final int MONTHS_AHEAD = 2;
    private static final long FIRST_AFTER_MINUTES = 10;
    private static final long DAY_MINUTES = 24 * 60;

    private final DataSource database;
    private final Path recordings;
    private final RetentionSettings settings;
    private final Clock clock;
    private ScheduledExecutorService daily;

    Housekeeping(DataSource database, Site site, RetentionSettings settings, Clock clock) {
        this.database = database;
        this.recordings = site.dataDir().toAbsolutePath().resolve("recordings");
        this.settings = settings;
        this.clock = clock;
    }

    /** Partitions before the first curve can come; the rest later, since a start is a bad time for work. */
    @EventListener
    @Order(0)
    void ready(ApplicationReadyEvent event) throws SQLException {
        boolean partitions = makePartitions();
        if (daily == null && (partitions || settings.removesAnything())) {
            daily = Executors.newSingleThreadScheduledExecutor(work -> {
                Thread thread = new Thread(work, "housekeeping");
                thread.setDaemon(true);
                return thread;
            });
            daily.scheduleAtFixedRate(this::day, FIRST_AFTER_MINUTES, DAY_MINUTES, TimeUnit.MINUTES);
        }
    }

    private boolean makePartitions() throws SQLException {
        try (Connection connection = database.getConnection()) {
            if (!CurvePartitions.exist(connection)) {
                return false;
            }
            YearMonth now = YearMonth.from(clock.instant().atOffset(ZoneOffset.UTC));
            connection.setAutoCommit(false);
            try {
                CurvePartitions.ensure(connection, now, now.plusMonths(MONTHS_AHEAD));
                connection.commit();
            } catch (SQLException e) {
                connection.rollback();
                throw e;
            }
            return true;
        }
    }

    /** What fails is told and tried again the next day; an exception would end the schedule. */
    private void day() {
        try {
            makePartitions();
            if (settings.removesAnything()) {
                try (Connection connection = database.getConnection()) {
                    RetentionReport report = Retention.run(connection, recordings, settings, clock, "retention", null);
                    LOG.info("retention: {}", report);
                }
            }
        } catch (SQLException | IOException | RuntimeException e) {
            LOG.error("the daily housekeeping failed and is tried again tomorrow", e);
        }
    }

    @Override
    public void destroy() {
        if (daily != null) {
            daily.shutdownNow();
        }
    }
}
