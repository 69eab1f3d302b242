package org.docksweep.sweep;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * Recordings as files: {@code NAME.wav} with the samples and {@code NAME.json}, the sidecar, with everything else. The
 * format is described in docs/recording-format.md.
 */
public final class RecordingFiles {
    /** Largest sidecar accepted, in bytes. */
    static final int MAX_SIDECAR_BYTES = 1 << 20;

    private RecordingFiles() {}

    /**
     * A recording as bytes, for a spool.
     *
     * @param wav bytes of the WAV file
     * @param sidecar bytes of the sidecar, UTF-8
     */
    // Handed straight to a stream or a column: copying would double megabytes.
    public record Encoded(byte[] wav, byte[] sidecar) {}

    /**
     * Writes a recording with lossless samples.
     *
     * @param wav where the samples go; the sidecar goes beside it with the ending json
     * @param capture the capture
     * @throws RecordingException if the name does not end in .wav or a sample is not a number
     * @throws IOException if the files cannot be written
     */
    public static void write(Path wav, Capture capture) throws IOException {
        write(wav, capture, WavFormat.FLOAT_32);
    }

    /**
     * Writes a recording. Each file appears under its name only when complete, the sidecar first.
     *
     * @param wav where the samples go; the sidecar goes beside it with the ending json
     * @param capture the capture
     * @param format how samples are written
     * @throws RecordingException if the name does not end in .wav or a sample is not a number
     * @throws IOException if the files cannot be written
     */
    public static void write(Path wav, Capture capture, WavFormat format) throws IOException {
        Path sidecar = sidecarOf(wav);
        Encoded encoded = encode(wav.getFileName().toString(), capture, format);
        replace(sidecar, encoded.sidecar());
        replace(wav, encoded.wav());
    }

    /**
     * Makes the bytes of a recording.
     *
     * @param name file name for error messages
     * @param capture the capture
     * @param format how samples are written
     * @return both files
     * @throws RecordingException if a sample is not a number or the recording is too large
     */
    public static Encoded encode(String name, Capture capture, WavFormat format) throws RecordingException {
        CaptureHeader header = capture.header();
        float[][] samples = samples(name, capture);
        int sampleRateHz = header.plan().signal().sampleRateHz();
        return new Encoded(WavWriter.encode(name, samples, sampleRateHz, format), Sidecar.encode(header));
    }

    /**
     * Writes the WAV file of a recording into a stream, the bytes that {@link #encode} makes, without holding them all.
     *
     * @param name file name for error messages
     * @param capture the capture
     * @param format how samples are written
     * @param out where to
     * @return bytes written
     * @throws RecordingException if a sample is not a number or the recording is too large
     * @throws IOException if the stream refuses
     */
    public static int writeWav(String name, Capture capture, WavFormat format, OutputStream out) throws IOException {
        int sampleRateHz = capture.header().plan().signal().sampleRateHz();
        return WavWriter.write(name, samples(name, capture), sampleRateHz, format, out);
    }

    /**
     * The sidecar of a recording.
     *
     * @param capture the capture
     * @return its bytes
     */
    public static byte[] sidecar(Capture capture) {
        return Sidecar.encode(capture.header());
    }

    private static float[][] samples(String name, Capture capture) throws RecordingException {
        CaptureHeader header = capture.header();
        float[][] samples = new float[header.channels().size()][];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = capture.fullScale(header.channels().get(i).role());
        }
        if (capture.frames() == 0) {
            throw new RecordingException(name, "data", "must hold at least one frame, but has none", "Capture again");
        }
        return samples;
    }

    /**
     * Reads a recording.
     *
     * @param wav the WAV file; its sidecar lies beside it
     * @return the capture
     * @throws RecordingException if one of the files is missing, damaged, too large, or contradicts the other
     * @throws IOException if a file cannot be read
     */
    public static Capture read(Path wav) throws IOException {
        Path sidecar = sidecarOf(wav);
        byte[] image = bytesOf(wav, WavReader.MAX_FILE_BYTES, "Give the path of an existing WAV file");
        byte[] json = bytesOf(
                sidecar,
                MAX_SIDECAR_BYTES,
                "Put the sidecar " + sidecar.getFileName() + " beside " + wav.getFileName());
        return decode(wav.getFileName().toString(), image, sidecar.getFileName().toString(), json);
    }

    /**
     * Reads a recording from bytes.
     *
     * @param wavName name of the WAV file for error messages
     * @param wav its bytes
     * @param sidecarName name of the sidecar for error messages
     * @param sidecar its bytes
     * @return the capture
     * @throws RecordingException if one of them is damaged, too large, or contradicts the other
     */
    public static Capture decode(String wavName, byte[] wav, String sidecarName, byte[] sidecar)
            throws RecordingException {
        requireSize(wavName, wav.length, WavReader.MAX_FILE_BYTES);
        requireSize(sidecarName, sidecar.length, MAX_SIDECAR_BYTES);
        CaptureHeader header = Sidecar.decode(sidecarName, sidecar);
        WavReader.Content content = WavReader.read(wavName, wav);
        int sampleRateHz = header.plan().signal().sampleRateHz();
        if (content.sampleRateHz() != sampleRateHz) {
            throw new RecordingException(
                    wavName,
                    "fmt sample rate",
                    "must be the sidecar's sampleRateHz " + sampleRateHz + ", but is " + content.sampleRateHz(),
                    "Correct the sidecar " + sidecarName + " or bring the file that belongs to it");
        }
        if (content.samples().length != header.channels().size()) {
            throw new RecordingException(
                    wavName,
                    "fmt channels",
                    "must be as many as the sidecar's channels, "
                            + header.channels().size() + ", but is " + content.samples().length,
                    "Correct the sidecar " + sidecarName + " or bring the file that belongs to it");
        }
        return new Capture(header, content.samples());
    }

    /**
     * Hash of a whole recording: SHA-256 over the bytes of the WAV file followed by those of its sidecar, because a
     * verdict depends on both.
     *
     * @param wav the WAV file
     * @return 64 lower-case hexadecimal digits
     * @throws IOException if one of the files cannot be read
     */
    public static String contentSha256(Path wav) throws IOException {
        MessageDigest digest = sha256();
        for (Path file : new Path[] {wav, sidecarOf(wav)}) {
            try (InputStream in = Files.newInputStream(file)) {
                byte[] buffer = new byte[1 << 16];
                for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                    digest.update(buffer, 0, n);
                }
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /**
     * Hash of a whole recording, as {@link #contentSha256(Path)}.
     *
     * @param encoded the recording
     * @return 64 lower-case hexadecimal digits
     */
    public static String contentSha256(Encoded encoded) {
        MessageDigest digest = sha256();
        digest.update(encoded.wav());
        return HexFormat.of().formatHex(digest.digest(encoded.sidecar()));
    }

    /**
     * The sidecar that belongs to a WAV file.
     *
     * @param wav path that ends in .wav
     * @return path with the ending .json instead
     * @throws RecordingException if the path does not end in .wav
     */
    public static Path sidecarOf(Path wav) throws RecordingException {
        String name = wav.getFileName() == null ? "" : wav.getFileName().toString();
        if (name.length() < 5 || !name.regionMatches(true, name.length() - 4, ".wav", 0, 4)) {
            throw new RecordingException(name, "file name", "must end in .wav", "Give the path of the WAV file");
        }
        return wav.resolveSibling(name.substring(0, name.length() - 4) + ".json");
    }

    private static byte[] bytesOf(Path file, int mostBytes, String remedy) throws IOException {
        String name = file.getFileName().toString();
        if (!Files.isRegularFile(file)) {
            throw new RecordingException(name, "file", "is missing", remedy);
        }
        requireSize(name, Files.size(file), mostBytes);
        try (InputStream in = Files.newInputStream(file)) {
            // The file may still grow after its size was asked.
            byte[] bytes = in.readNBytes(mostBytes + 1);
            requireSize(name, bytes.length, mostBytes);
            return bytes;
        }
    }

    private static void requireSize(String name, long bytes, int mostBytes) throws RecordingException {
        if (bytes > mostBytes) {
            throw new RecordingException(
                    name,
                    "file size",
                    "must be at most " + mostBytes + " bytes, but is " + bytes,
                    "Cut it to one capture");
        }
    }

    private static void replace(Path file, byte[] bytes) throws IOException {
        Path part = file.resolveSibling(file.getFileName() + ".part");
        try {
            Files.write(part, bytes);
            Files.move(part, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(part);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java runtime has SHA-256", e);
        }
    }
}
