package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
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
