package org.docksweep.service.backup;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Collections;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Collectors;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import org.docksweep.service.store.StoredJson;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Puts an export into an empty database of the same schema: all of it in one transaction or nothing. Every hash is
 * compared before the first row is stored, every recording before it gets its name.
 */
final class Importer {
    private static final int ROWS_AT_ONCE = 500;
    private static final JsonMapper JSON = new JsonMapper();

    private Importer() {}

    /**
     * Imports.
     *
     * @param file export
     * @param connection connection of its own, to an empty database
     * @param recordings folder for the recordings
     * @return what was imported
     * @throws IOException if the export is damaged, not whole, or not for this database
     * @throws SQLException if the database refuses
     */
    static Manifest read(Path file, Connection connection, Path recordings) throws IOException, SQLException {
        connection.setAutoCommit(false);
        try (ZipFile zip = new ZipFile(file.toFile())) {
            Manifest manifest = manifest(zip);
            List<StoredTable> tables = fitting(manifest, connection);
            for (Manifest.Table table : manifest.tables()) {
                verify(zip, table);
            }
            for (StoredTable table : tables) {
                requireEmpty(connection, table);
            }
            for (StoredTable table : tables) {
                insert(zip, table, connection);
            }
            int count = recordings(zip, recordings);
            if (manifest.recordings() != null && manifest.recordings() != count) {
                throw new IOException(
                        "the export should hold " + manifest.recordings() + " recordings, but holds " + count);
            }
            connection.commit();
            return manifest;
        } catch (IOException | SQLException | RuntimeException e) {
            connection.rollback();
            throw e;
        }
    }

    private static Manifest manifest(ZipFile zip) throws IOException {
        ZipEntry entry = zip.getEntry(Manifest.ENTRY);
        if (entry == null) {
            throw new IOException("the export is not whole: it has no " + Manifest.ENTRY);
        }
        Manifest manifest;
        try (InputStream in = zip.getInputStream(entry)) {
            manifest = JSON.readValue(in, Manifest.class);
        } catch (JacksonException e) {
            throw new IOException(Manifest.ENTRY + " cannot be read: " + e.getOriginalMessage(), e);
        }
        if (manifest.format() != Manifest.FORMAT) {
            throw new IOException(
                    "the export is of format " + manifest.format() + ", this version reads " + Manifest.FORMAT);
        }
        return manifest;
    }

    private static List<StoredTable> fitting(Manifest manifest, Connection connection)
            throws IOException, SQLException {
        String here = Exporter.schemaVersion(connection);
        if (!here.equals(manifest.schemaVersion())) {
            throw new IOException("the export is of schema " + manifest.schemaVersion() + ", this database of " + here
                    + ": restore with the version that made it, then let the newer one migrate");
        }
        List<StoredTable> tables = StoredTable.all(connection);
        List<String> names = tables.stream().map(StoredTable::name).sorted().toList();
        List<String> exported =
                manifest.tables().stream().map(Manifest.Table::name).sorted().toList();
        if (!names.equals(exported)) {
            throw new IOException("the export holds the tables " + exported + ", this database " + names);
        }
        return tables;
    }

    private static InputStream open(ZipFile zip, String table) throws IOException {
        ZipEntry entry = zip.getEntry("tables/" + table + ".jsonl");
        if (entry == null) {
            throw new IOException("the export is not whole: it has no rows of " + table);
        }
        return zip.getInputStream(entry);
    }

    private static void verify(ZipFile zip, Manifest.Table table) throws IOException {
        MessageDigest digest = StoredJson.newSha256();
        try (InputStream in = new DigestInputStream(open(zip, table.name()), digest)) {
            in.transferTo(java.io.OutputStream.nullOutputStream());
        }
        if (!HexFormat.of().formatHex(digest.digest()).equals(table.sha256())) {
            throw new IOException("the export is damaged: the rows of " + table.name() + " do not have their hash");
        }
    }

    private static void requireEmpty(Connection connection, StoredTable table) throws IOException, SQLException {
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery("select count(*) from \"" + table.name() + "\"")) {
            result.next();
            if (result.getLong(1) > 0) {
                throw new IOException("the database is not empty: " + table.name() + " has " + result.getLong(1)
                        + " rows; restore into a new data folder or database");
            }
        }
    }

    private static void insert(ZipFile zip, StoredTable table, Connection connection) throws IOException, SQLException {
        String names = table.columnNames().stream().map(c -> "\"" + c + "\"").collect(Collectors.joining(", "));
        String marks = String.join(", ", Collections.nCopies(table.columns().size(), "?"));
        try (BufferedReader lines =
                        new BufferedReader(new InputStreamReader(open(zip, table.name()), StandardCharsets.UTF_8));
                PreparedStatement insert = connection.prepareStatement(
                        "insert into \"" + table.name() + "\" (" + names + ") values (" + marks + ")")) {
            long number = 0;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                number++;
                try {
                    Rows.read(JSON.readTree(line), table.columns(), insert);
                } catch (JacksonException | IllegalArgumentException | java.time.DateTimeException e) {
                    throw new IOException("row " + number + " of " + table.name() + ": " + e.getMessage(), e);
                }
                insert.addBatch();
                if (number % ROWS_AT_ONCE == 0) {
                    insert.executeBatch();
                }
            }
            insert.executeBatch();
        }
        for (StoredTable.Column column : table.columns()) {
            if (column.generated()) {
                numberOn(connection, table.name(), column.name());
            }
        }
    }

    /** Lets the database number on after the highest number imported. */
    private static void numberOn(Connection connection, String table, String column) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            long next;
            try (ResultSet result =
                    statement.executeQuery("select coalesce(max(\"" + column + "\"), 0) + 1 from \"" + table + "\"")) {
                result.next();
                next = result.getLong(1);
            }
            statement.execute("alter table \"" + table + "\" alter column \"" + column + "\" restart with " + next);
        }
    }

    /** Only a name of 64 hex digits becomes a file, and only with bytes that have that hash. */
    private static int recordings(ZipFile zip, Path folder) throws IOException {
        int count = 0;
        for (ZipEntry entry : Collections.list(zip.entries())) {
            String name = entry.getName();
            if (!name.startsWith("recordings/")) {
                continue;
            }
            String sha256 = name.substring("recordings/".length()).replaceFirst("\\.zip$", "");
            if (!name.endsWith(".zip") || !sha256.matches("[0-9a-f]{64}")) {
                throw new IOException("the export holds a recording with a strange name");
            }
            Path target = folder.resolve(sha256.substring(0, 2)).resolve(sha256 + ".zip");
            Files.createDirectories(target.getParent());
            Path draft = Files.createTempFile(target.getParent(), "incoming", ".tmp");
            try {
                MessageDigest digest = StoredJson.newSha256();
                try (InputStream in = new DigestInputStream(zip.getInputStream(entry), digest)) {
                    Files.copy(in, draft, StandardCopyOption.REPLACE_EXISTING);
                }
                if (!HexFormat.of().formatHex(digest.digest()).equals(sha256)) {
                    throw new IOException("the export is damaged: recording " + sha256 + " does not have its hash");
                }
                Files.move(draft, target, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } finally {
                Files.deleteIfExists(draft);
            }
            count++;
        }
        return count;
    }
}
