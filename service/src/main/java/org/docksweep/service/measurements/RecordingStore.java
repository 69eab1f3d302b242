package org.docksweep.service.measurements;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;
import org.docksweep.contract.ProblemTypes;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Component;

/**
 * Recordings in a folder, each under the SHA-256 of its bytes ({@code recordings/ab/ab12...zip}). A recording is written
 * beside, checked, forced to the disk and moved into place in one step: what has its final name is whole. Archives are
 * kept as they came and never unpacked here.
 */
@Component
class RecordingStore {
    private static final int BUFFER_BYTES = 64 * 1024;

    private final Path folder;

    RecordingStore(Site site) {
        this.folder = site.dataDir().toAbsolutePath().resolve("recordings");
    }

    /**
     * Stores a recording.
     *
     * @return false when it was there already
     * @throws Refusal if the bytes do not have that hash, or are no ZIP archive
     */
    boolean put(String sha256, InputStream bytes) {
        Path file = file(sha256);
        try {
            Files.createDirectories(file.getParent());
            Path draft = Files.createTempFile(file.getParent(), "incoming", ".tmp");
            try {
                write(sha256, bytes, draft);
                boolean fresh = !Files.exists(file);
                if (fresh) {
                    Files.move(draft, file, StandardCopyOption.ATOMIC_MOVE);
                    force(file.getParent());
                }
                return fresh;
            } finally {
                Files.deleteIfExists(draft);
            }
        } catch (IOException e) {
            throw new UncheckedIOException("cannot keep recording " + sha256, e);
        }
    }

    private static void write(String sha256, InputStream bytes, Path draft) throws IOException {
        MessageDigest digest = StoredJson.newSha256();
        byte[] head;
        try (FileChannel channel = FileChannel.open(draft, StandardOpenOption.WRITE);
                OutputStream out = new DigestOutputStream(Channels.newOutputStream(channel), digest)) {
            head = bytes.readNBytes(4);
            out.write(head);
            byte[] buffer = new byte[BUFFER_BYTES];
            for (int count = bytes.read(buffer); count >= 0; count = bytes.read(buffer)) {
                out.write(buffer, 0, count);
            }
            channel.force(true);
        }
        String found = HexFormat.of().formatHex(digest.digest());
        if (!found.equals(sha256)) {
            throw Refusal.badField(
                    "sha256",
                    "the bytes received have SHA-256 " + found + ", but the address says " + sha256,
                    "The transfer was damaged or the hash is of something else: send the recording again.");
        }
        if (head.length < 4 || head[0] != 'P' || head[1] != 'K') {
            throw Refusal.unreadable("the body is no ZIP archive", "Send WAV and sidecar together in one ZIP archive.");
        }
    }

    private static void force(Path directory) throws IOException {
        try (FileChannel channel = FileChannel.open(directory, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (java.nio.file.AccessDeniedException e) {
            // Windows does not open folders; there the move itself is as durable as it gets.
            if (!System.getProperty("os.name", "").startsWith("Windows")) {
                throw e;
            }
        }
    }

    /**
     * A recording, after its bytes were compared with its hash.
     *
     * @throws Refusal if it is no longer what was stored
     */
    Optional<Path> find(String sha256) {
        Optional<Path> found = Optional.of(file(sha256)).filter(Files::isRegularFile);
        found.ifPresent(file -> verify(sha256, file));
        return found;
    }

    private static void verify(String sha256, Path file) {
        MessageDigest digest = StoredJson.newSha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read recording " + sha256, e);
        }
        if (!HexFormat.of().formatHex(digest.digest()).equals(sha256)) {
            throw Refusal.of(
                    ProblemTypes.DEFECT,
                    "Damaged",
                    500,
                    "recording " + sha256 + " is damaged on the disk of the service",
                    "Restore it from a backup; \"scrub\" lists all that are damaged.");
        }
    }

    /** Only hex digits reach the file system. */
    private Path file(String sha256) {
        if (!sha256.matches("[0-9a-f]{64}")) {
            throw Refusal.badField(
                    "sha256", "must be 64 hex digits in lower case", "Use the SHA-256 of the archive's bytes.");
        }
        return folder.resolve(sha256.substring(0, 2)).resolve(sha256 + ".zip");
    }
}
