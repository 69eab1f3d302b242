package org.docksweep.service.retention;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.YearMonth;

/** Curves past their time. Those of check-ins whose bench job is open stay until it is closed. */
final class PastCurves {
    private static final int ROWS_AT_ONCE = 10_000;
    private static final String OPEN = "select 1 from measurement m join bench_job_check_in b on"
            + " b.check_in_id = m.check_in_id join bench_job j on j.code = b.job_code"
            + " where m.id = c.measurement_id and j.open_marker = true";

    private PastCurves() {}

    static long count(Connection connection, LocalDate before, boolean held) throws SQLException {
        try (PreparedStatement count = connection.prepareStatement("select count(*) from measurement_curve c"
                + " where c.stored_on < ? and " + (held ? "" : "not ") + "exists (" + OPEN + ")")) {
            count.setObject(1, before);
            try (ResultSet rows = count.executeQuery()) {
                rows.next();
                return rows.getLong(1);
            }
        }
    }

    /** Removes them, some in each transaction, each with its line in the log. */
    static long remove(Connection connection, LocalDate before, RetentionLog log) throws SQLException {
        long removed = dropMonths(connection, before, log);
        try (PreparedStatement delete = connection.prepareStatement("delete from measurement_curve where stored_on < ?"
                + " and measurement_id in (select c.measurement_id from measurement_curve c where c.stored_on < ?"
                + " and not exists (" + OPEN + ") order by c.measurement_id limit " + ROWS_AT_ONCE + ")")) {
            int some;
            do {
                delete.setObject(1, before);
                delete.setObject(2, before);
                some = delete.executeUpdate();
                if (some > 0) {
                    log.removed(connection, some + " curves received before " + before);
                }
                connection.commit();
                removed += some;
            } while (some > 0);
        }
        return removed;
    }

    /** A whole month goes at once, and with it its space on the disk, unless something in it is held. */
    private static long dropMonths(Connection connection, LocalDate before, RetentionLog log) throws SQLException {
        if (!CurvePartitions.exist(connection)) {
            return 0;
        }
        long removed = 0;
        for (YearMonth month : CurvePartitions.all(connection)) {
            LocalDate end = month.plusMonths(1).atDay(1);
            if (end.isAfter(before) || holds(connection, month)) {
                continue;
            }
            long rows = CurvePartitions.count(connection, month);
            CurvePartitions.drop(connection, month);
            if (rows > 0) {
                log.removed(connection, rows + " curves received in " + month);
            }
            connection.commit();
            removed += rows;
        }
        connection.commit();
        return removed;
    }

    private static boolean holds(Connection connection, YearMonth month) throws SQLException {
        try (PreparedStatement any = connection.prepareStatement("select exists (select 1 from "
                        + CurvePartitions.name(month) + " c where exists (" + OPEN + "))");
                ResultSet rows = any.executeQuery()) {
            rows.next();
            return rows.getBoolean(1);
        }
    }
}
