package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.acoustic.MicrophoneReading;
import org.docksweep.fleet.AssetTag;
import org.docksweep.gate.ReadingState;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.ImpedanceCurve;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigStandingsTest {
    @TempDir
    private Path folder;

    private final SteppingClock clock = new SteppingClock();
    private RigBook book;
    private RigStandings standings;

    @BeforeEach
    void opens() throws IOException {
        book = RigBook.open(folder, "audio");
        standings = new RigStandings(book, clock, ZoneOffset.UTC);
    }

    @AfterEach
    void closes() throws IOException {
        book.close();
    }

    private void calibrate() throws IOException {
        RigCalibration calibration = new RigCalibration(
                "audio", clock.instant(), List.of(new RigCalibration.Point(1000, 2, 0, 0, 0, 0, 0, 0.001, 0)));
        book.append(new RigEntry.Calibrated(clock.instant(), "A. Person", 10, calibration));
    }

    private void check(double mean, double worst) throws IOException {
        book.append(new RigEntry.Checked(
                clock.instant(), "A. Person", List.of(new CheckReading("4.7 \u03a9", mean, worst, 1000, 0.005))));
    }

    private void accept() throws IOException {
        book.append(new RigEntry.SoundAccepted(
                clock.instant(),
                "A. Person",
                new AssetTag("MCH-000417"),
                new MicrophoneReading(0.003, List.of(new MicrophoneReading.Band(1000, 10, -40, 8)))));
    }

    private void hear(double gainDb, MicrophoneCheck.Fault fault) throws IOException {
        book.append(new RigEntry.SoundChecked(
                clock.instant(),
                "A. Person",
                new AssetTag("MCH-000417"),
                new MicrophoneCheck(gainDb, 0, 0, 0, 0, fault)));
    }

    private void assertDoubted(String doubt, String strip) {
        RigStanding standing = standings.get();
        assertThat(standing.maySweep()).isTrue();
        assertThat(standing.state()).isEqualTo(ReadingState.WATCH);
        assertThat(standing.words().key()).isEqualTo(strip);
        assertThat(standing.microphoneDoubt().orElseThrow().key()).isEqualTo(doubt);
    }

    @Test
    void saysThatAMicrophoneIsNotProvedWhereOneIsSetUp() throws IOException {
        calibrate();
        check(0, 0.001);
        assertThat(standings.get().state()).isEqualTo(ReadingState.OK);
        assertThat(standings.get().microphoneDoubt().orElseThrow().key()).isEqualTo("mic-not-accepted");

        book.append(new RigEntry.SetUp(clock.instant(), "A. Person", Map.of(SetUpField.INPUT_3.key(), "microphone")));
        calibrate();
        check(0, 0.001);

        assertDoubted("mic-not-accepted", "dock-mic-not-accepted");
    }

    @Test
    void provesTheMicrophoneForAShiftUnlessItsCheckFails() throws IOException {
        calibrate();
        check(0, 0.001);
        accept();
        assertThat(standings.get().microphoneDoubt()).isEmpty();

        hear(4, MicrophoneCheck.Fault.GAIN);
        assertDoubted("mic-failed", "dock-mic-failed");
        hear(0.1, MicrophoneCheck.Fault.NONE);
        assertThat(standings.get().microphoneDoubt()).isEmpty();
        assertThat(standings.get().state()).isEqualTo(ReadingState.OK);

        clock.pass(Duration.ofHours(12).plusSeconds(1));
        check(0, 0.001);
        assertDoubted("mic-old", "dock-mic-old");
        // What was accepted is another check of its own.
        accept();
        assertThat(standings.get().microphoneDoubt()).isEmpty();
    }

    @Test
    void acceptsNothingOverAnotherSetUp() throws IOException {
        calibrate();
        accept();
        book.append(
                new RigEntry.SetUp(clock.instant(), "A. Person", Map.of(SetUpField.MICROPHONE_PASCALS.key(), "20")));
        calibrate();
        check(0, 0.001);

        assertThat(standings.get().microphoneDoubt().orElseThrow().key()).isEqualTo("mic-not-accepted");
    }

    @Test
    void warnsWhenTheMicrophoneLeavesItsControlLimitsButGoesOn() throws IOException {
        calibrate();
        check(0, 0.001);
        accept();
        for (int i = 0; i < 20; i++) {
            hear(0.05 * (i % 2), MicrophoneCheck.Fault.NONE);
        }
        assertThat(standings.get().state()).isEqualTo(ReadingState.OK);

        hear(0.8, MicrophoneCheck.Fault.NONE);

        assertThat(standings.get().words().key()).isEqualTo("dock-mic-drifts");
        assertThat(standings.get().microphoneDoubt()).isEmpty();
    }

    private void assertShut(String words, String refusal) {
        RigStanding standing = standings.get();
        assertThat(standing.maySweep()).isFalse();
        assertThat(standing.words().key()).isEqualTo(words);
        assertThat(standing.refusal().key()).isEqualTo(refusal);
    }

    @Test
    void isShutWithoutACalibration() {
        assertShut("dock-rig-not-calibrated", "dock-rig-calibrate-first");
    }

    @Test
    void isShutUntilTheCalibrationWasChecked() throws IOException {
        calibrate();
        check(0, 0.001);
        clock.pass(Duration.ofHours(1));
        calibrate();

        assertShut("dock-rig-not-checked", "dock-rig-check-first");
    }

    @Test
    void opensWithAPassedCheckAndCorrectsCurves() throws IOException {
        calibrate();
        check(0, 0.005);

        RigStanding standing = standings.get();
        assertThat(standing.state()).isEqualTo(ReadingState.OK);
        ImpedanceCurve raw =
                new ImpedanceCurve(new double[] {900, 1100}, new double[] {4, 4}, new double[2], new double[2]);
        assertThat(standing.correction().correct(raw).resistanceOhm()).containsExactly(8, 8);
    }

    @Test
    void shutsWhenTheNewestCheckFailedAndOpensWithTheNextGoodOne() throws IOException {
        calibrate();
        check(0, 0.001);
        check(0.004, 0.0051);
        assertShut("dock-rig-failed", "dock-rig-check-failed");

        check(0, 0.001);
        assertThat(standings.get().maySweep()).isTrue();
    }

    @Test
    void shutsAfterAShiftAndSaysAnHourBefore() throws IOException {
        calibrate();
        check(0, 0.001);
        clock.pass(Duration.ofHours(11).plusMinutes(1));
        assertThat(standings.get().words().key()).isEqualTo("dock-rig-check-due");
        assertThat(standings.get().words().arguments()).containsExactly("07:00");
        assertThat(standings.get().maySweep()).isTrue();

        clock.pass(Duration.ofMinutes(59));
        assertThat(standings.get().maySweep()).isTrue();
        clock.pass(Duration.ofSeconds(1));
        assertShut("dock-rig-check-old", "dock-rig-check-again");
    }

    @Test
    void trustsNoCheckFromTheFuture() throws IOException {
        calibrate();
        check(0, 0.001);
        clock.pass(Duration.ofHours(-1));

        assertShut("dock-rig-check-old", "dock-rig-check-again");
    }

    @Test
    void warnsWhenAStandardLeavesItsControlLimitsButGoesOn() throws IOException {
        calibrate();
        for (int i = 0; i < 20; i++) {
            check(0.0002 * (i % 2), 0.001);
        }
        assertThat(standings.get().state()).isEqualTo(ReadingState.OK);

        check(0.0030, 0.0035);
        assertThat(standings.get().words().key()).isEqualTo("dock-rig-drifts");
        assertThat(standings.get().maySweep()).isTrue();
    }
}
