package org.docksweep.kiosk.spool;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The spool's one connection: a piece of work is committed whole before {@link #write} returns, or not at all. */
final class SpoolDatabase implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(SpoolDatabase.class);
    /** SQLSTATE class of a statement that was refused for what it says; the database itself is well. */
    private static final String INTEGRITY = "23";

    /** Less room than this is none: the smallest commit needs more. */
    static final long NO_ROOM_BYTES = 64 << 10;

    private final Path folder;
    private final SpoolJournal journal;
    private Connection connection;
    private boolean doubtful;

    SpoolDatabase(Connection connection, SpoolJournal journal, Path folder) {
        this.connection = connection;
        this.journal = journal;
        this.folder = folder;
    }

    /** Statements that belong together. */
    @FunctionalInterface
    interface Work {
        void run() throws SQLException, IOException;
    }

    /** Makes a value of a row. */
    @FunctionalInterface
    interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    /** Runs the work and makes it durable. */
    synchronized void write(String what, Work work) {
        try {
            open();
            work.run();
            journal.flush();
            connection.commit();
        } catch (SQLException | IOException e) {
            try {
                journal.takeBack();
                connection.rollback();
            } catch (SQLException | IOException rollbackFailed) {
                e.addSuppressed(rollbackFailed);
            }
            throw failed(what, e);
        }
        try {
            journal.committed();
        } catch (IOException e) {
            // What is stored is stored; the journal only stays longer than it must.
            LOG.warn("The journal of the spool in {} could not be shortened", folder, e);
        }
    }

    /** A database whose disk refused closes itself; once there is room again it is opened again. */
    private void open() throws SQLException {
        if (!doubtful) {
            return;
        }
        try {
            connection.close();
        } catch (SQLException e) {
            LOG.info("The spool was closed after trouble: {}", e.getMessage());
        }
        connection = SpoolFile.connect(folder);
        doubtful = false;
        LOG.info("The spool in {} is open again", folder);
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
        try {
            open();
            return rows(sql, reader, values);
        } catch (SQLException e) {
            throw failed(what, e);
        }
    }

    /** All rows of a question within a work. */
    <T> List<T> rows(String sql, RowReader<T> reader, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            set(statement, values);
            try (ResultSet rows = statement.executeQuery()) {
                List<T> result = new ArrayList<>();
                while (rows.next()) {
                    result.add(reader.read(rows));
                }
                return result;
            }
        }
    }

    @Override
    public synchronized void close() {
        try (journal) {
            connection.close();
        } catch (SQLException | IOException e) {
            throw failed("close", e);
        }
    }

    private static void set(PreparedStatement statement, Object... values) throws SQLException {
        for (int i = 0; i < values.length; i++) {
            statement.setObject(i + 1, values[i]);
        }
    }

    private SpoolException failed(String what, Exception e) {
        boolean refusedForWhatItSays = e instanceof SQLException sql
                && sql.getSQLState() != null
                && sql.getSQLState().startsWith(INTEGRITY);
        doubtful |= !refusedForWhatItSays;
        String why = noRoom() ? "the disk is full" : "check the disk: " + e.getMessage();
        return new SpoolException("the spool in " + folder + " could not " + what + "; " + why, e);
    }

    private boolean noRoom() {
        try {
            return Files.getFileStore(folder).getUsableSpace() < NO_ROOM_BYTES;
        } catch (IOException e) {
            return false;
        }
    }
}
