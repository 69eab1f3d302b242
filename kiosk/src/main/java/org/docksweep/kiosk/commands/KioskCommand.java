package org.docksweep.kiosk.commands;

import java.awt.GraphicsEnvironment;
import java.io.IOException;
import java.net.URI;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.bench.Bench;
import org.docksweep.kiosk.bench.BenchParts;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.DockSettings;
import org.docksweep.kiosk.dock.Link;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.fleet.SnapshotRefresher;
import org.docksweep.kiosk.printing.PaperDesk;
import org.docksweep.kiosk.printing.PrintQueue;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigStandings;
import org.docksweep.kiosk.rig.RigStation;
import org.docksweep.kiosk.rig.StudyCabinet;
import org.docksweep.kiosk.screens.BenchPages;
import org.docksweep.kiosk.screens.FleetPages;
import org.docksweep.kiosk.screens.RigPage;
import org.docksweep.kiosk.screens.ScanFrame;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceCourier;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.kiosk.spool.Backoff;
import org.docksweep.kiosk.spool.OutboxSender;
import org.docksweep.kiosk.spool.ParkedTeller;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.kiosk.spool.SpoolException;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.kiosk.teaching.Teaching;
import org.docksweep.kiosk.teaching.TeachingParts;
import org.docksweep.kiosk.tones.AnswerTones;
import org.docksweep.kiosk.tones.SoundOutput;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.TagForm;
import org.docksweep.sweep.RigException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Opens the kiosk at the dock. */
@Command(
        name = "kiosk",
        mixinStandardHelpOptions = true,
        description = "Opens the window at the dock, for a service and a rig. Works on without the service once it has"
                + " a copy of the fleet. The token comes from the environment variable DOCKSWEEP_TOKEN.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {"0:the window was closed", "2:the command line is wrong", "3:the kiosk could not be opened"})
public final class KioskCommand implements Callable<Integer> {
    /** A person at the service sees a new return list at the dock within this. */
    private static final Duration REFRESH_EVERY = Duration.ofSeconds(30);

    @Option(names = "--service", required = true, description = "Address of the service.")
    private URI service;

    @Option(names = "--folder", required = true, description = "Data folder of this kiosk.")
    private Path folder;

    @Option(names = "--number", required = true, description = "Number of this kiosk, 1 to 99; part of every job code.")
    private int number;

    @Option(names = "--operator", required = true, description = "Person signed on.")
    private String operator;

    @Option(names = "--rig", description = "Rig to use. Default: ${DEFAULT-VALUE}", defaultValue = "virtual")
    private String rigName;

    @Option(names = "--rig-setting", description = "Setting of the rig, NAME=VALUE; may be repeated.")
    private Map<String, String> rigSettings = Map.of();

    @Option(names = "--printer", description = "Print queue for tags and sheets; without one they are saved as PDF.")
    private String printer;

    @Option(
            names = "--tag-form",
            description = "Form of the repair tag: A5_LANDSCAPE or LABEL_100_X_150. Default: ${DEFAULT-VALUE}",
            defaultValue = "A5_LANDSCAPE")
    private TagForm tagForm;

    @Option(names = "--scan-prefix", description = "Characters the scanner puts before every code.", defaultValue = "")
    private String scanPrefix;

    @Option(
            names = "--scan-suffix",
            description = "Characters the scanner puts after every code, before Enter or Tab.",
            defaultValue = "")
    private String scanSuffix;

    @Option(
            names = "--tones",
            paramLabel = "OUTPUT",
            description = "Output of this computer on which every answer sounds; never the rig's. Without it: none.")
    private String tones;

    @Option(names = "--theme", description = "DARK or LIGHT. Default: ${DEFAULT-VALUE}", defaultValue = "DARK")
    private Theme theme;

    @Option(
            names = "--scale",
            description = "Size of everything, 0.5 to 4. Default: ${DEFAULT-VALUE}",
            defaultValue = "1")
    private double scale;

    @Option(names = "--language", description = "Language tag. Default: ${DEFAULT-VALUE}", defaultValue = "en")
    private String language;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws InterruptedException {
        String token = System.getenv("DOCKSWEEP_TOKEN");
        if (GraphicsEnvironment.isHeadless()) {
            return fail("there is no display for the kiosk window");
        }
        if (token == null || token.isBlank()) {
            return fail("the environment variable DOCKSWEEP_TOKEN is not set; ask the fleet manager for a token");
        }
        try (Spool spool = Spool.open(folder.resolve("spool"), Clock.systemUTC());
                RigStation station =
                        RigStation.open(folder.resolve("rigs"), rigName, rigSettings, operator, Clock.systemUTC())) {
            return run(spool, station, new ServiceClient(service, token));
        } catch (SpoolException | IllegalArgumentException | IOException e) {
            return fail(e.getMessage());
        } catch (RigException e) {
            return fail(Reasons.text(e.reason(), locale()));
        }
    }

    private int run(Spool spool, RigStation station, ServiceClient client)
            throws InterruptedException, RigException, IOException {
        Optional<LocalFleet> known = firstFleet(spool, client);
        if (known.isEmpty()) {
            return fail("the service gave no copy of the fleet, and this kiosk has none yet");
        }
        LocalFleet fleet = known.get();
        RecordingKeeper recordings = new RecordingKeeper(folder.resolve("recordings"));
        RealGate gate = new RealGate();
        station.practise(gate, fleet.zone());
        RigStandings standing = station.standings(fleet.zone());
        ParkedTeller teller = new ParkedTeller(spool);
        // Null is nothing to close.
        try (SoundOutput output = tones == null ? null : SoundOutput.open(tones);
                OutboxSender sender =
                        new OutboxSender(spool, new ServiceCourier(client, recordings::bytes), Backoff.USUAL, teller)) {
            DockParts parts = new DockParts(
                    spool,
                    station.rig(),
                    Lead.of(station.rig()),
                    standing,
                    gate,
                    recordings,
                    papers(fleet),
                    link(sender),
                    Clock.systemUTC(),
                    new DockSettings(
                            String.format(Locale.ROOT, "kiosk-%02d", number),
                            number,
                            operator,
                            locale(),
                            DockSettings.USUAL_ANSWER_STAYS),
                    station.book()::append);
            AtomicReference<LocalFleet> newest = new AtomicReference<>(fleet);
            BenchParts benchParts =
                    new BenchParts(parts, client, newest::get, String.format(Locale.ROOT, "bench-%02d", number));
            try (Dock dock = new Dock(parts, fleet);
                    Bench bench = new Bench(benchParts);
                    Teaching teaching = new Teaching(new TeachingParts(parts, client, newest::get));
                    RigDesk rigDesk = station.desk(fleet.zone(), tag -> StudyCabinet.of(newest.get(), tag));
                    SnapshotRefresher refresher = new SnapshotRefresher(client, spool, fresh -> {
                        newest.set(fresh);
                        dock.fleetRefreshed(fresh);
                    })) {
                if (output != null) {
                    dock.addListener(new AnswerTones(output, () -> !station.playsThrough(tones)));
                }
                teller.tell(dock::recordParked);
                sender.start();
                refresher.start(REFRESH_EVERY);
                Stand.open(
                                dock,
                                fleet.snapshot().book().cabinetModels(),
                                new ScreenSettings(
                                        theme, scale, locale(), fleet.zone(), new ScanFrame(scanPrefix, scanSuffix)),
                                List.of(
                                        new BenchPages(
                                                bench, fleet.snapshot().book().cabinetModels()),
                                        new FleetPages(teaching),
                                        RigPage.of(rigDesk)))
                        .awaitClosed();
            }
        }
        return 0;
    }

    private Optional<LocalFleet> firstFleet(Spool spool, ServiceClient client) {
        try (SnapshotRefresher first = new SnapshotRefresher(client, spool, fresh -> {})) {
            first.once();
        } catch (ServiceProblem | ServiceUnreachable e) {
            spec.commandLine().getErr().println("Working without the service for now: " + e.getMessage());
        }
        return spool.snapshot().map(snapshot -> new LocalFleet(snapshot, spool.registered()));
    }

    private PaperDesk papers(LocalFleet fleet) {
        return new PaperDesk(
                folder.resolve("papers"),
                List.of(tagForm),
                Optional.ofNullable(printer).map(PrintQueue::new),
                () -> new PaperContext(
                        fleet.snapshot().siteName(),
                        fleet.zone(),
                        locale(),
                        operator,
                        Clock.systemUTC().instant(),
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

    private Locale locale() {
        return Locale.forLanguageTag(language);
    }

    private int fail(String words) {
        spec.commandLine().getErr().println("The kiosk could not be opened: " + words);
        return 3;
    }
}
