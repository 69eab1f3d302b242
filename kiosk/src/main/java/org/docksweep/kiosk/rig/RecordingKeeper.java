package org.docksweep.kiosk.rig;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.WavFormat;

/**
 * The kiosk's folder of recordings: {@code ab/abcdef....wav} with its sidecar beside it, named by the hash of the
 * content, so that the same recording is kept once and a changed one is noticed.
 */
public final class RecordingKeeper {
    private final Path folder;

    /**
     * Opens a folder.
     *
     * @param folder the folder; made when the first recording arrives
     */
    public RecordingKeeper(Path folder) {
        this.folder = folder;
    }

    /**
     * Keeps a capture. When this returns, it is on the disk.
     *
     * @param capture the capture
     * @return content hash, 64 hex digits
     * @throws IOException if the disk refuses
     */
    public String keep(Capture capture) throws IOException {
        RecordingFiles.Encoded encoded = RecordingFiles.encode("recording.wav", capture, WavFormat.FLOAT_32);
        String sha256 = RecordingFiles.contentSha256(encoded);
        Path wav = wav(sha256);
        if (!Files.exists(wav)) {
            Files.createDirectories(wav.getParent());
            writeDurably(sidecar(sha256), encoded.sidecar());
            // The WAV last: where it is, its sidecar is too.
            writeDurably(wav, encoded.wav());
        }
        return sha256;
    }

    /**
     * Where a recording lies.
     *
     * @param sha256 content hash
     * @return path of the WAV file, which may not exist
     */
    public Path wav(String sha256) {
        return folder.resolve(sha256.substring(0, 2)).resolve(sha256 + ".wav");
    }

    /**
     * Packs a recording for sending.
     *
     * @param sha256 content hash
     * @return archive with {@code recording.wav} and {@code recording.json}
     * @throws IOException if it is not there, was changed, or cannot be read
     */
    public byte[] zip(String sha256) throws IOException {
        byte[] wav;
        byte[] sidecar;
        try {
            wav = Files.readAllBytes(wav(sha256));
            sidecar = Files.readAllBytes(sidecar(sha256));
        } catch (NoSuchFileException e) {
            throw new IOException("recording " + sha256 + " is not in the folder " + folder, e);
        }
        if (!RecordingFiles.contentSha256(new RecordingFiles.Encoded(wav, sidecar))
                .equals(sha256)) {
            throw new IOException("recording " + wav(sha256) + " was changed: its content hash differs from its name");
        }
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(wav.length);
        try (ZipOutputStream zip = new ZipOutputStream(bytes)) {
            put(zip, "recording.wav", wav);
            put(zip, "recording.json", sidecar);
        }
        return bytes.toByteArray();
    }

    private static void put(ZipOutputStream zip, String name, byte[] content) throws IOException {
        ZipEntry entry = new ZipEntry(name);
        // A fixed date: the same recording gives the same archive.
        entry.setTime(0);
        zip.putNextEntry(entry);
        zip.write(content);
        zip.closeEntry();
    }

    private Path sidecar(String sha256) {
        return folder.resolve(sha256.substring(0, 2)).resolve(sha256 + ".json");
    }

    private static void writeDurably(Path file, byte[] content) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        Files.write(part, content);
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
