package org.docksweep.kiosk.rig;

import java.io.BufferedOutputStream;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.zip.CRC32;
import java.util.zip.CheckedOutputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RecordingException;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.WavFormat;

/**
 * The kiosk's folder of recordings: archives of WAV and sidecar, {@code ab/abcdef....zip}, named by the SHA-256 of the
 * archive's bytes, so that the same recording is kept once and a changed one is noticed without opening it.
 */
public final class RecordingKeeper {
    private static final String WAV = "recording.wav";
    private static final String SIDECAR = "recording.json";
    /** Lossless, so that the recording judged again gives the same verdict to the last digit. */
    private static final WavFormat FORMAT = WavFormat.FLOAT_32;

    /** Larger than any capture this kiosk makes; bounds what a foreign archive may unpack to. */
    private static final int MAX_ENTRY_BYTES = 256 << 20;

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
        // Lossless, so that the recording judged again gives the same verdict to the last digit.
        Files.createDirectories(folder);
        Path part = Files.createTempFile(folder, "keeping-", ".part");
        try {
            MessageDigest digest = sha256();
            archive(capture, new DigestOutputStream(new BufferedOutputStream(Files.newOutputStream(part)), digest));
            String sha256 = HexFormat.of().formatHex(digest.digest());
            Path file = file(sha256);
            if (!Files.exists(file)) {
                Files.createDirectories(file.getParent());
                moveDurably(part, file);
            }
            return sha256;
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /**
     * Where a recording lies.
     *
     * @param sha256 content hash
     * @return path of the archive, which may not exist
     */
    public Path file(String sha256) {
        return folder.resolve(sha256.substring(0, 2)).resolve(sha256 + ".zip");
    }

    /**
     * Reads a recording for sending.
     *
     * @param sha256 content hash
     * @return bytes of the archive
     * @throws IOException if it is not there, was changed, or cannot be read
     */
    public byte[] bytes(String sha256) throws IOException {
        return Files.readAllBytes(checked(sha256));
    }

    /**
     * Where a recording lies that is there and is what its name says.
     *
     * @param sha256 content hash
     * @return path of the archive
     * @throws IOException if it is not there, was changed, or cannot be read
     */
    public Path checked(String sha256) throws IOException {
        Path file = file(sha256);
        MessageDigest digest = sha256();
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        } catch (NoSuchFileException e) {
            throw new IOException("recording " + sha256 + " is not in the folder " + folder, e);
        }
        if (!HexFormat.of().formatHex(digest.digest()).equals(sha256)) {
            throw new IOException("recording " + file + " was changed: its content hash differs from its name");
        }
        return file;
    }

    /**
     * Reads a capture from an archive.
     *
     * @param file archive with {@code recording.wav} and {@code recording.json}
     * @return the capture
     * @throws IOException if it is no such archive, or the recording in it is refused; names the file
     */
    public static Capture read(Path file) throws IOException {
        return read(file.getFileName().toString(), Files.readAllBytes(file));
    }

    /**
     * Reads a capture from the bytes of an archive.
     *
     * @param name what errors call it
     * @param archive bytes of the archive
     * @return the capture
     * @throws IOException if it is no such archive, or the recording in it is refused; names it
     */
    public static Capture read(String name, byte[] archive) throws IOException {
        byte[] wav = null;
        byte[] sidecar = null;
        try (ZipInputStream zip = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                byte[] content = zip.readNBytes(MAX_ENTRY_BYTES);
                if (entry.getName().equals(WAV)) {
                    wav = content;
                } else if (entry.getName().equals(SIDECAR)) {
                    sidecar = content;
                }
            }
        }
        if (wav == null || sidecar == null) {
            throw new RecordingException(
                    name,
                    "content",
                    "must hold " + WAV + " and " + SIDECAR + ", but " + (wav == null ? WAV : SIDECAR) + " is missing",
                    "Give an archive that the kiosk made, or a WAV file with its sidecar beside it");
        }
        return RecordingFiles.decode(name + "/" + WAV, wav, name + "/" + SIDECAR, sidecar);
    }

    /**
     * Stored, not deflated, with a fixed date: the same recording gives the same bytes on every Java runtime. A capture is written twice,
     * first for the checksum that stands before it, instead of held in memory once more.
     */
    private static void archive(Capture capture, OutputStream out) throws IOException {
        byte[] sidecar = RecordingFiles.sidecar(capture);
        CRC32 wavCrc = new CRC32();
        int wavBytes = RecordingFiles.writeWav(
                WAV, capture, FORMAT, new CheckedOutputStream(OutputStream.nullOutputStream(), wavCrc));
        CRC32 sidecarCrc = new CRC32();
        sidecarCrc.update(sidecar);
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(entry(WAV, wavBytes, wavCrc));
            RecordingFiles.writeWav(WAV, capture, FORMAT, zip);
            zip.closeEntry();
            zip.putNextEntry(entry(SIDECAR, sidecar.length, sidecarCrc));
            zip.write(sidecar);
            zip.closeEntry();
        }
    }

    private static ZipEntry entry(String name, int bytes, CRC32 crc) {
        ZipEntry entry = new ZipEntry(name);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(bytes);
        entry.setCrc(crc.getValue());
        entry.setTimeLocal(java.time.LocalDateTime.of(2000, 1, 1, 0, 0));
        return entry;
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }

    private static void moveDurably(Path part, Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(part, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
