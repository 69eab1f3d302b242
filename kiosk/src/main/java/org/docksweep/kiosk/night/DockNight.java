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
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.bench.Bench;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.spool.Spool;
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
    private final NightRig rig;
    private final NightService service;
    private final NightTruck truck;
    private volatile ServiceClient client;
    private NightKiosk kiosk;
    private DockHand hand;
    private NightRig.Standing rigStanding;
    private Optional<BenchJobFile> cleared = Optional.empty();

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
        this.service = new NightService(options, house);
        this.truck = new NightTruck(house, report);
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
        truck.list();
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
            client = service.start();
            report.say("Service ready at %s", service.address());
        }
        rigStanding = rig.check(gate, house, report);
        BeforeTheHire.Known known =
                beforeTheHire.known(house, gate, rigStanding.correction(), rig.beforeTheHire(), client != null);
        report.known(known);
        KioskSnapshot snapshot = client == null
                ? HouseLoader.snapshot(house, known.cabinets(), Instant.now())
                : HouseLoader.loaded(house, known, client, report);
        toAFreshDock(folder, snapshot);
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
        rigStanding = other.rigStanding;
        toAFreshDock(
                NightFolder.fresh(options.folder()),
                other.kiosk.spool().snapshot().orElseThrow());
    }

    /**
     * Opens the dock again on what a kiosk left that was killed: its own spool with its own copy of the fleet, and the
     * book of its rig.
     *
     * @param running client of the service that still runs
     * @throws IOException if the book of the rig cannot be read
     * @throws RigException if the rig cannot be had
     */
    void openAgain(ServiceClient running) throws IOException, RigException {
        client = running;
        rigStanding = rig.asItsBookSays(zone());
        Spool left = spool(options.folder());
        try {
            toTheDock(
                    options.folder(),
                    left,
                    left.snapshot()
                            .orElseThrow(() -> new IllegalStateException("no night was begun in " + options.folder())));
        } catch (RigException | RuntimeException e) {
            left.close();
            throw e;
        }
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
        return service.token();
    }

    private static Spool spool(Path folder) {
        return Spool.open(NightKiosk.spoolFolder(folder), Clock.systemUTC());
    }

    private void toTheDock(Path folder, Spool spool, KioskSnapshot snapshot) throws RigException {
        kiosk = new NightKiosk(folder, house, spool, snapshot, rig.atTheDock(), gate, rigStanding.standing());
        workBy(kiosk.dock());
    }

    private void toAFreshDock(Path folder, KioskSnapshot snapshot) throws RigException {
        Spool spool = spool(folder);
        spool.keepSnapshot(snapshot, null);
        toTheDock(folder, spool, snapshot);
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

    /**
     * Kills the service (SIGKILL) and starts it again on the same data, while the dock goes on.
     *
     * @throws IOException if it does not come back
     */
    public void killAndRestartService() throws IOException {
        service.kill();
        client = service.start();
        kiosk.sendTo(client);
    }

    /**
     * Takes the truckload in, cabinet by cabinet.
     *
     * @param pace called with the index of each cabinet, from 0, before it is scanned
     * @return the comparison with the truth
     * @throws InterruptedException if stopped
     */
    public TruthTable takeTruckIn(NightPace pace) throws InterruptedException {
        return truck.takeIn(kiosk, hand, pace);
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

    /**
     * Closes the list, waits until the service has everything, and prints the sheets.
     *
     * @throws IOException if something was not sent in time or a record was refused
     * @throws InterruptedException if stopped
     * @throws ServiceProblem if the service refuses
     * @throws ServiceUnreachable if the service does not answer
     */
    public void closeNight() throws IOException, InterruptedException, ServiceProblem, ServiceUnreachable {
        NightEnd end = new NightEnd(kiosk, report);
        end.close(hand, options.folder().resolve("recordings"), rigStanding.calibration());
        if (client != null) {
            end.send(client, SENT_WITHIN);
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
        service.close();
    }
}
