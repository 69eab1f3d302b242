package org.docksweep.service.backup;

import java.io.FilterOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.docksweep.service.store.StoredJson;
import tools.jackson.core.JsonGenerator;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes everything into a ZIP archive, row by row, so that its size is no matter of memory. All tables are read in one
 * transaction of repeatable reads: they fit each other, whatever is written meanwhile.
 */
final class Exporter {
    private static final int ROWS_AT_ONCE = 500;
    private static final JsonMapper JSON = new JsonMapper();

    private Exporter() {}

    /**
     * Exports.
     *
     * @param connection connection of its own, to be closed afterwards
     * @param recordings folder of the recordings, or null to leave them out
     * @param clock clock
     * @param out where to; is not closed
     * @return what was written
     * @throws SQLException if the database fails
     * @throws IOException if it cannot be written, or a recording cannot be read
     */
    static Manifest write(Connection connection, Path recordings, Clock clock, OutputStream out)
            throws SQLException, IOException {
        connection.setAutoCommit(false);
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        connection.setReadOnly(true);
        boolean h2 = "H2".equals(connection.getMetaData().getDatabaseProductName());
        try {
            if (h2) {
                // Else H2 gathers a result in memory before it hands out the first row.
                execute(connection, "set lazy_query_execution true");
            }
            return write(connection, recordings, clock.instant(), out);
        } finally {
            connection.rollback();
            if (h2) {
                execute(connection, "set lazy_query_execution false");
            }
        }
    }

    private static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    private static Manifest write(Connection connection, Path recordings, Instant now, OutputStream out)
            throws SQLException, IOException {
        ZipOutputStream zip = new ZipOutputStream(out);
        zip.setLevel(Deflater.BEST_SPEED);
        List<Manifest.Table> tables = new ArrayList<>();
        for (StoredTable table : StoredTable.all(connection)) {
            tables.add(write(connection, table, zip));
        }
        Integer count = recordings == null ? null : recordings(recordings, zip);
        Manifest manifest =
                new Manifest(Manifest.FORMAT, schemaVersion(connection), StoredJson.cut(now), tables, count);
        zip.putNextEntry(new ZipEntry(Manifest.ENTRY));
        zip.write(JSON.writerWithDefaultPrettyPrinter().writeValueAsBytes(manifest));
        zip.closeEntry();
        zip.finish();
        return manifest;
    }

    static String schemaVersion(Connection connection) throws SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("select \"version\" from \"flyway_schema_history\""
                        + " where \"success\" and \"version\" is not null order by \"installed_rank\" desc")) {
            if (!result.next()) {
                throw new SQLException("the database has no schema yet");
            }
            return result.getString(1);
        }
    }

    private static Manifest.Table write(Connection connection, StoredTable table, ZipOutputStream zip)
            throws SQLException, IOException {
        zip.putNextEntry(new ZipEntry("tables/" + table.name() + ".jsonl"));
        MessageDigest digest = StoredJson.newSha256();
        long count = 0;
        try (Statement statement = connection.createStatement()) {
            statement.setFetchSize(ROWS_AT_ONCE);
            try (ResultSet rows = statement.executeQuery(select(table));
                    JsonGenerator json = JSON.createGenerator(new KeptOpen(new DigestOutputStream(zip, digest)))) {
                while (rows.next()) {
                    Rows.write(rows, table.columns(), json);
                    json.writeRaw('\n');
                    count++;
                }
            }
        }
        zip.closeEntry();
        return new Manifest.Table(table.name(), count, HexFormat.of().formatHex(digest.digest()));
    }

    private static String select(StoredTable table) {
        return table.columnNames().stream().map(c -> "\"" + c + "\"").collect(Collectors.joining(", ", "select ", ""))
                + " from \"" + table.name() + "\""
                + table.keyColumns().stream()
                        .map(c -> "\"" + c + "\"")
                        .collect(Collectors.joining(", ", " order by ", ""));
    }

    private static int recordings(Path folder, ZipOutputStream zip) throws IOException {
        if (!Files.isDirectory(folder)) {
            return 0;
        }
        List<Path> files;
        try (Stream<Path> all = Files.walk(folder)) {
            files = all.filter(RecordingScrub::isRecording).sorted().toList();
        }
        for (Path file : files) {
            zip.putNextEntry(new ZipEntry("recordings/" + file.getFileName()));
            Files.copy(file, zip);
            zip.closeEntry();
        }
        return files.size();
    }

    /** The generator closes what it writes to, the archive goes on. */
    private static final class KeptOpen extends FilterOutputStream {
        KeptOpen(OutputStream out) {
            super(out);
        }

        @Override
        public void write(byte[] bytes, int offset, int length) throws IOException {
            out.write(bytes, offset, length);
        }

        @Override
        public void close() throws IOException {
            out.flush();
        }
    }
}
