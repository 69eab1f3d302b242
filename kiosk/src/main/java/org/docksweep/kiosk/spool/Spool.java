package org.docksweep.kiosk.spool;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
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
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tools.jackson.core.JacksonException;

/**
 * The kiosk's own memory, in one database file. Every method that writes returns after the data is durable; a process
 * killed at any moment loses nothing that a method has returned from. Safe for use by several threads.
 */
public final class Spool implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Spool.class);
    /** Sent records and their check-ins are forgotten after this time; the service has them. */
    static final Duration KEEP_SENT = Duration.ofDays(30);

    /** Check-ins the dock may still have to show: a list stays open for a night or two, and what was not sent for longer. */
    static final String RECENT_CHECK_INS =
            "select body from check_in where finished_at > dateadd(day, -3, (select max(finished_at) from check_in))"
                    + " or exists (select 1 from outbox where state <> 'SENT' and path = '" + ApiPaths.CHECK_INS
                    + "/' || check_in.id) order by finished_at, id";

    private final SpoolDatabase database;
    private final Outbox outbox;
    private final Clock clock;
    private final SpoolJournal journal;
    private final Path fleetCopy;
    private final Optional<Path> setAside;
    private int restored;

    private Spool(SpoolFile.Opened opened, SpoolJournal journal, Path folder, Clock clock) {
        this.database = new SpoolDatabase(opened.connection(), journal, folder);
        this.outbox = new Outbox(database, journal, clock);
        this.journal = journal;
        this.fleetCopy = folder.resolve("fleet-copy.json");
        this.setAside = opened.setAside();
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
        SpoolFile.Opened opened = SpoolFile.open(folder, clock);
        SpoolJournal journal;
        try {
            journal = SpoolJournal.open(folder);
        } catch (IOException e) {
            throw new SpoolException(
                    "the journal of the spool in " + folder + " cannot be opened; check the disk and its rights", e);
        }
        Spool spool = new Spool(opened, journal, folder, clock);
        spool.restore();
        spool.forgetOldOnes();
        return spool;
    }

    /**
     * How many records not sent yet the database had lost and the second copy gave back when this spool was opened.
     *
     * @return their number
     */
    public int restored() {
        return restored;
    }

    /** What the journal has and the database lacks goes back to where it was. */
    private void restore() {
        database.write("take back what was not sent", () -> {
            journal.readUnsent(entry -> {
                if (!outbox.knows(entry.path())) {
                    outbox.enqueueAgain(entry.kind(), entry.path(), entry.body());
                    restored++;
                    restoreRow(entry);
                }
            });
            outbox.writeUnsentTo(journal);
        });
        jobCodesGoOnAfter(journal.jobNumber());
        if (setAside.isPresent() && Files.exists(fleetCopy)) {
            restoreFleet();
        }
    }

    private void restoreRow(SpoolJournal.Entry entry) throws SQLException {
        if (entry.kind() == OutboxItem.Kind.CHECK_IN) {
            insert(Wire.json().readValue(entry.body(), CheckInBody.class), entry.body());
        } else if (entry.kind() == OutboxItem.Kind.REGISTRATION) {
            keepRegistered(Wire.json().readValue(entry.body(), CabinetBody.class), entry.body());
        }
    }

    /** Without a copy of the fleet the dock could not open while the service is away. */
    private void restoreFleet() {
        try {
            keepSnapshot(Wire.json().readValue(Files.readAllBytes(fleetCopy), KioskSnapshot.class), null);
        } catch (IOException | JacksonException e) {
            LOG.warn("The second copy of the fleet in {} cannot be read; the service gives a new one", fleetCopy, e);
        }
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
        writeBeside(body);
        database.write("keep the copy of the fleet", () -> {
            database.update("merge into local_copy (id, etag, body) key (id) values (1, ?, ?)", etag, body);
            // The service knows these now, so its word counts.
            for (CabinetBody cabinet : snapshot.cabinets()) {
                database.update(
                        "delete from registered where tag = ?", cabinet.tag().value());
            }
        });
    }

    /** In whole or not at all, so that a damaged database leaves a copy to work with. */
    private void writeBeside(byte[] body) {
        Path part = fleetCopy.resolveSibling(fleetCopy.getFileName() + ".part");
        try {
            Files.write(part, body);
            Files.move(part, fleetCopy, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (IOException e) {
            throw new SpoolException("the copy of the fleet cannot be kept as " + fleetCopy + "; check the disk", e);
        }
    }

    /**
     * The newest copy.
     *
     * @return the copy; empty before the first one
     */
    public Optional<KioskSnapshot> snapshot() {
        return database
                .read(
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
        return database
                .read(
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
        int[] number = new int[1];
        database.write("count job codes", () -> {
            database.update("merge into counter using (values ('job')) as given(name)"
                    + " on counter.name = given.name when matched then update set last_value = last_value + 1"
                    + " when not matched then insert (name, last_value) values ('job', 1)");
            number[0] = database.rows("select last_value from counter where name = 'job'", r -> r.getInt(1))
                    .get(0);
            journal.jobNumber(number[0]);
        });
        return JobCode.of(kioskNumber, number[0]);
    }

    /**
     * Makes sure that job codes go on after a number, for a spool that was set aside or a kiosk that was replaced.
     *
     * @param number highest number known to be given
     */
    public void jobCodesGoOnAfter(int number) {
        database.write("count job codes", () -> {
            database.update("merge into counter using (values ('job')) as given(name) on counter.name = given.name"
                    + " when not matched then insert (name, last_value) values ('job', 0)");
            database.update("update counter set last_value = greatest(last_value, ?) where name = 'job'", number);
            journal.jobNumber(database.rows("select last_value from counter where name = 'job'", r -> r.getInt(1))
                    .get(0));
        });
    }

    /**
     * Stores a check-in and puts it, after its recordings, into the outbox: all or nothing.
     *
     * @param body the check-in
     */
    public void record(CheckInBody body) {
        byte[] bytes = Wire.json().writeValueAsBytes(body);
        database.write("store the check-in of " + body.tag(), () -> {
            for (var measurement : body.measurements()) {
                if (measurement.recordingSha256() != null) {
                    outbox.enqueueOnce(
                            OutboxItem.Kind.RECORDING,
                            ApiPaths.RECORDINGS + "/" + measurement.recordingSha256(),
                            new byte[0]);
                }
            }
            insert(body, bytes);
            outbox.enqueue(OutboxItem.Kind.CHECK_IN, ApiPaths.CHECK_INS + "/" + body.id(), bytes);
        });
    }

    private void insert(CheckInBody body, byte[] bytes) throws SQLException {
        database.update(
                "insert into check_in (id, tag, return_list_id, finished_at, body) values (?, ?, ?, ?, ?)",
                body.id(),
                body.tag().value(),
                body.returnListId(),
                body.finishedAt().atOffset(ZoneOffset.UTC),
                bytes);
    }

    private void keepRegistered(CabinetBody cabinet, byte[] bytes) throws SQLException {
        database.update(
                "merge into registered (tag, body) key (tag) values (?, ?)",
                cabinet.tag().value(),
                bytes);
    }

    /**
     * Stores a cabinet registered at the dock and puts it into the outbox.
     *
     * @param cabinet the cabinet
     */
    public void register(CabinetBody cabinet) {
        byte[] bytes = Wire.json().writeValueAsBytes(cabinet);
        database.write("store the registration of " + cabinet.tag(), () -> {
            String path = ApiPaths.CABINETS + "/" + cabinet.tag();
            keepRegistered(cabinet, bytes);
            // A registration that was refused and is made again replaces the refused one.
            outbox.withdraw(path);
            outbox.enqueue(OutboxItem.Kind.REGISTRATION, path, bytes);
        });
    }

    /**
     * Puts a commissioning into the outbox.
     *
     * @param body baselines of one cabinet
     */
    public void commission(CommissioningBody body) {
        byte[] bytes = Wire.json().writeValueAsBytes(body);
        database.write(
                "store the baselines of " + body.tag(),
                () -> outbox.enqueue(OutboxItem.Kind.COMMISSIONING, ApiPaths.COMMISSIONINGS + "/" + body.id(), bytes));
    }

    /**
     * Puts the close of a return list into the outbox, after everything checked in before.
     *
     * @param returnListId the list
     */
    public void close(UUID returnListId) {
        database.write(
                "close the return list",
                () -> outbox.enqueueOnce(
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
        return database.read(
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
        return database.read(
                "read check-ins",
                "select body from check_in order by finished_at, id",
                r -> Wire.json().readValue(r.getBytes(1), CheckInBody.class));
    }

    /**
     * Check-ins of the last three days of work, and older ones the service does not have yet, oldest first.
     *
     * @return the check-ins
     */
    public List<CheckInBody> recentCheckIns() {
        return database.read(
                "read check-ins", RECENT_CHECK_INS, r -> Wire.json().readValue(r.getBytes(1), CheckInBody.class));
    }

    /**
     * A check-in made here.
     *
     * @param id its id
     * @return the check-in; empty when it is not remembered any more
     */
    public Optional<CheckInBody> checkIn(UUID id) {
        return database
                .read(
                        "read a check-in",
                        "select body from check_in where id = ?",
                        r -> Wire.json().readValue(r.getBytes(1), CheckInBody.class),
                        id)
                .stream()
                .findFirst();
    }

    /**
     * The newest check-in of a cabinet made here.
     *
     * @param tag cabinet
     * @return the check-in; empty when there is none
     */
    public Optional<CheckInBody> newestCheckIn(AssetTag tag) {
        return database
                .read(
                        "read a check-in",
                        "select body from check_in where tag = ? order by finished_at desc, id limit 1",
                        r -> Wire.json().readValue(r.getBytes(1), CheckInBody.class),
                        tag.value())
                .stream()
                .findFirst();
    }

    /**
     * What waits to be sent.
     *
     * @return the outbox
     */
    public Outbox outbox() {
        return outbox;
    }

    @Override
    public void close() {
        database.close();
    }

    private void forgetOldOnes() {
        Instant before = clock.instant().minus(KEEP_SENT);
        database.write("forget what was sent long ago", () -> {
            database.update(
                    "delete from check_in where finished_at < ? and exists (select 1 from outbox where state = 'SENT'"
                            + " and path = '" + ApiPaths.CHECK_INS + "/' || check_in.id)",
                    before.atOffset(ZoneOffset.UTC));
            outbox.forgetSentBefore(before);
        });
    }
}
