package org.docksweep.kiosk.spool;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** The spool's one connection: a piece of work is committed whole before {@link #write} returns, or not at all. */
final class SpoolDatabase implements AutoCloseable {
    private final Connection connection;
    private final Path folder;

    SpoolDatabase(Connection connection, Path folder) {
        this.connection = connection;
        this.folder = folder;
    }

    /** Statements that belong together. */
    @FunctionalInterface
    interface Work {
        void run() throws SQLException;
    }

    /** Makes a value of a row. */
    @FunctionalInterface
    interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Runs the work and makes it durable. */
    synchronized void write(String what, Work work) {
        try {
            work.run();
            connection.commit();
        } catch (SQLException e) {
            try {
                connection.rollback();
            } catch (SQLException rollbackFailed) {
                e.addSuppressed(rollbackFailed);
            }
            throw failed(what, e);
        }
    }

    /** One statement of a work. */
    void update(String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            set(statement, values);
            statement.executeUpdate();
        }
    }

    /** A question within a work. */
    boolean exists(String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            set(statement, values);
            return statement.executeQuery().next();
        }
    }

    /** All rows of a question. */
    synchronized <T> List<T> read(String what, String sql, RowReader<T> reader, Object... values) {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            set(statement, values);
            try (ResultSet rows = statement.executeQuery()) {
                List<T> result = new ArrayList<>();
                while (rows.next()) {
                    result.add(reader.read(rows));
                }
                return result;
            }
        } catch (SQLException e) {
            throw failed(what, e);
        }
    }

    @Override
    public synchronized void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw failed("close", e);
        }
    }

    private static void set(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }

    private SpoolException failed(String what, SQLException e) {
        return new SpoolException(
                "the spool in " + folder + " could not " + what + "; check the disk: " + e.getMessage(), e);
    }
}
