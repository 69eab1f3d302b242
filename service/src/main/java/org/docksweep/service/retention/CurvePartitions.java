package org.docksweep.service.retention;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;

/**
 * Partitions by month of the curves on PostgreSQL, named {@code measurement_curve_YYYY_MM}. On H2 there are none and
 * nothing here does anything. Works on the caller's connection and leaves the commit to it.
 */
public final class CurvePartitions {
    private static final String TABLE = "measurement_curve";
    private static final String REST = TABLE + "_rest";
    private static final String NAME = TABLE + "_\\d{4}_\\d{2}";
    /** Any number that nothing else locks: two services never make the same partition at once. */
    private static final long LOCK = 20_260_314_080L;

    private CurvePartitions() {}

    static boolean exist(Connection connection) throws SQLException {
        return "PostgreSQL".equals(connection.getMetaData().getDatabaseProductName());
    }

    /**
     * Makes the partitions of some months, and of every month of which curves wait in the rest, and moves those there.
     *
     * @param connection connection in a transaction
     * @param from first month
     * @param to last month
     * @return partitions that are new
     * @throws SQLException if the database refuses
     */
    public static List<YearMonth> ensure(Connection connection, YearMonth from, YearMonth to) throws SQLException {
        if (!exist(connection)) {
            return List.of();
        }
        execute(connection, "select pg_advisory_xact_lock(" + LOCK + ")");
        TreeSet<YearMonth> wanted = waiting(connection);
        for (YearMonth month = from; !month.isAfter(to); month = month.plusMonths(1)) {
            wanted.add(month);
        }
        wanted.removeAll(all(connection));
        for (YearMonth month : wanted) {
            make(connection, month);
        }
        return List.copyOf(wanted);
    }

    private static TreeSet<YearMonth> waiting(Connection connection) throws SQLException {
        TreeSet<YearMonth> months = new TreeSet<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery(
                        "select distinct cast(date_trunc('month', stored_on) as date) from " + REST)) {
            while (rows.next()) {
                months.add(YearMonth.from(rows.getObject(1, LocalDate.class)));
            }
        }
        return months;
    }

    /** The months that have a partition, oldest first. */
    static List<YearMonth> all(Connection connection) throws SQLException {
        List<YearMonth> months = new ArrayList<>();
        try (Statement statement = connection.createStatement();
                ResultSet rows = statement.executeQuery("select c.relname from pg_inherits i join pg_class c on"
                        + " c.oid = i.inhrelid where i.inhparent = cast('" + TABLE + "' as regclass) order by 1")) {
            while (rows.next()) {
                String name = rows.getString(1);
                if (name.matches(NAME)) {
                    months.add(
                            YearMonth.parse(name.substring(TABLE.length() + 1).replace('_', '-')));
                }
            }
        }
        return months;
    }

    static String name(YearMonth month) {
        return String.format("%s_%04d_%02d", TABLE, month.getYear(), month.getMonthValue());
    }

    /** Filled before it is attached, since a partition may not take over rows of the rest by itself. */
    private static void make(Connection connection, YearMonth month) throws SQLException {
        String name = name(month);
        String from = "'" + month.atDay(1) + "'";
        String to = "'" + month.plusMonths(1).atDay(1) + "'";
        execute(connection, "create table " + name + " (like " + TABLE + " including defaults including constraints)");
        execute(
                connection,
                "with moved as (delete from " + REST + " where stored_on >= " + from + " and stored_on < " + to
                        + " returning measurement_id, stored_on, judgement_json) insert into " + name
                        + " (measurement_id, stored_on, judgement_json) select * from moved");
        execute(
                connection,
                "alter table " + TABLE + " attach partition " + name + " for values from (" + from + ") to (" + to
                        + ")");
    }

    /** Rows of a partition. */
    static long count(Connection connection, YearMonth month) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement("select count(*) from " + name(month));
                ResultSet rows = statement.executeQuery()) {
            rows.next();
            return rows.getLong(1);
        }
    }

    static void drop(Connection connection, YearMonth month) throws SQLException {
        execute(connection, "drop table " + name(month));
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
