package org.docksweep.kiosk.dock;

import static org.assertj.core.api.Assertions.assertThat;
import static org.mockito.Mockito.mock;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.Set;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReadingState;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.printing.Papers;
import org.docksweep.kiosk.rig.Lead;
import org.docksweep.kiosk.rig.PlugLog;
import org.docksweep.kiosk.rig.PlugTrend;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.kiosk.rig.RigDesk;
import org.docksweep.kiosk.rig.RigEntry;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.kiosk.rig.RigStation;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StudyCabinet;
import org.docksweep.kiosk.spool.Spool;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A real gate before the practice rig, whose dock plug is worn from the 18th push on: five standards, then a dozen cabinets. */
class PlugWearTest {
    private static final Clock CLOCK = DockBench.CLOCK;
    private static final String MODEL = "SPIN12";
    private static final long PATIENCE_S = 60;
    private static final Map<String, String> NEW = Map.of("seed", "1", "moment", "before-hire");
    private static final Map<String, String> WEARS =
            Map.of("seed", "1", "moment", "before-hire", "wornFromPlug", "18", "wornOhm", "0.12");

    @TempDir
    private Path folder;

    private final RealGate gate = new RealGate();
    private final LinkedBlockingQueue<DockState> states = new LinkedBlockingQueue<>();
    private final DemoHouse house = ServiceLoader.load(DemoHouseProvider.class)
            .findFirst()
            .orElseThrow()
            .house(1);
    private final TestPoint point =
            house.book().cabinetModel(MODEL).testPoints().get(0);
    private final List<CabinetBody> units =
            house.cabinets().stream().filter(c -> c.modelCode().equals(MODEL)).toList();

    /** As if the cabinets had gone out some weeks ago: with another push of the plug than at the dock. */
    private LocalFleet commissioned(List<CabinetBody> cabinets, CurveCorrection correction) throws RigException {
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", NEW)) {
            List<ReferenceTeacher.Unit> lessons = new ArrayList<>();
            for (AssetTag tag : house.referenceUnits()) {
                if (units.stream().anyMatch(c -> c.tag().equals(tag)) && lessons.size() < 4) {
                    Baseline good = swept(rig, tag, correction);
                    lessons.add(new ReferenceTeacher.Unit(good.impedance(), good.acoustic(), good.ambientCelsius()));
                }
            }
            PointReference reference = ReferenceTeacher.teach(house.book(), MODEL, point.code(), lessons);
            List<Baseline> baselines = new ArrayList<>();
            for (CabinetBody cabinet : cabinets) {
                baselines.add(swept(rig, cabinet.tag(), correction));
            }
            ReturnList list = new ReturnList(
                    SmallHouse.LIST,
                    "R-1",
                    "Small Fair",
                    java.time.LocalDate.parse("2026-05-02"),
                    false,
                    cabinets.stream()
                            .map(c -> new ReturnList.Line(c.tag(), MODEL))
                            .toList());
            return new LocalFleet(
                    new KioskSnapshot(
                            CLOCK.instant(),
                            "Small House",
                            "UTC",
                            house.book(),
                            cabinets,
                            List.of(reference),
                            baselines,
                            LimitSet.initial(),
                            List.of(list),
                            List.of(),
                            List.of(),
                            List.of(),
                            null,
                            List.of()),
                    List.of());
        }
    }

    private Baseline swept(PracticeRig rig, AssetTag tag, CurveCorrection correction) throws RigException {
        for (int push = 0; push < 3; push++) {
            rig.plug(tag, point.code());
        }
        Capture capture = rig.play(gate.sweep(point, rig.sampleRateHz()), point.kind(), share -> {});
        SweepAnalysis analysis = gate.analyse(capture);
        return new Baseline(
                tag,
                point.code(),
                CLOCK.instant(),
                capture.header().ambientCelsius(),
                correction.correct(analysis.impedance()),
                analysis.acoustic());
    }

    private DockState await(Predicate<DockState> wanted) throws InterruptedException {
        DockState state = states.poll(PATIENCE_S, TimeUnit.SECONDS);
        while (state != null && !wanted.test(state)) {
            state = states.poll(PATIENCE_S, TimeUnit.SECONDS);
        }
        assertThat(state).as("awaited state").isNotNull();
        return state;
    }

    private Route checkIn(Dock dock, AssetTag tag) throws InterruptedException {
        states.clear();
        dock.scan(tag.value());
        DockState scanned = await(s -> s.phase() == Phase.LOOK
                || s.notice()
                        .filter(n -> n.actions().contains(NoticeAction.CHECK_IN_AGAIN))
                        .isPresent());
        if (scanned.phase() != Phase.LOOK) {
            dock.notice(NoticeAction.CHECK_IN_AGAIN);
            await(s -> s.phase() == Phase.LOOK);
        }
        dock.lookedOver(Set.of());
        return await(s -> s.answer().filter(a -> a.route().isPresent()).isPresent())
                .answer()
                .orElseThrow()
                .route()
                .orElseThrow();
    }

    @Test
    void warnsThatThePlugIsWornWhileEveryCabinetIsJudgedAsBefore()
            throws IOException, RigException, InterruptedException {
        List<CabinetBody> dozen = units.stream()
                .filter(c -> !house.referenceUnits().contains(c.tag()))
                .limit(PlugTrend.LAST)
                .toList();
        try (RigStation station = RigStation.open(folder.resolve("rigs"), "virtual", WEARS, () -> "Ines", CLOCK);
                Spool spool = Spool.open(folder.resolve("spool"), CLOCK)) {
            station.practise(gate, ZoneOffset.UTC);
            RigStanding first = station.standings(ZoneOffset.UTC).get();
            LocalFleet fleet = commissioned(dozen, first.correction());
            DockParts parts = new DockParts(
                    spool,
                    station.rig(),
                    Lead.of(station.rig()),
                    station.standings(ZoneOffset.UTC),
                    gate,
                    new RecordingKeeper(folder.resolve("recordings")),
                    mock(Papers.class),
                    Link.NONE,
                    CLOCK,
                    new DockSettings("kiosk-1", 1, "Ines", Locale.ENGLISH, Duration.ZERO),
                    station.book()::append);
            try (Dock dock = new Dock(parts, fleet);
                    RigDesk desk = station.desk(ZoneOffset.UTC, StudyCabinet.Finder.NONE)) {
                dock.addListener(states::add);
                List<Route> before = new ArrayList<>();
                for (CabinetBody cabinet : dozen) {
                    before.add(checkIn(dock, cabinet.tag()));
                }
                assertThat(before).containsOnly(Route.SHELF);
                assertThat(station.standings(ZoneOffset.UTC).get().state()).isEqualTo(ReadingState.OK);

                List<Route> after = new ArrayList<>();
                for (CabinetBody cabinet : dozen) {
                    after.add(checkIn(dock, cabinet.tag()));
                }

                assertThat(after).isEqualTo(before);
                // The last plug-in is kept while the answer is already shown.
                await(s -> s.strip().rig().key().equals("dock-rig-plug-worn"));
                assertThat(station.book().all(RigEntry.PlugIn.class))
                        .hasSize(2 * PlugTrend.LAST)
                        .allSatisfy(p -> assertThat(p.contacts()).isEqualTo(point.contacts()))
                        .allSatisfy(p -> assertThat(p.operator()).isEqualTo("Ines"));
                assertThat(station.standings(ZoneOffset.UTC).get().maySweep()).isTrue();
                assertThat(onTheRigPage(desk)).contains("the dock's plug");
            }
        }
    }

    private static String onTheRigPage(RigDesk desk) throws InterruptedException {
        LinkedBlockingQueue<org.docksweep.kiosk.rig.RigDeskState> seen = new LinkedBlockingQueue<>();
        desk.addListener(seen::add);
        desk.look();
        PlugTrend trend = Optional.ofNullable(seen.poll(PATIENCE_S, TimeUnit.SECONDS))
                .orElseThrow()
                .plugs()
                .get(0);
        assertThat(trend.worn()).isTrue();
        return Reasons.text(trend.words(), Locale.ENGLISH);
    }

    @Test
    void goesOnWithTheCheckInWhenTheBookCannotBeWritten() throws InterruptedException {
        try (DockBench bench = new DockBench(folder, true, Duration.ZERO, SmallHouse.fleet(), plugIn -> {
            throw new IOException("disk full");
        })) {
            bench.gate.passWithContact(0.07);
            assertThat(bench.checkIn(SmallHouse.FIRST).answer().orElseThrow().route())
                    .contains(Route.SHELF);
            DockState state = bench.notice("dock-plug-not-kept");
            assertThat(Reasons.text(state.notice().orElseThrow().text(), Locale.ENGLISH))
                    .contains("disk full");
        }
    }

    @Test
    void keepsOnePlugInOfEveryPointThatPassedAndNoneOfOthers() throws InterruptedException {
        LinkedBlockingQueue<RigEntry.PlugIn> kept = new LinkedBlockingQueue<>();
        try (DockBench bench = new DockBench(folder, true, Duration.ZERO, SmallHouse.fleet(), kept::add)) {
            bench.gate.fail();
            bench.checkIn(SmallHouse.FIRST);
            bench.gate.pass();
            bench.checkIn(SmallHouse.SECOND);
            bench.gate.passWithContact(0.07);
            bench.dock.notice(NoticeAction.DISMISS);
            bench.dock.scan(SmallHouse.SECOND.value());
            bench.notice("dock-already-checked-in");
            bench.dock.notice(NoticeAction.CHECK_IN_AGAIN);
            bench.await("the visual list", s -> s.phase() == Phase.LOOK);
            bench.dock.lookedOver(Set.of());

            RigEntry.PlugIn only = kept.poll(PATIENCE_S, TimeUnit.SECONDS);
            assertThat(only).isNotNull();
            assertThat(only.tag()).isEqualTo(SmallHouse.SECOND);
            assertThat(only.ohm()).isEqualTo(0.07);
            assertThat(only.at()).isEqualTo(CLOCK.instant());
            bench.answer(SmallHouse.SECOND);
            assertThat(kept).isEmpty();
        }
    }

    @Test
    void asksForTheLeadWhenCabinetAfterCabinetFailsForContact() throws InterruptedException {
        try (DockBench bench = new DockBench(folder, true, Duration.ZERO, SmallHouse.fleet(), PlugLog.NONE)) {
            bench.gate.failByContact();
            assertThat(bench.checkIn(SmallHouse.FIRST).notice()).isEmpty();
            bench.gate.failByContact();
            DockState second = bench.checkIn(SmallHouse.SECOND);
            assertThat(second.answer().orElseThrow().route()).contains(Route.BENCH);
            assertThat(second.notice().orElseThrow().text().key()).isEqualTo("dock-lead-changed");

            bench.gate.pass().pass();
            assertThat(bench.checkIn(SmallHouse.BIAMPED).notice()).isEmpty();
        }
    }

    @Test
    void blamesNoLeadForOneBadSocketSweptTwice() throws InterruptedException {
        try (DockBench bench = new DockBench(folder, true, Duration.ZERO, SmallHouse.fleet(), PlugLog.NONE)) {
            bench.gate.failByContact().failByContact();
            bench.checkIn(SmallHouse.FIRST);
            bench.dock.scan(SmallHouse.FIRST.value());
            bench.notice("dock-already-checked-in");
            bench.dock.notice(NoticeAction.CHECK_IN_AGAIN);
            bench.await("the visual list", s -> s.phase() == Phase.LOOK);
            bench.dock.lookedOver(Set.of());
            assertThat(bench.answer(SmallHouse.FIRST).notice()).isEmpty();
        }
    }
}
