package org.docksweep.kiosk.spool;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;

/**
 * The kiosk's own memory, in one database file. Every method that writes returns after the data is durable; a process
 * killed at any moment loses nothing that a method has returned from. Safe for use by several threads.
 */
public final class Spool implements AutoCloseable {
    /** Sent records and their check-ins are forgotten after this time; the service has them. */
    static final Duration KEEP_SENT = Duration.ofDays(30);

    private final Connection connection;
    private final Path folder;
    private final Clock clock;
    private final Optional<Path> setAside;

    private Spool(SpoolFile.Opened opened, Path folder, Clock clock) {
        this.connection = opened.connection();
        this.setAside = opened.setAside();
        this.folder = folder;
        this.clock = clock;
    }

    /**
     * Opens the spool of a folder, making it if needed. A damaged file is set aside, see {@link #setAside()}.
     *
     * @param folder folder of the spool
     * @param clock time
     * @return the open spool
     * @throws SpoolException if the file is in use or the disk refuses
     */
    public static Spool open(Path folder, Clock clock) {
        Spool spool = new Spool(SpoolFile.open(folder, clock), folder, clock);
        spool.forgetOldOnes();
        return spool;
    }

    /**
     * Where a damaged spool file was put when this one was opened.
     *
     * @return its path, or empty when nothing was damaged
     */
    public Optional<Path> setAside() {
        return setAside;
    }

    /**
     * Keeps the newest copy of what the service knows.
     *
     * @param snapshot the copy
     * @param etag its entity tag at the service, or null
     */
    public void keepSnapshot(KioskSnapshot snapshot, String etag) {
        byte[] body = Wire.json().writeValueAsBytes(snapshot);
        write("keep the copy of the fleet", () -> {
            update("merge into local_copy (id, etag, body) key (id) values (1, ?, ?)", etag, body);
            // The service knows these now, so its word counts.
            for (CabinetBody cabinet : snapshot.cabinets()) {
                update("delete from registered where tag = ?", cabinet.tag().value());
            }
        });
    }

    /**
     * The newest copy.
     *
     * @return the copy; empty before the first one
     */
    public Optional<KioskSnapshot> snapshot() {
        return read(
                        "read the copy of the fleet",
                        "select body from local_copy where id = 1",
                        row -> Wire.json().readValue(row.getBytes(1), KioskSnapshot.class))
                .stream()
                .findFirst();
    }

    /**
     * Entity tag of the newest copy.
     *
     * @return the tag; empty when not known
     */
    public Optional<String> snapshotEtag() {
        return read(
                        "read the copy of the fleet",
                        "select etag from local_copy where etag is not null",
                        r -> r.getString(1))
                .stream()
                .findFirst();
    }

    /**
     * A job code that was never given before on this kiosk. A code taken and not used leaves a gap, never a double.
     *
     * @param kioskNumber number of the kiosk, 1 to 99
     * @return the code
     */
    public synchronized JobCode nextJobCode(int kioskNumber) {
        write(
                "count job codes",
                () -> update("merge into counter using (values ('job')) as given(name)"
                        + " on counter.name = given.name when matched then update set last_value = last_value + 1"
                        + " when not matched then insert (name, last_value) values ('job', 1)"));
        int number = read("count job codes", "select last_value from counter where name = 'job'", r -> r.getInt(1))
                .get(0);
        return JobCode.of(kioskNumber, number);
    }

    /**
     * Makes sure that job codes go on after a number, for a spool that was set aside or a kiosk that was replaced.
     *
     * @param number highest number known to be given
     */
    public void jobCodesGoOnAfter(int number) {
        write("count job codes", () -> {
            update("merge into counter using (values ('job')) as given(name) on counter.name = given.name"
                    + " when not matched then insert (name, last_value) values ('job', 0)");
            update("update counter set last_value = greatest(last_value, ?) where name = 'job'", number);
        });
    }

    /**
     * Stores a check-in and puts it, after its recordings, into the outbox: all or nothing.
     *
     * @param body the check-in
     */
    public void record(CheckInBody body) {
        byte[] bytes = Wire.json().writeValueAsBytes(body);
        write("store the check-in of " + body.tag(), () -> {
            for (var measurement : body.measurements()) {
                if (measurement.recordingSha256() != null) {
                    enqueueOnce(
                            OutboxItem.Kind.RECORDING,
                            ApiPaths.RECORDINGS + "/" + measurement.recordingSha256(),
                            new byte[0]);
                }
            }
            update(
                    "insert into check_in (id, tag, return_list_id, finished_at, body) values (?, ?, ?, ?, ?)",
                    body.id(),
                    body.tag().value(),
                    body.returnListId(),
                    body.finishedAt().atOffset(ZoneOffset.UTC),
                    bytes);
            enqueue(OutboxItem.Kind.CHECK_IN, ApiPaths.CHECK_INS + "/" + body.id(), bytes);
        });
    }

    /**
     * Stores a cabinet registered at the dock and puts it into the outbox.
     *
     * @param cabinet the cabinet
     */
    public void register(CabinetBody cabinet) {
        byte[] bytes = Wire.json().writeValueAsBytes(cabinet);
        write("store the registration of " + cabinet.tag(), () -> {
            String path = ApiPaths.CABINETS + "/" + cabinet.tag();
            update(
                    "merge into registered (tag, body) key (tag) values (?, ?)",
                    cabinet.tag().value(),
                    bytes);
            // A registration that was refused and is made again replaces the refused one.
            update("delete from outbox where path = ? and state <> 'SENT'", path);
            enqueue(OutboxItem.Kind.REGISTRATION, path, bytes);
        });
    }

    /**
     * Puts a commissioning into the outbox.
     *
     * @param body baselines of one cabinet
     */
    public void commission(CommissioningBody body) {
        byte[] bytes = Wire.json().writeValueAsBytes(body);
        write(
                "store the baselines of " + body.tag(),
                () -> enqueue(OutboxItem.Kind.COMMISSIONING, ApiPaths.COMMISSIONINGS + "/" + body.id(), bytes));
    }

    /**
     * Puts the close of a return list into the outbox, after everything checked in before.
     *
     * @param returnListId the list
     */
    public void close(UUID returnListId) {
        write(
                "close the return list",
                () -> enqueueOnce(
                        OutboxItem.Kind.CLOSE,
                        ApiPaths.RETURN_LISTS + "/" + returnListId + ApiPaths.CLOSE,
                        new byte[0]));
    }

    /**
     * Cabinets registered here that the copy of the fleet does not know yet.
     *
     * @return the cabinets
     */
    public List<CabinetBody> registered() {
        return read(
                "read registrations",
                "select body from registered order by tag",
                r -> Wire.json().readValue(r.getBytes(1), CabinetBody.class));
    }

    /**
     * Check-ins made here, oldest first.
     *
     * @return the check-ins still remembered
     */
    public List<CheckInBody> checkIns() {
        return read(
                "read check-ins",
                "select body from check_in order by finished_at, id",
                r -> Wire.json().readValue(r.getBytes(1), CheckInBody.class));
    }

    /**
     * The newest check-in of a cabinet made here.
     *
     * @param tag cabinet
     * @return the check-in; empty when there is none
     */
    public Optional<CheckInBody> newestCheckIn(AssetTag tag) {
        // A tag is letters, a hyphen and digits only, so it can stand in the statement.
        return read(
                        "read a check-in",
                        "select body from check_in where tag = '" + tag.value()
                                + "' order by finished_at desc, id limit 1",
                        r -> Wire.json().readValue(r.getBytes(1), CheckInBody.class))
                .stream()
                .findFirst();
    }

    /**
     * The next record to send.
     *
     * @return the oldest waiting one
     */
    public Optional<OutboxItem> next() {
        return read(
                        "read the outbox",
                        "select sequence, kind, path, body, attempts from outbox where state = 'WAITING'"
                                + " order by sequence limit 1",
                        Spool::item)
                .stream()
                .findFirst();
    }

    /**
     * Remembers that a record is at the service.
     *
     * @param sequence its place in the queue
     */
    public void sent(long sequence) {
        write(
                "mark a record as sent",
                () -> update(
                        "update outbox set state = 'SENT', attempts = attempts + 1, words = null where sequence = ?",
                        sequence));
    }

    /**
     * Remembers that a record could not be sent now.
     *
     * @param sequence its place in the queue
     * @param words what happened
     */
    public void triedInVain(long sequence, String words) {
        write(
                "mark a record as tried",
                () -> update(
                        "update outbox set attempts = attempts + 1, words = ? where sequence = ?", words, sequence));
    }

    /**
     * Parks a record that can never succeed as it is.
     *
     * @param sequence its place in the queue
     * @param words what the service said
     */
    public void park(long sequence, String words) {
        write(
                "park a record",
                () -> update(
                        "update outbox set state = 'PARKED', attempts = attempts + 1, words = ? where sequence = ?",
                        words,
                        sequence));
    }

    /** Puts all parked records back into the queue, at their old places. */
    public void tryParkedAgain() {
        write("unpark records", () -> update("update outbox set state = 'WAITING' where state = 'PARKED'"));
    }

    /**
     * Records the service refused for good.
     *
     * @return the records, oldest first
     */
    public List<ParkedItem> parked() {
        return read(
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
        return read(
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
        return read(
                "read acknowledged check-ins",
                "select path from outbox where state = 'SENT' and kind = 'CHECK_IN' order by sequence",
                r -> UUID.fromString(r.getString(1).substring(ApiPaths.CHECK_INS.length() + 1)));
    }

    @Override
    public synchronized void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw failed("close", e);
        }
    }

    private static OutboxItem item(ResultSet row) throws SQLException {
        return new OutboxItem(
                row.getLong(1),
                OutboxItem.Kind.valueOf(row.getString(2)),
                row.getString(3),
                row.getBytes(4),
                row.getInt(5));
    }

    private void enqueue(OutboxItem.Kind kind, String path, byte[] body) throws SQLException {
        update(
                "insert into outbox (kind, path, body, state, attempts, created_at) values (?, ?, ?, 'WAITING', 0, ?)",
                kind.name(),
                path,
                body,
                clock.instant().atOffset(ZoneOffset.UTC));
    }

    /** The same recording or the same close again needs no second place in the queue. */
    private void enqueueOnce(OutboxItem.Kind kind, String path, byte[] body) throws SQLException {
        try (PreparedStatement known = connection.prepareStatement("select 1 from outbox where path = ?")) {
            known.setString(1, path);
            if (known.executeQuery().next()) {
                return;
            }
        }
        enqueue(kind, path, body);
    }

    private void forgetOldOnes() {
        Timestamp before = Timestamp.from(clock.instant().minus(KEEP_SENT));
        write("forget what was sent long ago", () -> {
            update(
                    "delete from check_in where finished_at < ? and exists (select 1 from outbox where state = 'SENT'"
                            + " and path = '" + ApiPaths.CHECK_INS + "/' || check_in.id)",
                    before);
            update("delete from outbox where state = 'SENT' and created_at < ?", before);
        });
    }

    private void update(String sql, Object... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setObject(i + 1, values[i]);
            }
            statement.executeUpdate();
        }
    }

    private interface Work {
        void run() throws SQLException;
    }

    private interface RowReader<T> {
        T read(ResultSet row) throws SQLException;
    }

    private synchronized void write(String what, Work work) {
        try {
            work.run();
            connection.commit();
        } catch (SQLException e) {
            try {
                connection.rollback();
            } catch (SQLException rollbackFailed) {
                e.addSuppressed(rollbackFailed);
            }
            throw failed(what, e);
        }
    }

    private synchronized <T> List<T> read(String what, String sql, RowReader<T> reader) {
        try (PreparedStatement statement = connection.prepareStatement(sql);
                ResultSet rows = statement.executeQuery()) {
            List<T> result = new ArrayList<>();
            while (rows.next()) {
                result.add(reader.read(rows));
            }
            return result;
        } catch (SQLException e) {
            throw failed(what, e);
        }
    }

    private SpoolException failed(String what, SQLException e) {
        return new SpoolException(
                "the spool in " + folder + " could not " + what + "; check the disk: " + e.getMessage(), e);
    }
}
