package org.docksweep.kiosk.practice;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.Version;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.DockSettings;
import org.docksweep.kiosk.dock.Link;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.night.InventedHouse;
import org.docksweep.kiosk.printing.PaperDesk;
import org.docksweep.kiosk.printing.PrintQueue;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigStation;
import org.docksweep.kiosk.rig.StudyCabinet;
import org.docksweep.kiosk.spool.Backoff;
import org.docksweep.kiosk.spool.Delivery;
import org.docksweep.kiosk.spool.OutboxSender;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.paper.PaperContext;
import org.docksweep.paper.TagForm;
import org.docksweep.sweep.RigException;

/**
 * A kiosk on which nothing is real but its own code: virtual rig, invented cabinets, a spool and a folder of its own that are deleted at
 * the end. It is given no service, no token and no folder of the real kiosk, hence cannot write to either.
 */
public final class PracticeKiosk implements AutoCloseable {
    /** Job codes of practice; {@code J99} on a tag was never a real job as long as no kiosk of the house has this number. */
    public static final int KIOSK_NUMBER = 99;

    private static final long SEED = 1;

    private final Path folder;
    private final DemoHouse house;
    private final LocalFleet fleet;
    private final RigStation station;
    private final Spool spool;
    private final OutboxSender sender;
    private final Dock dock;
    private final RigDesk rigDesk;

    /**
     * Opens practice. Takes some seconds, since references are taught by real sweeps of the virtual rig.
     *
     * @param locale language
     * @param printer print queue for tags and sheets, which say on every page what they are; empty for PDF files
     * @param realTime whether a sweep takes its time, as for a person
     * @throws IOException if there is no room for a folder
     * @throws RigException if the virtual rig cannot be opened
     */
    public PracticeKiosk(Locale locale, Optional<String> printer, boolean realTime) throws IOException, RigException {
        folder = Files.createTempDirectory("docksweep-practice-");
        Spool openSpool = null;
        RigStation openStation = null;
        try {
            house = PracticeHouse.of(InventedHouse.of(SEED));
            ZoneId zone = ZoneId.of(house.timeZone());
            RealGate gate = new RealGate();
            String person = locale.getLanguage().equals("de") ? "\u00dcbung" : "Practice";
            openStation = RigStation.open(
                    folder.resolve("rigs"),
                    "virtual",
                    Map.of("seed", Long.toString(SEED), "realTime", Boolean.toString(realTime)),
                    () -> person,
                    Clock.systemUTC());
            station = openStation;
            station.practise(gate, zone);
            KioskSnapshot snapshot = InventedHouse.snapshot(
                    house, gate, station.standings(zone).get().correction(), SEED);
            openSpool = Spool.open(folder.resolve("spool"), Clock.systemUTC());
            spool = openSpool;
            spool.keepSnapshot(snapshot, null);
            fleet = new LocalFleet(snapshot, List.of());
            PaperDesk papers = new PaperDesk(
                    folder.resolve("papers"),
                    List.of(TagForm.A5_LANDSCAPE),
                    printer.map(PrintQueue::new),
                    () -> new PaperContext(
                            house.siteName(),
                            zone,
                            locale,
                            person,
                            Clock.systemUTC().instant(),
                            Version.text(),
                            true));
            // What practice records is sent like anything else, and nowhere.
            sender = new OutboxSender(spool, item -> new Delivery.Delivered(), Backoff.USUAL, () -> {});
            sender.start();
            dock = new Dock(
                    new DockParts(
                            spool,
                            station.rig(),
                            Lead.of(station.rig()),
                            station.standings(zone),
                            gate,
                            new RecordingKeeper(folder.resolve("recordings")),
                            papers,
                            link(sender),
                            Clock.systemUTC(),
                            new DockSettings("practice", KIOSK_NUMBER, person, locale, DockSettings.USUAL_ANSWER_STAYS),
                            station.book()::append),
                    fleet);
            rigDesk = station.desk(zone, tag -> StudyCabinet.of(fleet, tag));
        } catch (IOException | RigException | RuntimeException e) {
            if (openSpool != null) {
                openSpool.close();
            }
            if (openStation != null) {
                openStation.close();
            }
            delete(folder);
            throw e;
        }
    }

    /**
     * The dock.
     *
     * @return the dock
     */
    public Dock dock() {
        return dock;
    }

    /**
     * What is behind the rig page.
     *
     * @return the desk
     */
    public RigDesk rigDesk() {
        return rigDesk;
    }

    /**
     * What comes off the truck.
     *
     * @return the truck
     */
    public PracticeTruck truck() {
        return new PracticeTruck(house.arrivals());
    }

    /**
     * Models of the house.
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
        return fleet.zone();
    }

    /**
     * Where everything of it is.
     *
     * @return the folder, gone after {@link #close()}
     */
    public Path folder() {
        return folder;
    }

    /** Ends practice and leaves nothing behind. */
    @Override
    public void close() throws IOException {
        rigDesk.close();
        dock.close();
        sender.close();
        spool.close();
        station.close();
        delete(folder);
    }

    private static Link link(OutboxSender sender) {
        return new Link() {
            @Override
            public boolean reachable() {
                return sender.reachable();
            }

            @Override
            public void hurry() {
                sender.hurry();
            }
        };
    }

    private static void delete(Path folder) throws IOException {
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(file -> {
                try {
                    Files.delete(file);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }
}
