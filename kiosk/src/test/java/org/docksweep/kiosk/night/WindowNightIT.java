package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.awt.AWTException;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Predicate;
import javax.imageio.ImageIO;
import org.assertj.core.groups.Tuple;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouse.Arrival;
import org.docksweep.contract.DemoHouse.Kind;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.kiosk.dock.Dock;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.screens.BenchPages;
import org.docksweep.kiosk.screens.Display;
import org.docksweep.kiosk.screens.KioskWindow;
import org.docksweep.kiosk.screens.ScreenSettings;
import org.docksweep.kiosk.screens.SmallPng;
import org.docksweep.kiosk.screens.Theme;
import org.docksweep.sweep.PracticeRig;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The whole night in the real window, with the real service, worked by nothing but typed scans and keys, against the
 * same night without a window. Every answer is left as a picture in {@code target/window-night}; {@code
 * -Ddocksweep.night-pictures=FOLDER} paints the two of the readme there.
 */
class WindowNightIT {
    private static final long SEED = 3;
    /** From the middle of the truck on: the first healthy cabinet whose next one is healthy and due as well. */
    private static final int QUEUE_FROM = 11;

    private static final long PATIENCE_S = 120;
    private static final Path PICTURES = Path.of("target", "window-night");
    /** Cabinets of this seed that show well: a two-way with a crossover part open, and a healthy one. */
    private static final Map<AssetTag, String> README =
            Map.of(new AssetTag("MCH-000104"), "night-fail.png", new AssetTag("MCH-000131"), "night-pass.png");

    private static final PrintWriter OUT = new PrintWriter(System.out, true);

    @TempDir
    private Path folder;

    private final AtomicReference<HeldRig> rig = new AtomicReference<>();
    private final List<String> words = new ArrayList<>();
    private KioskWindow window;
    private WindowReader reader;
    private TypingFingers fingers;

    @AfterEach
    void closes() {
        if (window != null) {
            WindowReader.onEventThread(() -> {
                window.dispose();
                return null;
            });
        }
    }

    @Test
    void takesTheTruckInByTypedScansAsTheNightWithoutAWindowDoes() throws Exception {
        Display.need();
        Path jar = Capability.serviceJar();
        Files.createDirectories(PICTURES);
        ExecutorService beside = Executors.newSingleThreadExecutor();
        try (DockNight typed = PreparedHouse.night(options("typed", jar), OUT, this::held);
                DockNight headless =
                        new DockNight(options("headless", null), new PrintWriter(PrintWriter.nullWriter()))) {
            typed.open();
            headless.openLike(typed);
            Future<TruthTable> truth = beside.submit(() -> {
                TruthTable table = headless.takeTruckIn(NightPace.AT_ONCE);
                headless.closeNight();
                return table;
            });
            openWindow(typed);
            List<Arrival> truck = typed.house().arrivals();
            int held = heldCabinet(typed.house());

            TruthTable table = typed.takeTruckIn(index -> {
                if (index > 0) {
                    answered(truck.get(index - 1), index - 1 == held);
                }
                if (index == held) {
                    AssetTag next = truck.get(index + 1).label();
                    rig.get()
                            .duringNextSweep(() -> scanDuringSweep(
                                    typed.dock(), truck.get(held).label(), next));
                } else if (index == held + 1) {
                    // Nothing is typed for it: its turn comes by itself.
                    await(typed.dock(), s -> at(s, Phase.LOOK, truck.get(index).label()));
                    assertThat(reader.word()).isEqualTo("LOOK");
                }
            });
            answered(truck.get(truck.size() - 1), false);
            ReturnReport report = typed.dock().report().orElseThrow();
            typed.closeNight();
            picture("list-closed");
            BenchMorning.Outcome repaired = typed.benchMorning(new BenchFingers(reader, this::saw));
            picture("bench-done");

            BenchStory.assertRepaired(repaired);
            BenchStory.assertCleared(typed.cleared().orElseThrow());
            table.lines().forEach(OUT::println);
            assertThat(table.rows()).noneMatch(r -> r.match() == TruthTable.Match.WRONG);
            assertThat(tuples(table)).isEqualTo(tuples(truth.get(PATIENCE_S, TimeUnit.SECONDS)));
            assertThat(typed.checkIns())
                    .extracting(CheckInBody::tag, CheckInBody::verdict, CheckInBody::route, CheckInBody::reason)
                    .isEqualTo(headless.checkIns().stream()
                            .map(c -> tuple(c.tag(), c.verdict(), c.route(), c.reason()))
                            .toList());
            assertThat(words)
                    .contains("PASS", "FAIL", "PLUG IN", "CHECK LABEL", "HOLD", "SAFETY HOLD")
                    .doesNotContain("no verdict plate");
            assertThat(typed.acknowledged()).containsExactlyInAnyOrderElementsOf(typed.recorded());
            assertThat(report.back().size() + report.missing().size())
                    .isEqualTo(report.list().lines().size());
        } finally {
            beside.shutdownNow();
        }
    }

    private NightOptions options(String name, Path jar) {
        return new NightOptions(folder.resolve(name), SEED, jar, false);
    }

    private PracticeRig held(PracticeRig inner) {
        rig.set(new HeldRig(inner));
        return rig.get();
    }

    private void openWindow(DockNight night) throws AWTException {
        ScreenSettings settings = new ScreenSettings(Theme.DARK, 1, Locale.ENGLISH, night.zone());
        window = WindowReader.onEventThread(() -> KioskWindow.open(
                night.dock(),
                night.dock().state(),
                night.models(),
                settings,
                List.of(new BenchPages(night.bench(), night.models()))));
        // Before the hand: what the hand has seen, the window has been told.
        night.dock().addListener(window::show);
        reader = new WindowReader(window);
        reader.awaitFocus();
        fingers = new TypingFingers(reader, this::saw);
        night.workBy(fingers);
    }

    private static int heldCabinet(DemoHouse house) {
        List<Arrival> truck = house.arrivals();
        for (int i = QUEUE_FROM; i + 1 < truck.size(); i++) {
            AssetTag next = truck.get(i + 1).label();
            boolean due =
                    house.returnList().lines().stream().anyMatch(l -> l.tag().equals(next));
            if (due && healthy(truck.get(i)) && healthy(truck.get(i + 1))) {
                return i;
            }
        }
        throw new AssertionError("seed " + SEED + " has no two healthy cabinets in a row; take another");
    }

    private static boolean healthy(Arrival arrival) {
        return arrival.truth().kind() == Kind.HEALTHY && arrival.visualDamage().isEmpty();
    }

    /** On the rig's thread, so that the sweep goes on only when this is done. */
    private void scanDuringSweep(Dock dock, AssetTag atHand, AssetTag next) {
        await(dock, s -> at(s, Phase.SWEEP, atHand));
        assertThat(reader.word()).isEqualTo("SWEEPING");
        fingers.scan(next.value());
        DockState queued = await(
                dock,
                s -> s.cabinet().flatMap(DockState.CabinetAtHand::queuedScan).isPresent());
        assertThat(at(queued, Phase.SWEEP, atHand))
                .as("the cabinet at hand stays")
                .isTrue();
        assertThat(queued.cabinet().orElseThrow().queuedScan()).contains(next);
        saw(reader.word());
    }

    private static boolean at(DockState state, Phase phase, AssetTag tag) {
        return state.phase() == phase
                && state.cabinet().filter(c -> c.tag().equals(tag)).isPresent();
    }

    private static DockState await(Dock dock, Predicate<DockState> wanted) {
        CompletableFuture<DockState> seen = new CompletableFuture<>();
        dock.addListener(s -> Optional.of(s).filter(wanted).ifPresent(seen::complete));
        Optional.of(dock.state()).filter(wanted).ifPresent(seen::complete);
        return seen.orTimeout(PATIENCE_S, TimeUnit.SECONDS).join();
    }

    /** The word that is left on the window by a cabinet, as it must be for what was done to that cabinet. */
    private void answered(Arrival arrival, boolean nextCameByItself) {
        if (nextCameByItself) {
            return;
        }
        String word = reader.word();
        words.add(word);
        picture(word + "-" + arrival.label());
        if (README.containsKey(arrival.label())) {
            readmePicture(README.get(arrival.label()));
        }
        Optional<String> expected = word(arrival);
        expected.ifPresent(w -> assertThat(word).as(arrival.toString()).isEqualTo(w));
    }

    /** Empty when this gate may or may not catch it. */
    private static Optional<String> word(Arrival arrival) {
        return switch (arrival.truth().kind()) {
            case HEALTHY, NOT_PLUGGED -> Optional.of("PASS");
            case HARD_FAULT -> Optional.of("FAIL");
            case VISUAL_SAFETY -> Optional.of("SAFETY HOLD");
            case WRONG_LABEL -> Optional.of("HOLD");
            case SOFT_FAULT -> Optional.empty();
        };
    }

    private void saw(String what) {
        words.add(what);
        picture(what);
    }

    private void picture(String what) {
        try {
            String name = String.format("%02d-%s.png", words.size(), what.replace(' ', '-'));
            ImageIO.write(reader.picture(), "png", PICTURES.resolve(name).toFile());
        } catch (IOException e) {
            throw new UncheckedIOException("the picture of " + what + " cannot be kept", e);
        }
    }

    private void readmePicture(String name) {
        String kept = System.getProperty("docksweep.night-pictures");
        if (kept != null) {
            try {
                SmallPng.write(reader.picture(), Path.of(kept).resolve(name));
            } catch (IOException e) {
                throw new UncheckedIOException("the picture " + name + " cannot be kept", e);
            }
        }
    }

    private static List<Tuple> tuples(TruthTable table) {
        return table.rows().stream()
                .map(r -> tuple(r.arrival().label(), r.route(), r.faultPositionCode(), r.prompts(), r.match()))
                .toList();
    }
}
