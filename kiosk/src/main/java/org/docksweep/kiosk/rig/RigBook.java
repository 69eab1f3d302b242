package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32;
import org.docksweep.kiosk.spool.Wire;
import tools.jackson.core.JacksonException;

/**
 * Everything that ever happened to a rig: set-ups, calibrations, checks, contacts, plug-ins, repeatability studies, microphone checks. One file per rig, only ever appended
 * to, one line per entry: checksum (CRC-32 of the rest, 8 hex digits), kind, JSON. When {@link #append} has returned, the
 * entry is on the disk. A line that a power cut tore, or that was damaged, is left where it is and passed over; the rest
 * counts. Safe for use by several threads.
 */
public final class RigBook implements AutoCloseable {
    private static final Map<String, Class<? extends RigEntry>> KINDS = new LinkedHashMap<>();

    static {
        KINDS.put("set-up", RigEntry.SetUp.class);
        KINDS.put("calibration", RigEntry.Calibrated.class);
        KINDS.put("check", RigEntry.Checked.class);
        KINDS.put("contact", RigEntry.Contact.class);
        KINDS.put("common-mode", RigEntry.CommonMode.class);
        KINDS.put("plug-in", RigEntry.PlugIn.class);
        KINDS.put("study", RigEntry.Studied.class);
        KINDS.put("sound-accepted", RigEntry.SoundAccepted.class);
        KINDS.put("sound-check", RigEntry.SoundChecked.class);
    }

    private static final int CHECKSUM_DIGITS = 8;

    private final Path file;
    private final FileChannel channel;
    private final List<RigEntry> entries = new ArrayList<>();
    private int damagedLines;

    private RigBook(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /**
     * Opens the book of a rig, making it if needed. Only one program at a time can have it.
     *
     * @param folder folder of the books
     * @param rigId rig
     * @return the open book
     * @throws IOException if it is in use, or the disk refuses; names the file
     */
    public static RigBook open(Path folder, String rigId) throws IOException {
        Files.createDirectories(folder);
        Path file = folder.resolve(fileName(rigId));
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        RigBook book = new RigBook(file, channel);
        try {
            book.lock();
            book.readAll();
        } catch (IOException | RuntimeException e) {
            channel.close();
            throw e;
        }
        return book;
    }

    /** Rig ids are free text; file names are not. */
    private static String fileName(String rigId) {
        StringBuilder name = new StringBuilder();
        for (byte b : rigId.getBytes(StandardCharsets.UTF_8)) {
            boolean plain = b >= '0' && b <= '9' || b >= 'a' && b <= 'z' || b == '-' || b == '_';
            name.append(plain ? String.valueOf((char) b) : "%" + HexFormat.of().toHexDigits(b));
        }
        return name + ".rigbook";
    }

    private void lock() throws IOException {
        FileLock lock;
        try {
            lock = channel.tryLock();
        } catch (OverlappingFileLockException e) {
            lock = null;
        }
        if (lock == null) {
            throw new IOException(
                    "the book of the rig, " + file + ", is in use by another kiosk; close that one first");
        }
    }

    private void readAll() throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        int from = 0;
        for (int i = 0; i < bytes.length; i++) {
            if (bytes[i] == '\n') {
                readLine(new String(bytes, from, i - from, StandardCharsets.UTF_8));
                from = i + 1;
            }
        }
        channel.position(bytes.length);
        if (from < bytes.length) {
            // A torn line is ended, so that the next entry begins on a line of its own. Only its end may be missing.
            readLine(new String(bytes, from, bytes.length - from, StandardCharsets.UTF_8));
            write(new byte[] {'\n'});
        }
    }

    private void readLine(String line) {
        Optional<RigEntry> entry = parse(line);
        entry.ifPresent(entries::add);
        damagedLines += entry.isEmpty() ? 1 : 0;
    }

    private static Optional<RigEntry> parse(String line) {
        String[] parts = line.split(" ", 3);
        boolean whole = parts.length == 3
                && parts[0].length() == CHECKSUM_DIGITS
                && parts[0].equals(checksum(line.substring(CHECKSUM_DIGITS + 1)))
                && KINDS.containsKey(parts[1]);
        if (!whole) {
            return Optional.empty();
        }
        try {
            return Optional.of(Wire.json().readValue(parts[2], KINDS.get(parts[1])));
        } catch (JacksonException | IllegalArgumentException e) {
            // Written by a newer program, or damaged where the checksum cannot see it: counted by the caller.
            return Optional.empty();
        }
    }

    private static String checksum(String text) {
        CRC32 crc = new CRC32();
        crc.update(text.getBytes(StandardCharsets.UTF_8));
        return HexFormat.of().toHexDigits((int) crc.getValue());
    }

    /**
     * Adds an entry for good.
     *
     * @param entry the entry
     * @throws IOException if the disk refuses; then the entry does not count
     */
    public synchronized void append(RigEntry entry) throws IOException {
        String kind = KINDS.entrySet().stream()
                .filter(k -> k.getValue() == entry.getClass())
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
        String rest = kind + " " + Wire.json().writeValueAsString(entry);
        long end = channel.position();
        try {
            write((checksum(rest) + " " + rest + "\n").getBytes(StandardCharsets.UTF_8));
        } catch (IOException e) {
            // What was written of it must not stand before the next one.
            channel.truncate(end);
            throw new IOException(
                    "the book of the rig, " + file + ", cannot be written; check the disk: " + e.getMessage(), e);
        }
        entries.add(entry);
    }

    private void write(byte[] bytes) throws IOException {
        ByteBuffer buffer = ByteBuffer.wrap(bytes);
        while (buffer.hasRemaining()) {
            channel.write(buffer);
        }
        channel.force(true);
    }

    /**
     * All entries, oldest first.
     *
     * @return a copy
     */
    public synchronized List<RigEntry> entries() {
        return List.copyOf(entries);
    }

    /**
     * Entries of one kind, oldest first.
     *
     * @param kind class of the entries
     * @param <T> the class
     * @return a copy
     */
    public <T extends RigEntry> List<T> all(Class<T> kind) {
        return entries().stream().filter(kind::isInstance).map(kind::cast).toList();
    }

    /**
     * The newest entry of one kind.
     *
     * @param kind class of the entries
     * @param <T> the class
     * @return the newest; empty when there is none
     */
    public <T extends RigEntry> Optional<T> newest(Class<T> kind) {
        List<T> all = all(kind);
        return all.isEmpty() ? Optional.empty() : Optional.of(all.get(all.size() - 1));
    }

    /**
     * The calibration that counts now: the newest one, unless the rig was set up otherwise after it. Other standards
     * do not change the rig.
     *
     * @return the calibration; empty when there is none
     */
    public Optional<RigEntry.Calibrated> calibrationInForce() {
        return inForce(RigEntry.Calibrated.class);
    }

    /**
     * The repeatability study that counts now, likewise. A calibration leaves it in force: the rig repeats itself as before.
     *
     * @return the study; empty when there is none
     */
    public Optional<RigEntry.Studied> studyInForce() {
        return inForce(RigEntry.Studied.class);
    }

    /**
     * The accepted sound of the known cabinet that counts now, likewise.
     *
     * @return the accepted reading; empty when there is none
     */
    public Optional<RigEntry.SoundAccepted> soundInForce() {
        return inForce(RigEntry.SoundAccepted.class);
    }

    private <T extends RigEntry> Optional<T> inForce(Class<T> kind) {
        T inForce = null;
        Map<String, String> rig = Map.of();
        for (RigEntry entry : entries()) {
            if (kind.isInstance(entry)) {
                inForce = kind.cast(entry);
            } else if (entry instanceof RigEntry.SetUp setUp) {
                Map<String, String> next = SetUpField.ofTheRig(setUp.values());
                inForce = next.equals(rig) ? inForce : null;
                rig = next;
            }
        }
        return Optional.ofNullable(inForce);
    }

    /**
     * How many lines could not be read when the book was opened.
     *
     * @return lines, 0 in a whole book
     */
    public synchronized int damagedLines() {
        return damagedLines;
    }

    /**
     * The file.
     *
     * @return its path
     */
    public Path file() {
        return file;
    }

    @Override
    public synchronized void close() throws IOException {
        channel.close();
    }
}
