package org.docksweep.kiosk.spool;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;

/** Records on their way to the service, in the order they were made. Safe for use by several threads. */
public final class Outbox {
    private final SpoolDatabase database;
    private final SpoolJournal journal;
    private final Clock clock;

    Outbox(SpoolDatabase database, SpoolJournal journal, Clock clock) {
        this.database = database;
        this.journal = journal;
        this.clock = clock;
    }

    /**
     * The next record to send.
     *
     * @return the oldest waiting one
     */
    public Optional<OutboxItem> next() {
        return database
                .read(
                        "read the outbox",
                        "select sequence, kind, path, body, attempts from outbox where state = 'WAITING'"
                                + " order by sequence limit 1",
                        Outbox::item)
                .stream()
                .findFirst();
    }

    /**
     * Remembers that a record is at the service.
     *
     * @param item the record
     */
    public void sent(OutboxItem item) {
        database.write("mark a record as sent", () -> {
            database.update(
                    "update outbox set state = 'SENT', attempts = attempts + 1, words = null where sequence = ?",
                    item.sequence());
            journal.gone(item.path());
        });
    }

    /**
     * Remembers that a record could not be sent now.
     *
     * @param sequence its place in the queue
     * @param words what happened
     */
    public void triedInVain(long sequence, String words) {
        database.write(
                "mark a record as tried",
                () -> database.update(
                        "update outbox set attempts = attempts + 1, words = ? where sequence = ?", words, sequence));
    }

    /**
     * Parks a record that can never succeed as it is.
     *
     * @param sequence its place in the queue
     * @param words what the service said
     */
    public void park(long sequence, String words) {
        database.write(
                "park a record",
                () -> database.update(
                        "update outbox set state = 'PARKED', attempts = attempts + 1, words = ? where sequence = ?",
                        words,
                        sequence));
    }

    /** Puts all parked records back into the queue, at their old places. */
    public void tryParkedAgain() {
        database.write(
                "unpark records", () -> database.update("update outbox set state = 'WAITING' where state = 'PARKED'"));
    }

    /**
     * Records the service refused for good.
     *
     * @return the records, oldest first
     */
    public List<ParkedItem> parked() {
        return database.read(
                "read parked records",
                "select sequence, kind, path, body, attempts, words from outbox where state = 'PARKED'"
                        + " order by sequence",
                r -> new ParkedItem(item(r), r.getString(6)));
    }

    /**
     * How the outbox stands.
     *
     * @return counts
     */
    public OutboxCounts counts() {
        return database.read(
                        "count the outbox",
                        "select count(case when state = 'WAITING' then 1 end), count(case when state = 'PARKED' then 1 end),"
                                + " count(case when state = 'SENT' then 1 end) from outbox",
                        r -> new OutboxCounts(r.getInt(1), r.getInt(2), r.getInt(3)))
                .get(0);
    }

    /**
     * Ids of check-ins the service has acknowledged, in the order sent.
     *
     * @return the ids
     */
    public List<UUID> acknowledgedCheckIns() {
        return database.read(
                "read acknowledged check-ins",
                "select path from outbox where state = 'SENT' and kind = 'CHECK_IN' order by sequence",
                r -> UUID.fromString(r.getString(1).substring(ApiPaths.CHECK_INS.length() + 1)));
    }

    private static OutboxItem item(ResultSet row) throws SQLException {
        return new OutboxItem(
                row.getLong(1),
                OutboxItem.Kind.valueOf(row.getString(2)),
                row.getString(3),
                row.getBytes(4),
                row.getInt(5));
    }

    void enqueue(OutboxItem.Kind kind, String path, byte[] body) throws SQLException {
        journal.add(kind, path, body);
        enqueueAgain(kind, path, body);
    }

    /** Back into the queue from the journal, which has it. */
    void enqueueAgain(OutboxItem.Kind kind, String path, byte[] body) throws SQLException {
        database.update(
                "insert into outbox (kind, path, body, state, attempts, created_at) values (?, ?, ?, 'WAITING', 0, ?)",
                kind.name(),
                path,
                body,
                clock.instant().atOffset(ZoneOffset.UTC));
    }

    /** The same recording or the same close again needs no second place in the queue. */
    void enqueueOnce(OutboxItem.Kind kind, String path, byte[] body) throws SQLException {
        if (!knows(path)) {
            enqueue(kind, path, body);
        }
    }

    /** A spool of before the journal has records that are not in it. Part of a larger work. */
    void writeUnsentTo(SpoolJournal target) throws SQLException {
        for (OutboxItem item : database.rows(
                "select sequence, kind, path, body, attempts from outbox where state <> 'SENT' order by sequence",
                Outbox::item)) {
            if (!target.knows(item.path())) {
                target.add(item.kind(), item.path(), item.body());
            }
        }
    }

    boolean knows(String path) throws SQLException {
        return database.exists("select 1 from outbox where path = ?", path);
    }

    /** Takes back what was not sent to a path yet. Part of a larger work. */
    void withdraw(String path) throws SQLException {
        journal.gone(path);
        database.update("delete from outbox where path = ? and state <> 'SENT'", path);
    }

    /** Forgets what was sent before a time. Part of a larger work. */
    void forgetSentBefore(Instant time) throws SQLException {
        database.update("delete from outbox where state = 'SENT' and created_at < ?", time.atOffset(ZoneOffset.UTC));
    }
}
