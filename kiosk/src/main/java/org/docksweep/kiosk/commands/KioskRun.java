package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BooleanSupplier;
import java.util.function.Supplier;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.bench.Bench;
import org.docksweep.kiosk.bench.BenchParts;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.DockSettings;
import org.docksweep.kiosk.dock.Link;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.fleet.SnapshotRefresher;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.listening.OutputEarphones;
import org.docksweep.kiosk.people.PersonBook;
import org.docksweep.kiosk.people.SignOnDesk;
import org.docksweep.kiosk.people.SignOnOffice;
import org.docksweep.kiosk.people.SignOnParts;
import org.docksweep.kiosk.printing.PaperDesk;
import org.docksweep.kiosk.printing.PrintQueue;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigStation;
import org.docksweep.kiosk.rig.StudyCabinet;
import org.docksweep.kiosk.screens.Around;
import org.docksweep.kiosk.screens.BenchPages;
import org.docksweep.kiosk.screens.FleetPages;
import org.docksweep.kiosk.screens.KioskWindow;
import org.docksweep.kiosk.screens.RigPage;
import org.docksweep.kiosk.screens.ScanFrame;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceCourier;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.settings.KioskSettings;
import org.docksweep.kiosk.spool.Backoff;
import org.docksweep.kiosk.spool.OutboxSender;
import org.docksweep.kiosk.spool.ParkedTeller;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.kiosk.teaching.Teaching;
import org.docksweep.kiosk.teaching.TeachingParts;
import org.docksweep.kiosk.tones.AnswerTones;
import org.docksweep.kiosk.tones.SoundOutput;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.TagForm;
import org.docksweep.sweep.RigException;

/** The kiosk at work: real spool, rig, service and papers, from its window's opening to its closing. */
final class KioskRun {
    /** A person at the service sees a new return list at the dock within this. */
    private static final Duration REFRESH_EVERY = Duration.ofSeconds(30);

    private final Path folder;
    private final KioskSettings settings;
    private final String forGood;
    private final TagForm tagForm;
    private final ScanFrame scans;
    private PrintWriter stopWhenOpen;
    private final Clock clock = Clock.systemUTC();
    private final AtomicReference<LocalFleet> newest = new AtomicReference<>();
    private final AtomicReference<Dock> dockAt = new AtomicReference<>();
    private final AtomicReference<BooleanSupplier> working = new AtomicReference<>(() -> false);

    /**
     * Prepares a run.
     *
     * @param folder data folder
     * @param settings how the kiosk is set up
     * @param forGood person signed on for good; null when people sign on
     * @param tagForm form of the repair tag
     * @param scans what the scanner puts around a code
     */
    KioskRun(Path folder, KioskSettings settings, String forGood, TagForm tagForm, ScanFrame scans) {
        this.tagForm = tagForm;
        this.scans = scans;
        this.folder = folder;
        this.settings = settings;
        this.forGood = forGood;
    }

    /** Closes the window as soon as it has painted itself. */
    KioskRun stoppingWhenOpen(PrintWriter out) {
        stopWhenOpen = out;
        return this;
    }

    /** Opens the window and returns when it is closed, with where to go on. */
    Exit.To open() throws InterruptedException, RigException, IOException {
        KioskWindow.prepare(screen(ZoneOffset.UTC));
        ServiceClient client = new ServiceClient(settings.service(), settings.token());
        // Null is nothing to close.
        try (SignOnDesk people = forGood == null ? people(client) : null) {
            Supplier<String> signedOn = people == null ? () -> forGood : people::operator;
            try (Spool spool = Spool.open(folder.resolve("spool"), clock);
                    SnapshotRefresher refresher = new SnapshotRefresher(client, spool, this::refreshed);
                    RigStation station = RigStation.open(
                            folder.resolve("rigs"), settings.rig(), settings.rigSettings(), signedOn, clock)) {
                firstFleet(spool, refresher);
                return open(client, Optional.ofNullable(people), signedOn, spool, station);
            }
        }
    }

    private SignOnDesk people(ServiceClient client) throws IOException {
        PersonBook book =
                PersonBook.open(folder.resolve("people.json"), Duration.ofDays(settings.pinCountsDays()), clock);
        return new SignOnDesk(new SignOnParts(
                SignOnOffice.of(client),
                book,
                clock,
                System::nanoTime,
                () -> working.get().getAsBoolean(),
                text -> Optional.ofNullable(dockAt.get()).ifPresent(dock -> dock.scanNext(text)),
                kioskId(),
                new SignOnParts.Settings(
                        Duration.ofMillis(Math.round(settings.lockAfterMinutes() * 60_000)), settings.badgePrefix())));
    }

    private String kioskId() {
        return String.format(Locale.ROOT, "kiosk-%02d", settings.number());
    }

    private ScreenSettings screen(ZoneId zone) {
        return new ScreenSettings(Theme.valueOf(settings.theme()), settings.scale(), locale(), zone, scans);
    }

    private Locale locale() {
        return Locale.forLanguageTag(settings.language());
    }

    private void refreshed(LocalFleet fresh) {
        newest.set(fresh);
        Optional.ofNullable(dockAt.get()).ifPresent(dock -> dock.fleetRefreshed(fresh));
    }

    /** Without any copy the service must give one; with one the window comes first. */
    private void firstFleet(Spool spool, SnapshotRefresher refresher) throws InterruptedException, IOException {
        Optional<LocalFleet> known = spool.snapshot().map(s -> new LocalFleet(s, spool.registered()));
        if (known.isEmpty()) {
            try {
                refresher.once();
            } catch (ServiceProblem | ServiceUnreachable e) {
                throw new IOException(
                        "the service gave no copy of the fleet, and this kiosk has none yet: " + e.getMessage(), e);
            }
        } else {
            newest.set(known.get());
        }
        refresher.start(REFRESH_EVERY);
    }

    private Exit.To open(
            ServiceClient client,
            Optional<SignOnDesk> people,
            Supplier<String> signedOn,
            Spool spool,
            RigStation station)
            throws InterruptedException, RigException, IOException {
        LocalFleet fleet = newest.get();
        RecordingKeeper recordings = new RecordingKeeper(folder.resolve("recordings"));
        RealGate gate = new RealGate();
        station.practise(gate, fleet.zone());
        ParkedTeller teller = new ParkedTeller(spool);
        // Null is nothing to close.
        try (SoundOutput output = settings.tones() == null ? null : SoundOutput.open(settings.tones());
                OutputEarphones ears = new OutputEarphones(settings.tones(), station::playsThrough);
                OutboxSender sender = new OutboxSender(
                        spool, new ServiceCourier(client, recordings::checked), Backoff.USUAL, teller)) {
            DockParts parts = new DockParts(
                    spool,
                    station.rig(),
                    Lead.of(station.rig()),
                    station.standings(fleet.zone()),
                    gate,
                    recordings,
                    papers(fleet, signedOn),
                    link(sender),
                    clock,
                    new DockSettings(kioskId(), settings.number(), signedOn, locale(), DockSettings.USUAL_ANSWER_STAYS),
                    station.book()::append);
            Listening listening = new Listening(ears, folder.resolve("sounds"));
            String bench = String.format(Locale.ROOT, "bench-%02d", settings.number());
            try (Dock dock = new Dock(parts, fleet);
                    Bench benchDesk = new Bench(new BenchParts(parts, client, newest::get, bench, listening));
                    Teaching teaching = new Teaching(new TeachingParts(parts, client, newest::get));
                    RigDesk rigDesk = station.desk(fleet.zone(), tag -> StudyCabinet.of(newest.get(), tag))) {
                if (output != null) {
                    dock.addListener(new AnswerTones(output, () -> !station.playsThrough(settings.tones())));
                }
                dock.addListener(state -> {
                    // The dock's microphone would hear it.
                    if (dock.isSounding()) {
                        listening.silence();
                    }
                });
                teller.tell(dock::recordParked);
                sender.start();
                dockAt.set(dock);
                // What came while the dock was being opened.
                dock.fleetRefreshed(newest.get());
                working.set(() -> dock.isSounding()
                        || benchDesk.state().sweepShare().isPresent()
                        || teaching.state().busy()
                        || rigDesk.state().sounding());
                people.ifPresent(p -> p.addListener(state -> dock.personChanged()));
                List<CabinetModel> models = fleet.snapshot().book().cabinetModels();
                Exit exit = new Exit();
                Stand stand = Stand.open(
                        dock,
                        models,
                        screen(fleet.zone()),
                        List.of(new BenchPages(benchDesk, models), new FleetPages(teaching), RigPage.of(rigDesk)),
                        new Around(
                                people,
                                Optional.of(() -> leave(dock, exit, Exit.To.SET_UP)),
                                Optional.of(() -> leave(dock, exit, Exit.To.PRACTICE)),
                                Optional.empty()));
                stand.stopWhenOpen(stopWhenOpen, exit);
                if (stopWhenOpen == null) {
                    // Not before: the window comes first.
                    stand.awaitPainted();
                    dock.warmUp(newest.get());
                }
                return exit.await(stand);
            }
        }
    }

    /** Nobody loses a cabinet by a key. */
    private void leave(Dock dock, Exit exit, Exit.To to) {
        if (dock.isAtWork() || working.get().getAsBoolean()) {
            dock.tell(ReadingState.WATCH, Reason.of("dock-finish-first"));
        } else {
            exit.to(to);
        }
    }

    private PaperDesk papers(LocalFleet fleet, Supplier<String> signedOn) {
        return new PaperDesk(
                folder.resolve("papers"),
                List.of(tagForm),
                Optional.ofNullable(settings.printer()).map(PrintQueue::new),
                () -> new PaperContext(
                        fleet.snapshot().siteName(),
                        fleet.zone(),
                        locale(),
                        signedOn.get(),
                        clock.instant(),
                        org.docksweep.kiosk.Version.text()));
    }

    private static Link link(OutboxSender sender) {
        return new Link() {
            @Override
            public boolean reachable() {
                return sender.reachable();
            }

            @Override
            public Optional<Trouble> trouble() {
                return sender.trouble();
            }

            @Override
            public void hurry() {
                sender.hurry();
            }
        };
    }
}
