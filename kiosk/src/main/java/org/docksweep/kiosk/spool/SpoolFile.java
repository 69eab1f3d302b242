package org.docksweep.kiosk.spool;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Optional;
import org.h2.api.ErrorCode;

/** Opens the database file of the spool, and sets a damaged one aside. */
final class SpoolFile {
    private static final String NAME = "spool";
    private static final DateTimeFormatter STAMP =
            DateTimeFormatter.ofPattern("yyyyMMdd-HHmmss-SSS").withZone(ZoneOffset.UTC);

    private static final String[] SCHEMA = {
        "create table if not exists local_copy (id int primary key, etag varchar, body blob not null)",
        "create table if not exists counter (name varchar primary key, last_value int not null)",
        "create table if not exists outbox (sequence bigint generated always as identity primary key,"
                + " kind varchar not null, path varchar not null, body blob not null, state varchar not null,"
                + " attempts int not null, words varchar, created_at timestamp(6) with time zone not null)",
        "create index if not exists outbox_state on outbox (state, sequence)",
        "create index if not exists outbox_path on outbox (path)",
        "create table if not exists check_in (id uuid primary key, tag varchar not null, return_list_id uuid,"
                + " finished_at timestamp(6) with time zone not null, body blob not null)",
        "create index if not exists check_in_list on check_in (return_list_id, finished_at)",
        "create table if not exists registered (tag varchar primary key, body blob not null)"
    };

    /** What a kiosk reads when it opens: the bodies of older check-ins, which the service has, would only cost time. */
    private static final String[] NEEDED = {
        "select body from local_copy",
        "select name, last_value from counter",
        "select path from outbox",
        "select body from outbox where state <> 'SENT'",
        "select tag from check_in",
        Spool.RECENT_CHECK_INS,
        "select body from registered"
    };

    private SpoolFile() {}

    /**
     * An open file.
     *
     * @param connection its only connection
     * @param setAside where a damaged file was put, if there was one
     */
    record Opened(Connection connection, Optional<Path> setAside) {}

    static Opened open(Path folder, Clock clock) {
        try {
            Files.createDirectories(folder);
        } catch (IOException e) {
            throw new SpoolException(
                    "the spool folder " + folder + " cannot be made; check the disk and its rights", e);
        }
        try {
            return new Opened(readThrough(connect(folder, isUsed(folder))), Optional.empty());
        } catch (SQLException e) {
            if (!isDamage(e) && !isTorn(folder, e)) {
                throw new SpoolException(words(folder, e), e);
            }
        }
        Path damaged = setAside(folder, clock);
        try {
            return new Opened(connect(folder), Optional.of(damaged));
        } catch (SQLException e) {
            throw new SpoolException(words(folder, e), e);
        }
    }

    /** Damage inside the file shows only where it is read, which must not be in the middle of the night. */
    private static Connection readThrough(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            for (String needed : NEEDED) {
                try (ResultSet rows = statement.executeQuery(needed)) {
                    while (rows.next()) {
                        rows.getBytes(1);
                    }
                }
            }
            connection.commit();
            return connection;
        } catch (SQLException e) {
            try {
                connection.close();
            } catch (SQLException closing) {
                e.addSuppressed(closing);
            }
            throw e;
        }
    }

    private static String url(Path folder) {
        // WRITE_DELAY=0: with the default, a killed process loses the last half second of committed work.
        // CACHE_SIZE in KB: a spool is written once and read once, and the cache would fill with it through the night.
        return "jdbc:h2:file:" + folder.toAbsolutePath().resolve(NAME)
                + ";WRITE_DELAY=0;DB_CLOSE_ON_EXIT=FALSE;CACHE_SIZE=2048";
    }

    private static boolean isUsed(Path folder) {
        return Files.exists(folder.resolve(NAME + ".mv.db")) && SpoolJournal.existsIn(folder);
    }

    static Connection connect(Path folder) throws SQLException {
        return connect(folder, false);
    }

    /**
     * Connects.
     *
     * @param used whether the spool was in use before. A file whose chunks are all unreadable opens as an empty database, without a
     *     word; then that is damage
     */
    private static Connection connect(Path folder, boolean used) throws SQLException {
        Connection connection = DriverManager.getConnection(url(folder), "kiosk", "");
        try (Statement statement = connection.createStatement()) {
            if (used && !holdsTables(connection)) {
                throw new SQLException("the spool file holds no table", null, ErrorCode.FILE_CORRUPTED_1);
            }
            for (String ddl : SCHEMA) {
                statement.execute(ddl);
            }
            connection.setAutoCommit(false);
            return connection;
        } catch (SQLException e) {
            connection.close();
            throw e;
        }
    }

    private static boolean holdsTables(Connection connection) throws SQLException {
        try (ResultSet tables = connection.getMetaData().getTables(null, "PUBLIC", "OUTBOX", null)) {
            return tables.next();
        }
    }

    private static boolean isDamage(SQLException e) {
        int code = e.getErrorCode();
        return code == ErrorCode.FILE_CORRUPTED_1
                || code == ErrorCode.GENERAL_ERROR_1
                || code == ErrorCode.FILE_VERSION_ERROR_1
                || code == ErrorCode.ERROR_OPENING_DATABASE_1;
    }

    /** A file that was cut short is read past its end, which looks like trouble with the disk. */
    private static boolean isTorn(Path folder, SQLException e) {
        int code = e.getErrorCode();
        Path file = folder.resolve(NAME + ".mv.db");
        return (code == ErrorCode.IO_EXCEPTION_1 || code == ErrorCode.IO_EXCEPTION_2)
                && Files.isReadable(file)
                && Files.isWritable(file)
                && hasRoom(folder);
    }

    /** A database on a full disk cannot be opened either, and is whole. */
    private static boolean hasRoom(Path folder) {
        try {
            return Files.getFileStore(folder).getUsableSpace() > SpoolDatabase.NO_ROOM_BYTES;
        } catch (IOException e) {
            return false;
        }
    }

    private static String words(Path folder, SQLException e) {
        if (e.getErrorCode() == ErrorCode.DATABASE_ALREADY_OPEN_1) {
            return "the spool in " + folder + " is in use by another kiosk; close that one first";
        }
        return "the spool in " + folder + " cannot be opened; check the disk and its rights: " + e.getMessage();
    }

    private static Path setAside(Path folder, Clock clock) {
        Path file = folder.resolve(NAME + ".mv.db");
        Path damaged = folder.resolve(NAME + "-damaged-" + STAMP.format(clock.instant()) + ".mv.db");
        try {
            return Files.move(file, damaged, StandardCopyOption.ATOMIC_MOVE);
        } catch (IOException e) {
            throw new SpoolException("the spool file " + file + " is damaged and cannot be moved to " + damaged, e);
        }
    }
}
