package org.docksweep.kiosk.night;

import java.io.IOException;
import java.io.PrintWriter;
import java.lang.management.ManagementFactory;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.contract.CabinetBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.screens.BenchPages;
import org.docksweep.kiosk.screens.KioskWindow;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.kiosk.service.ServiceClient;

/**
 * A night as long as wanted, in a process of its own: every cabinet of the house, its models in turn, again and again, by typed scans and keys in
 * the real window. Arguments: folder of a night whose dock was left, seed, address of its service, number of cabinets, {@code true} for a rig that plays in real time.
 * The rig is in another process still, as an interface is outside of the kiosk. Prints the memory every fifty cabinets, and at the end the event thread's longest stalls and seconds by model.
 */
final class LongNight {
    /** Cabinets between two looks at the memory. */
    private static final int EVERY = Integer.getInteger("docksweep.every", 50);

    private static final double MB = 1 << 20;

    private final DockNight night;
    private final TimedRig rig;
    private final int cabinets;
    private final Map<String, List<Took>> byModel = new TreeMap<>();
    private int done;

    /** What one cabinet took: from the scan's first key to the painted answer, in playbacks, and after the last one. */
    private record Took(double seconds, double playingS, double verdictS) {}

    private LongNight(DockNight night, TimedRig rig, int cabinets) {
        this.night = night;
        this.rig = rig;
        this.cabinets = cabinets;
    }

    public static void main(String[] arguments) throws Exception {
        NightOptions options = new NightOptions(
                Path.of(arguments[0]), Long.parseLong(arguments[1]), null, Boolean.parseBoolean(arguments[4]));
        ServiceClient client = new ServiceClient(URI.create(arguments[2]), System.getenv("DOCKSWEEP_TOKEN"));
        AtomicReference<TimedRig> timed = new AtomicReference<>();
        PrintWriter nowhere = new PrintWriter(PrintWriter.nullWriter());
        RigElsewhere rig = RigElsewhere.start(options);
        try (DockNight night = new DockNight(options, nowhere, inside -> {
            inside.close();
            timed.set(new TimedRig(rig));
            return timed.get();
        })) {
            night.openAgain(client);
            night.dock()
                    .warmUp(new LocalFleet(
                            client.snapshotUnless(null).orElseThrow().snapshot(), List.of()));
            new LongNight(night, timed.get(), Integer.parseInt(arguments[3])).run();
        }
        // The event thread of a window that is gone may stay for a second.
        System.exit(0);
    }

    private void run() throws Exception {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, night.zone());
        KioskWindow window = WindowReader.onEventThread(() -> KioskWindow.open(
                night.dock(),
                night.dock().state(),
                night.models(),
                settings,
                List.of(new BenchPages(night.bench(), night.models()))));
        night.dock().addListener(window::show);
        WindowReader reader = new WindowReader(window);
        reader.awaitFocus();
        try (EdtProbe probe = EdtProbe.start()) {
            DockHand hand = new DockHand(night.dock(), new TypingFingers(reader, word -> {}), true);
            List<CabinetBody> house = modelsInTurn(night.house().cabinets());
            memory(probe);
            while (done < cabinets) {
                CabinetBody cabinet = house.get(done % house.size());
                takeIn(hand, cabinet, reader);
                done++;
                if (done % EVERY == 0 || done == cabinets) {
                    memory(probe);
                }
            }
            System.out.println(probe.summary());
            System.out.println(probe.stalls());
        }
        night.awaitSent();
        System.out.printf(
                Locale.ROOT,
                "cabinets done %d, check-ins recorded %d, acknowledged %d%n",
                done,
                night.recorded().size(),
                night.acknowledged().size());
        byModel.forEach(LongNight::print);
        WindowReader.onEventThread(() -> {
            window.dispose();
            return null;
        });
    }

    /** So that a short night meets every kind of cabinet. */
    private static List<CabinetBody> modelsInTurn(List<CabinetBody> cabinets) {
        Map<String, Integer> before = new TreeMap<>();
        Map<CabinetBody, Integer> turn = new IdentityHashMap<>();
        cabinets.forEach(c -> turn.put(c, before.merge(c.modelCode(), 1, Integer::sum)));
        return cabinets.stream().sorted(Comparator.comparing(turn::get)).toList();
    }

    private void takeIn(DockHand hand, CabinetBody cabinet, WindowReader reader) throws InterruptedException {
        AssetTag label = cabinet.tag();
        rig.takePlayedNs();
        long began = System.nanoTime();
        DockHand.Outcome outcome = hand.checkIn(label, Set.of());
        // Shown, and then painted: what the first call queues is done before the second.
        reader.word();
        reader.word();
        long painted = System.nanoTime();
        if (outcome.prompts().isEmpty()) {
            byModel.computeIfAbsent(cabinet.modelCode(), m -> new ArrayList<>())
                    .add(new Took((painted - began) / 1e9, rig.takePlayedNs() / 1e9, (painted - rig.endedNs()) / 1e9));
        }
    }

    private void memory(EdtProbe probe) throws IOException {
        probe.pause();
        System.gc();
        double heapMb = ManagementFactory.getMemoryMXBean().getHeapMemoryUsage().getUsed() / MB;
        System.out.printf(
                Locale.ROOT,
                "memory after %d cabinets: heap %.1f MB after collection, process %s now, %s at most%n",
                done,
                heapMb,
                resident("VmRSS"),
                resident("VmHWM"));
        System.out.flush();
        probe.goOn();
    }

    /** Linux keeps it; elsewhere it is not known. */
    private static String resident(String key) throws IOException {
        Path status = Path.of("/proc/self/status");
        if (!Files.isReadable(status)) {
            return "unknown";
        }
        return Files.readAllLines(status).stream()
                .filter(line -> line.startsWith(key))
                .map(line -> Long.parseLong(line.replaceAll("\\D", "")) / 1024 + " MB")
                .findFirst()
                .orElse("unknown");
    }

    private static void print(String model, List<Took> took) {
        System.out.printf(
                Locale.ROOT,
                "%s: %d without a prompt, scan to painted answer %s s, of it playing %s s; last sample to painted answer %s s%n",
                model,
                took.size(),
                spread(took.stream().map(Took::seconds).toList()),
                spread(took.stream().map(Took::playingS).toList()),
                spread(took.stream().map(Took::verdictS).toList()));
    }

    /** Median, least and most. */
    private static String spread(List<Double> values) {
        List<Double> sorted = new ArrayList<>(values);
        Collections.sort(sorted);
        return String.format(
                Locale.ROOT,
                "%.2f (%.2f to %.2f)",
                sorted.get(sorted.size() / 2),
                sorted.get(0),
                sorted.get(sorted.size() - 1));
    }
}
