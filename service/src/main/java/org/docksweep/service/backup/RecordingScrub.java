package org.docksweep.service.backup;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.List;
import java.util.Set;
import java.util.stream.Stream;
import org.docksweep.service.store.StoredJson;

/** Reads every recording and compares it with the hash it is named by. Changes nothing. */
final class RecordingScrub {
    private static final String NAME = "[0-9a-f]{64}\\.zip";

    private RecordingScrub() {}

    /**
     * What was found.
     *
     * @param intact recordings that have their hash
     * @param damaged recordings that do not
     * @param missing hashes that measurements name and that are not here; their kiosk may not have sent them yet
     * @param strangers files that are no recordings, drafts of interrupted uploads among them
     */
    record Report(int intact, List<Path> damaged, List<String> missing, List<Path> strangers) {}

    static boolean isRecording(Path file) {
        return Files.isRegularFile(file) && file.getFileName().toString().matches(NAME);
    }

    static Report run(Path folder, Connection connection) throws IOException, SQLException {
        List<Path> files = List.of();
        if (Files.isDirectory(folder)) {
            try (Stream<Path> all = Files.walk(folder)) {
                files = all.filter(Files::isRegularFile).sorted().toList();
            }
        }
        List<Path> damaged = new ArrayList<>();
        List<Path> strangers = new ArrayList<>();
        Set<String> here = new HashSet<>();
        for (Path file : files) {
            if (!isRecording(file)) {
                strangers.add(file);
                continue;
            }
            String named = file.getFileName().toString().substring(0, 64);
            here.add(named);
            if (!sha256(file).equals(named)) {
                damaged.add(file);
            }
        }
        List<String> missing = named(connection).stream()
                .filter(h -> !here.contains(h))
                .sorted()
                .toList();
        return new Report(here.size() - damaged.size(), damaged, missing, strangers);
    }

    private static String sha256(Path file) throws IOException {
        MessageDigest digest = StoredJson.newSha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private static Set<String> named(Connection connection) throws SQLException {
        Set<String> named = new HashSet<>();
        try (Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(
                        "select distinct recording_sha256 from measurement where recording_sha256 is not null")) {
            while (result.next()) {
                named.add(result.getString(1));
            }
        }
        return named;
    }
}
