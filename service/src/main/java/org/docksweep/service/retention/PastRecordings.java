package org.docksweep.service.retention;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * Recordings past their time. A recording is as old as the newest check-in that names it; one that no check-in names, a
 * proof's for example, is as old as its file. Those of check-ins whose bench job is open stay.
 */
final class PastRecordings {
    private static final int FILES_AT_ONCE = 500;
    private static final String NAME = "[0-9a-f]{64}\\.zip";

    private PastRecordings() {}

    /**
     * What was found.
     *
     * @param files recordings past their time
     * @param bytes their size
     * @param held recordings as old that stay, since a job is open
     */
    record Found(List<Path> files, long bytes, long held) {}

    private record Named(Instant newest, boolean held) {}

    static Found find(Connection connection, Path folder, LocalDate before) throws SQLException, IOException {
        Instant from = before.atStartOfDay(ZoneOffset.UTC).toInstant();
        List<Path> past = new ArrayList<>();
        long bytes = 0;
        long held = 0;
        List<Path> all = all(folder);
        for (int i = 0; i < all.size(); i += FILES_AT_ONCE) {
            List<Path> some = all.subList(i, Math.min(all.size(), i + FILES_AT_ONCE));
            Map<String, Named> named = named(connection, some);
            for (Path file : some) {
                Named name = named.get(sha256(file));
                Instant age = name == null ? Files.getLastModifiedTime(file).toInstant() : name.newest();
                if (!age.isBefore(from)) {
                    continue;
                }
                if (name != null && name.held()) {
                    held++;
                } else {
                    past.add(file);
                    bytes += Files.size(file);
                }
            }
        }
        return new Found(past, bytes, held);
    }

    private static List<Path> all(Path folder) throws IOException {
        if (!Files.isDirectory(folder)) {
            return List.of();
        }
        try (Stream<Path> files = Files.walk(folder)) {
            return files.filter(f -> f.getFileName().toString().matches(NAME))
                    .filter(Files::isRegularFile)
                    .sorted()
                    .toList();
        }
    }

    private static String sha256(Path file) {
        return file.getFileName().toString().substring(0, 64);
    }

    private static Map<String, Named> named(Connection connection, List<Path> files) throws SQLException {
        Map<String, Named> named = new HashMap<>();
        try (PreparedStatement query = connection.prepareStatement("select m.recording_sha256, max(i.received_at),"
                + " max(case when j.open_marker = true then 1 else 0 end) from measurement m"
                + " join check_in i on i.id = m.check_in_id"
                + " left join bench_job_check_in b on b.check_in_id = i.id left join bench_job j on j.code = b.job_code"
                + " where m.recording_sha256 in (" + String.join(", ", Collections.nCopies(files.size(), "?"))
                + ") group by m.recording_sha256")) {
            for (int i = 0; i < files.size(); i++) {
                query.setString(i + 1, sha256(files.get(i)));
            }
            try (ResultSet rows = query.executeQuery()) {
                while (rows.next()) {
                    named.put(
                            rows.getString(1),
                            new Named(rows.getObject(2, OffsetDateTime.class).toInstant(), rows.getInt(3) == 1));
                }
            }
        }
        return named;
    }

    /** The log first: a line of what is gone already would be missing after a crash in between, this one only too early. */
    static void remove(Connection connection, Found found, LocalDate before, RetentionLog log)
            throws SQLException, IOException {
        if (found.files().isEmpty()) {
            return;
        }
        log.removed(
                connection,
                found.files().size() + " recordings, " + found.bytes() + " bytes, received before " + before);
        connection.commit();
        for (Path file : found.files()) {
            try {
                Files.delete(file);
            } catch (NoSuchFileException e) {
                // Another service on the same folder was first.
                continue;
            }
        }
    }
}
