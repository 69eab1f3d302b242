package org.docksweep.kiosk.spool;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Base64;
import java.util.HexFormat;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.zip.CRC32;

/**
 * Second copy of what was not sent yet, beside the database and independent of it, so that a damaged database loses no cabinet.
 * One line per change, each with its CRC-32; a line that was torn or damaged is left out, those around it count. What a piece
 * of work changes is written before the database commits: a kill between the two leaves a record too many here, which is
 * complete and goes to the service under its id, never one too few.
 */
final class SpoolJournal implements AutoCloseable {
    private static final String NAME = "unsent.journal";
    private static final String ADDED = "+";
    private static final String GONE = "-";
    private static final String JOB = "j";

    private final FileChannel channel;
    private final Map<String, Entry> live = new LinkedHashMap<>();
    private int jobNumber;

    private final List<Runnable> pending = new ArrayList<>();
    private final StringBuilder lines = new StringBuilder();
    private boolean mustLast;
    private long before;

    /**
     * A record not sent yet.
     *
     * @param kind what it is
     * @param path its path at the service
     * @param body its bytes
     */
    record Entry(OutboxItem.Kind kind, String path, byte[] body) {}

    private SpoolJournal(FileChannel channel) {
        this.channel = channel;
    }

    /** Opens the journal of a folder and reads what it holds. */
    static SpoolJournal open(Path folder) throws IOException {
        FileChannel channel = FileChannel.open(
                folder.resolve(NAME), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        SpoolJournal journal = new SpoolJournal(channel);
        Files.readString(folder.resolve(NAME), StandardCharsets.ISO_8859_1)
                .lines()
                .forEach(journal::take);
        return journal;
    }

    /** What is not sent, in the order it was made. */
    List<Entry> unsent() {
        return List.copyOf(live.values());
    }

    /** The highest number of a job code known here; 0 when none is. */
    int jobNumber() {
        return jobNumber;
    }

    void add(OutboxItem.Kind kind, String path, byte[] body) {
        mustLast = true;
        note(ADDED + "\t" + kind + "\t" + path + "\t" + Base64.getEncoder().encodeToString(body));
    }

    /** A record is at the service, or was taken back. Need not last: sending it again does no harm. */
    void gone(String path) {
        note(GONE + "\t" + path);
    }

    void jobNumber(int number) {
        mustLast = true;
        note(JOB + "\t" + number);
    }

    private void note(String change) {
        lines.append(line(change));
        pending.add(() -> apply(change));
    }

    /** Writes what was noted since the last one. */
    void flush() throws IOException {
        before = channel.size();
        if (lines.isEmpty()) {
            return;
        }
        append(lines.toString());
        if (mustLast) {
            channel.force(false);
        }
    }

    /** The database has committed: what was flushed counts. */
    void committed() throws IOException {
        boolean heldSomething = !live.isEmpty();
        pending.forEach(Runnable::run);
        forget();
        if (heldSomething && live.isEmpty()) {
            restart();
        }
    }

    /** The database has not committed: what was flushed or noted never was. */
    void takeBack() throws IOException {
        boolean flushed = !lines.isEmpty() && channel.size() > before;
        forget();
        if (flushed) {
            channel.truncate(before);
        }
    }

    private void forget() {
        pending.clear();
        lines.setLength(0);
        mustLast = false;
    }

    /** Begins anew with what is not sent. */
    private void restart() throws IOException {
        channel.truncate(0);
        append(line(JOB + "\t" + jobNumber));
    }

    private void append(String text) throws IOException {
        ByteBuffer bytes = ByteBuffer.wrap(text.getBytes(StandardCharsets.ISO_8859_1));
        long at = channel.size();
        while (bytes.hasRemaining()) {
            at += channel.write(bytes, at);
        }
    }

    private static String line(String change) {
        return checksum(change) + "\t" + change + "\n";
    }

    private static String checksum(String change) {
        CRC32 crc = new CRC32();
        crc.update(change.getBytes(StandardCharsets.ISO_8859_1));
        return HexFormat.of().toHexDigits((int) crc.getValue());
    }

    private void take(String line) {
        int tab = line.indexOf('\t');
        if (tab > 0 && line.substring(0, tab).equals(checksum(line.substring(tab + 1)))) {
            apply(line.substring(tab + 1));
        }
    }

    private void apply(String change) {
        String[] parts = change.split("\t", -1);
        switch (parts[0]) {
            case ADDED -> {
                live.remove(parts[2]);
                live.put(
                        parts[2],
                        new Entry(
                                OutboxItem.Kind.valueOf(parts[1]),
                                parts[2],
                                Base64.getDecoder().decode(parts[3])));
            }
            case GONE -> live.remove(parts[1]);
            case JOB -> jobNumber = Math.max(jobNumber, Integer.parseInt(parts[1]));
            default ->
                throw new IllegalStateException("the journal of the spool has a line of no known kind: " + change);
        }
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
