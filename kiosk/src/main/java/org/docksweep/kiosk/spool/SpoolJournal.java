package org.docksweep.kiosk.spool;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.sql.SQLException;
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
    private static final long WRITTEN_SINCE = -1;

    private final Path file;
    private final FileChannel channel;
    /** Path of what is not sent, and the line of the file it stood in at the opening; bodies would fill the memory of a long outage. */
    private final Map<String, Long> live = new LinkedHashMap<>();

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

    private SpoolJournal(Path file, FileChannel channel) {
        this.file = file;
        this.channel = channel;
    }

    /** Whether a folder has a journal: made right after the database, at the first opening. */
    static boolean existsIn(Path folder) {
        return Files.exists(folder.resolve(NAME));
    }

    /** Opens the journal of a folder and reads what it holds. */
    static SpoolJournal open(Path folder) throws IOException {
        Path file = folder.resolve(NAME);
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        SpoolJournal journal = new SpoolJournal(file, channel);
        journal.readLines(journal::apply);
        journal.endTornLine();
        return journal;
    }

    /** What is appended to a line that a kill tore would be lost with it. */
    private void endTornLine() throws IOException {
        ByteBuffer last = ByteBuffer.allocate(1);
        if (channel.size() > 0 && channel.read(last, channel.size() - 1) == 1 && last.get(0) != '\n') {
            append("\n");
        }
    }

    /** Takes a change and the number of its line. */
    @FunctionalInterface
    private interface Change<E extends Exception> {
        void take(String change, long line) throws E;
    }

    private <E extends Exception> void readLines(Change<E> reader) throws IOException, E {
        try (BufferedReader lines = Files.newBufferedReader(file, StandardCharsets.ISO_8859_1)) {
            long number = 0;
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                int tab = line.indexOf('\t');
                if (tab > 0 && line.substring(0, tab).equals(checksum(line.substring(tab + 1)))) {
                    reader.take(line.substring(tab + 1), number);
                }
                number++;
            }
        }
    }

    /** Takes a record that is not sent. */
    @FunctionalInterface
    interface EntryReader {
        void take(Entry entry) throws SQLException;
    }

    /** Reads what was not sent when this journal was opened, in the order it was made. Before anything is written. */
    void readUnsent(EntryReader reader) throws IOException, SQLException {
        this.<SQLException>readLines((change, line) -> {
            String[] parts = change.split("\t", -1);
            if (parts[0].equals(ADDED) && Long.valueOf(line).equals(live.get(parts[2]))) {
                reader.take(new Entry(
                        OutboxItem.Kind.valueOf(parts[1]),
                        parts[2],
                        Base64.getDecoder().decode(parts[3])));
            }
        });
    }

    boolean knows(String path) {
        return live.containsKey(path);
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
        pending.add(() -> apply(change, WRITTEN_SINCE));
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

    private void apply(String change, long line) {
        String[] parts = change.split("\t", -1);
        switch (parts[0]) {
            case ADDED -> {
                live.remove(parts[2]);
                live.put(parts[2], line);
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
