package org.docksweep.kiosk.night;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.bench.Bench;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.service.ChildService;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.spool.OutboxCounts;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;

/**
 * The dock night of the demo house, from an empty folder to printed sheets: rig check, references and baselines before
 * the hire, then a truckload through the real dock by typed scans, with or without the real service.
 */
public final class DockNight implements AutoCloseable {
    /** Everything recorded must be at the service within this after the last cabinet. */
    private static final Duration SENT_WITHIN = Duration.ofSeconds(120);

    private final NightOptions options;
    private final BeforeTheHire beforeTheHire;
    private final NightReport report;
    private final Gate gate = new RealGate();
    private final DemoHouse house;
    private final String token = NightKiosk.newToken();
    private final TruthTable truth = new TruthTable();
    private final NightRig rig;
    private volatile ChildService service;
    private volatile ServiceClient client;
    private NightKiosk kiosk;
    private DockHand hand;
    private RigCalibration calibration;
    private RigStanding standing;
    private Optional<BenchJobFile> cleared = Optional.empty();

    /** Sets the pace of the truck. */
    @FunctionalInterface
    public interface Pace {
        /** As fast as the dock goes. */
        Pace AT_ONCE = index -> {};

        /**
         * Called before a cabinet is scanned.
         *
         * @param index number of the cabinet, from 0
         * @throws InterruptedException if stopped
         */
        void before(int index) throws InterruptedException;
    }

    /**
     * Prepares a night.
     *
     * @param options how it is run
     * @param out where it reports
     */
    public DockNight(NightOptions options, PrintWriter out) {
        this(options, out, UnaryOperator.identity());
    }

    /**
     * Prepares a night whose rig is watched.
     *
     * @param options how it is run
     * @param out where it reports
     * @param nightRig puts something around the rig at the dock
     */
    DockNight(NightOptions options, PrintWriter out, UnaryOperator<PracticeRig> nightRig) {
        this(options, out, nightRig, BeforeTheHire::sweep);
    }

    /**
     * Prepares a night of a house that knows its cabinets already.
     *
     * @param options how it is run
     * @param out where it reports
     * @param nightRig puts something around the rig at the dock
     * @param beforeTheHire gives what the house knew
     */
    DockNight(NightOptions options, PrintWriter out, UnaryOperator<PracticeRig> nightRig, BeforeTheHire beforeTheHire) {
        this.options = options;
        this.beforeTheHire = beforeTheHire;
        this.rig = new NightRig(options, nightRig);
        this.report = new NightReport(out);
        this.house = HouseLoader.house(options.seed());
    }

    /**
     * The dock, after {@link #open()}.
     *
     * @return the dock
     */
    public Dock dock() {
        return kiosk.dock();
    }

    /**
     * Cabinet models of the house.
     *
     * @return the models
     */
    public List<CabinetModel> models() {
        return house.book().cabinetModels();
    }

    /**
     * Time zone of the house.
     *
     * @return the zone
     */
    public ZoneId zone() {
        return ZoneId.of(house.timeZone());
    }

    /** Lists what comes off the truck, for somebody who types the labels. */
    public void listTruck() {
        for (DemoHouse.Arrival arrival : house.arrivals()) {
            report.say(
                    "%s%s",
                    arrival.label(), arrival.visualDamage().isEmpty() ? "" : "  not fine: " + arrival.visualDamage());
        }
    }

    /**
     * Makes everything ready for the first cabinet.
     *
     * @throws IOException if the folder or the service cannot be had
     * @throws RigException if the rig cannot
     * @throws ServiceProblem if the service refuses the house
     * @throws ServiceUnreachable if the service does not answer
     */
    public void open() throws IOException, RigException, ServiceProblem, ServiceUnreachable {
        Path folder = NightFolder.fresh(options.folder());
        report.say("%s, seed %d, %.0f \u00b0C at the dock", house.siteName(), options.seed(), house.ambientCelsius());
        report.ratings(house.book());
        if (options.serviceJar() != null) {
            report.say("Starting the service ...");
            service = startService();
            report.say("Service ready at %s", service.address());
            client = new ServiceClient(service.address(), token);
        }
        checkRig();
        BeforeTheHire.Known known =
                beforeTheHire.known(house, gate, standing.correction(), rig.beforeTheHire(), client != null);
        Commissioning.Result commissioning = known.cabinets();
        report.say(
                "Before the hire: %d sweeps, %d references from known-good units, %d baselines",
                commissioning.sweeps(),
                commissioning.references().size(),
                commissioning.baselines().size());
        KioskSnapshot snapshot;
        if (client == null) {
            snapshot = HouseLoader.snapshot(house, commissioning, Instant.now());
        } else {
            HouseLoader.load(house, commissioning, client);
            HouseLoader.loadDriverReferences(known.drivers(), client);
            report.say(
                    "The bench knows %d driver models bare, each from %d known-good drivers",
                    known.drivers().size(), BenchLessons.DRIVERS);
            snapshot = client.get(ApiPaths.KIOSK_SNAPSHOT, KioskSnapshot.class);
            report.say(
                    "House loaded: %d cabinets, %d due back",
                    snapshot.cabinets().size(), house.returnList().lines().size());
        }
        toTheDock(folder, snapshot);
        if (client != null) {
            kiosk.sendTo(client);
        }
    }

    /**
     * Makes everything ready without a service and with the rig check, references and baselines of another night of the
     * same seed.
     *
     * @param other a night that is open
     * @throws IOException if the folder cannot be had
     * @throws RigException if the rig cannot
     */
    void openLike(DockNight other) throws IOException, RigException {
        if (other.options.seed() != options.seed()) {
            throw new IllegalArgumentException(
                    "a night of seed " + options.seed() + " cannot be opened like one of seed " + other.options.seed());
        }
        calibration = other.calibration;
        standing = other.standing;
        toTheDock(
                NightFolder.fresh(options.folder()),
                other.kiosk.spool().snapshot().orElseThrow());
    }

    /**
     * Opens the dock again on what a kiosk left that was killed: its own spool with its own copy of the fleet.
     *
     * @param running client of the service that still runs
     * @throws RigException if the rig cannot be had
     */
    void openAgain(ServiceClient running) throws RigException {
        KioskSnapshot snapshot;
        try (Spool left = Spool.open(NightKiosk.spoolFolder(options.folder()), Clock.systemUTC())) {
            snapshot = left.snapshot()
                    .orElseThrow(() -> new IllegalStateException("no night was begun in " + options.folder()));
        }
        client = running;
        checkRig();
        toTheDock(options.folder(), snapshot);
        kiosk.sendTo(client);
    }

    /**
     * Leaves the dock to another process; the service goes on.
     *
     * @return where the service is
     */
    URI leaveDock() {
        kiosk.close();
        kiosk = null;
        return service.address();
    }

    /**
     * The service's manager token of this night.
     *
     * @return the token
     */
    String token() {
        return token;
    }

    private void toTheDock(Path folder, KioskSnapshot snapshot) throws RigException {
        kiosk = new NightKiosk(folder, house, snapshot, rig.atTheDock(), gate, standing, Duration.ZERO);
        workBy(kiosk.dock());
    }

    /**
     * Works the dock by something else than the dock itself from now on: the keys of its window.
     *
     * @param fingers what the hand acts by
     */
    void workBy(DockActions fingers) {
        hand = new DockHand(kiosk.dock(), fingers);
    }

    /**
     * The house, with what comes off the truck.
     *
     * @return the house
     */
    DemoHouse house() {
        return house;
    }

    /**
     * Check-ins recorded at the kiosk so far.
     *
     * @return them, in the order recorded
     */
    List<CheckInBody> checkIns() {
        return kiosk.spool().checkIns();
    }

    /**
     * Waits until the service has everything recorded so far.
     *
     * @throws IOException if that takes too long
     * @throws InterruptedException if stopped
     */
    void awaitSent() throws IOException, InterruptedException {
        kiosk.awaitSent(SENT_WITHIN);
    }

    private void checkRig() throws RigException {
        RigDay.Result result = rig.check(gate, zone(), report);
        calibration = result.calibration();
        standing = result.standing();
    }

    private ChildService startService() throws IOException {
        return ChildService.start(
                options.serviceJar(),
                options.folder().resolve("service"),
                token,
                Map.of("docksweep.site-name", house.siteName(), "docksweep.time-zone", house.timeZone()));
    }

    /**
     * Kills the service (SIGKILL) and starts it again on the same data, while the dock goes on.
     *
     * @throws IOException if it does not come back
     */
    public void killAndRestartService() throws IOException {
        service.kill();
        service = startService();
        client = new ServiceClient(service.address(), token);
        kiosk.sendTo(client);
    }

    /**
     * Takes the truckload in, cabinet by cabinet.
     *
     * @param pace called with the index of each cabinet, from 0, before it is scanned
     * @return the comparison with the truth
     * @throws InterruptedException if stopped
     */
    public TruthTable takeTruckIn(Pace pace) throws InterruptedException {
        List<DemoHouse.Arrival> arrivals = house.arrivals();
        for (int i = 0; i < arrivals.size(); i++) {
            pace.before(i);
            if (i > 0) {
                oddScan(i - 1, arrivals.get(i - 1));
            }
            DemoHouse.Arrival arrival = arrivals.get(i);
            DockHand.Outcome outcome = checkIn(arrival);
            CheckInBody body = kiosk.spool().newestCheckIn(arrival.label()).orElseThrow();
            truth.add(arrival, body, outcome.prompts());
            report.result(i + 1, arrivals.size(), body, outcome);
        }
        return truth;
    }

    /**
     * Takes one cabinet in, or finds that it is in already.
     *
     * @param arrival the cabinet
     * @return how it went
     * @throws InterruptedException if stopped
     */
    DockHand.Outcome checkIn(DemoHouse.Arrival arrival) throws InterruptedException {
        return hand.checkIn(arrival.label(), arrival.visualDamage());
    }

    /** A real night is never clean: an unknown tag, the same tag twice, two labels in one scan. */
    private void oddScan(int index, DemoHouse.Arrival arrival) throws InterruptedException {
        String text = switch (index) {
            case 2 -> "ZZZ-999999";
            case 6 -> arrival.label().value();
            case 10 -> arrival.label().value() + house.arrivals().get(0).label().value();
            default -> null;
        };
        if (text != null) {
            report.say("         odd scan \"%s\": %s", text, hand.scanOdd(text));
        }
    }

    /**
     * Closes the list, waits until the service has everything, and prints the sheets.
     *
     * @throws IOException if something was not sent in time or a record was refused
     * @throws InterruptedException if stopped
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if the service does not answer
     */
    public void closeNight() throws IOException, InterruptedException, ServiceProblem, ServiceUnreachable {
        ReturnReport back = kiosk.dock().report().orElseThrow();
        report.say(
                "Return list %s: %d of %d back, %d missing, %d unexpected",
                back.list().orderNumber(),
                back.back().size(),
                back.list().lines().size(),
                back.missing().size(),
                back.unexpected().size());
        hand.closeList();
        NightRecordings.index(
                options.folder().resolve("recordings"),
                kiosk.spool().snapshot().orElseThrow(),
                calibration,
                kiosk.spool().checkIns(),
                kiosk.recordings());
        if (client != null) {
            kiosk.awaitSent(SENT_WITHIN);
            OutboxCounts counts = kiosk.spool().outbox().counts();
            report.say("Outbox: %d sent, %d waiting, %d refused", counts.sent(), counts.waiting(), counts.parked());
            for (var parked : kiosk.spool().outbox().parked()) {
                report.say("  refused: %s: %s", parked.item().path(), parked.words());
            }
            kiosk.papers().statusSheet(client.get(ApiPaths.FLEET_STATUS, FleetStatus.class));
            if (counts.parked() > 0) {
                throw new IOException(counts.parked() + " records were refused by the service");
            }
        }
    }

    /**
     * The morning after, without a person: takes one cabinet over the bench, from its tag to the shelf, and prints the
     * status sheet anew.
     *
     * @throws InterruptedException if stopped
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if the service does not answer
     */
    public void benchMorning() throws InterruptedException, ServiceProblem, ServiceUnreachable {
        benchMorning(bench());
    }

    /**
     * The morning after: takes one cabinet over the bench, from its tag to the shelf.
     *
     * @param fingers what the technician acts by
     * @return what became of it
     * @throws InterruptedException if stopped
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if the service does not answer
     */
    BenchMorning.Outcome benchMorning(BenchActions fingers)
            throws InterruptedException, ServiceProblem, ServiceUnreachable {
        BenchHand technician = new BenchHand(bench(), fingers);
        BenchMorning morning = new BenchMorning(house, client, technician, kiosk.rig(), kiosk.papers(), report);
        BenchMorning.Outcome outcome = morning.repairOne();
        cleared = morning.clearOneDriver();
        kiosk.papers().statusSheet(client.get(ApiPaths.FLEET_STATUS, FleetStatus.class));
        return outcome;
    }

    /**
     * The job of the powered cabinet whose driver the bench rig cleared in the morning.
     *
     * @return the job; empty before the morning, and when no powered cabinet came to the bench
     */
    Optional<BenchJobFile> cleared() {
        return cleared;
    }

    /**
     * The bench beside the dock; made when it is first asked for.
     *
     * @return the bench
     */
    public Bench bench() {
        return kiosk.bench(client, house.bench().technician());
    }

    /**
     * Check-ins recorded at the kiosk so far.
     *
     * @return their ids
     */
    public Set<UUID> recorded() {
        return kiosk.spool().checkIns().stream().map(CheckInBody::id).collect(Collectors.toSet());
    }

    /**
     * Check-ins the service has acknowledged so far, in the order sent.
     *
     * @return their ids
     */
    public List<UUID> acknowledged() {
        return kiosk.spool().outbox().acknowledgedCheckIns();
    }

    @Override
    public void close() {
        if (kiosk != null) {
            kiosk.close();
        }
        if (service != null) {
            service.close();
        }
    }
}
