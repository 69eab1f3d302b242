package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlans;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigStationTest {
    private static final Map<String, String> SETTINGS =
            Map.of("voltsPerFullScale", "10", "voltageFullScale", "20", "currentFullScale", "3.2");

    @TempDir
    private Path folder;

    private final SteppingClock clock = new SteppingClock();

    private RigStation open(String name, Map<String, String> settings) throws RigException, IOException {
        return RigStation.open(folder, name, settings, () -> "A. Person", clock);
    }

    @Test
    void opensAnAudioRigThatNobodySetUpAndRefusesToMeasure() throws Exception {
        try (RigStation station = open("audio", Map.of());
                RigDesk desk = station.desk(ZoneOffset.UTC, StudyCabinet.Finder.NONE)) {
            assertThatExceptionOfType(RigException.class)
                    .isThrownBy(() -> station.rig()
                            .play(
                                    SweepPlans.dock(StandardSet.testPoint(8), 48_000),
                                    TestPointKind.TERMINALS,
                                    share -> {}))
                    .satisfies(e -> assertThat(e.reason().key()).isEqualTo("rigpage-not-set-up"));
            LinkedBlockingQueue<RigDeskState> states = new LinkedBlockingQueue<>();
            desk.addListener(states::add);
            desk.calibrate();
            RigDeskState state = states.poll(30, TimeUnit.SECONDS);
            assertThat(state.mode()).isEqualTo(RigDeskState.Mode.OVERVIEW);
            assertThat(state.message().orElseThrow().words().key()).isEqualTo("rigpage-not-set-up");
            assertThat(state.canSetUp()).isTrue();
        }
    }

    @Test
    void keepsTheSettingsOfACommandLineForTheNextStart() throws Exception {
        try (RigStation station = open("audio", SETTINGS)) {
            assertThat(station.book().all(RigEntry.SetUp.class)).hasSize(1);
        }
        try (RigStation again = open("audio", Map.of())) {
            assertThat(again.book().all(RigEntry.SetUp.class)).hasSize(1);
            assertThat(again.rig().id()).isEqualTo("audio");
        }
        try (RigStation same = open("audio", SETTINGS)) {
            assertThat(same.book().all(RigEntry.SetUp.class)).hasSize(1);
        }
    }

    @Test
    void storesNothingThatTheRigRefused() throws Exception {
        assertThatExceptionOfType(RigException.class)
                .isThrownBy(() -> open("audio", Map.of("voltsPerFullScale", "loud")));

        try (RigStation station = open("audio", Map.of())) {
            assertThat(station.book().entries()).isEmpty();
        }
    }

    @Test
    void calibratesAPracticeRigOnceAndStartsWithThatAfterwards() throws Exception {
        List<RigEntry> first;
        try (RigStation station = open("virtual", Map.of())) {
            station.practise(new RealGate(), ZoneOffset.UTC);
            first = station.book().entries();
            assertThat(first).hasSize(3);
            assertThat(station.standings(ZoneOffset.UTC).get().maySweep()).isTrue();
            assertThat(station.standings(ZoneOffset.UTC).get().microphoneDoubt())
                    .isEmpty();
        }
        try (RigStation again = open("virtual", Map.of())) {
            again.practise(new RealGate(), ZoneOffset.UTC);
            assertThat(again.book().entries()).isEqualTo(first);
        }
    }
}
