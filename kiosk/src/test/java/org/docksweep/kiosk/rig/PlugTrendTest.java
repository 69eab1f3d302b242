package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.ReadingState;
import org.docksweep.rigcal.RigCalibration;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The dock's plug by the curves of cabinets, as the book of the rig has them. */
class PlugTrendTest {
    /** Plugs and sockets of one dock differ by about so much from push to push (virtual rig: 0.03 to 0.15 ohm). */
    private static final double SCATTER_OHM = 0.035;

    @TempDir
    private Path folder;

    private final SteppingClock clock = new SteppingClock();
    private final Random random = new Random(6);
    private RigBook book;
    private int cabinets;

    @BeforeEach
    void opens() throws IOException {
        book = RigBook.open(folder, "audio");
        calibrate();
    }

    @AfterEach
    void closes() throws IOException {
        book.close();
    }

    private void calibrate() throws IOException {
        RigCalibration calibration = new RigCalibration(
                "audio", clock.instant(), List.of(new RigCalibration.Point(1000, 2, 0, 0, 0, 0, 0, 0.001, 0)));
        book.append(new RigEntry.Calibrated(clock.instant(), "A. Person", 10, calibration));
        book.append(new RigEntry.Checked(
                clock.instant(), "A. Person", List.of(new CheckReading("4.7 \u03a9", 0, 0.001, 1000, 0.005))));
    }

    private void plug(String tag, double ohm) throws IOException {
        clock.pass(Duration.ofMinutes(1));
        book.append(new RigEntry.PlugIn(clock.instant(), "A. Person", new AssetTag(tag), "IN", "1+ / 1-", ohm, 0.02));
    }

    private void plugMany(int count, double wornOhm) throws IOException {
        for (int i = 0; i < count; i++) {
            cabinets++;
            plug(
                    String.format(Locale.ROOT, "TST-%06d", cabinets),
                    0.09 + SCATTER_OHM * random.nextGaussian() + wornOhm);
        }
    }

    private PlugTrend trend() {
        return PlugTrend.of(book).get(0);
    }

    private String standing() {
        return new RigStandings(book, clock, ZoneOffset.UTC).get().words().key();
    }

    private void assertSteady() {
        assertThat(trend().worn()).isFalse();
        assertThat(standing()).isEqualTo("dock-rig-passed");
    }

    @Test
    void waitsForEnoughCabinets() throws IOException {
        plugMany(23, 0);

        assertThat(trend().words().key()).isEqualTo("rigpage-plug-few");
        plugMany(1, 0);
        assertThat(trend().words().key()).isEqualTo("rigpage-plug-steady");
        assertSteady();
    }

    @Test
    void saysThatThePlugIsWornWhenAllCabinetsFindMore() throws IOException {
        plugMany(30, 0);
        plugMany(PlugTrend.LAST, 0.1);

        PlugTrend.Rise rise = trend().rise();
        assertThat(rise.ohm()).isCloseTo(0.1, within(3 * rise.standardUncertaintyOhm()));
        assertThat(trend().worn()).isTrue();
        assertThat(standing()).isEqualTo("dock-rig-plug-worn");
        RigStanding now = new RigStandings(book, clock, ZoneOffset.UTC).get();
        assertThat(now.state()).isEqualTo(ReadingState.WATCH);
        assertThat(now.maySweep()).isTrue();
        for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(Reasons.text(trend().words(), locale))
                    .contains("1+ / 1-")
                    .contains("m\u03a9")
                    .doesNotContain("{");
        }
    }

    @Test
    void isNotAlarmedByOneCabinetWithABadSocketHoweverOftenItComes() throws IOException {
        plugMany(30, 0);
        for (int i = 0; i < 40; i++) {
            plug("TST-000777", 0.4);
        }
        plugMany(4, 0);
        for (int i = 0; i < 5; i++) {
            plug("TST-000777", 0.45);
        }

        assertSteady();
    }

    @Test
    void seldomCriesWolfOverAThousandGoodWeeks() throws IOException {
        int alarms = 0;
        for (int week = 0; week < 1000; week++) {
            List<RigEntry.PlugIn> plugIns = java.util.stream.IntStream.range(0, 60)
                    .mapToObj(i -> new RigEntry.PlugIn(
                            clock.instant(),
                            "A. Person",
                            new AssetTag(String.format(Locale.ROOT, "TST-%06d", i)),
                            "IN",
                            "1+ / 1-",
                            0.09 + SCATTER_OHM * random.nextGaussian(),
                            0.02))
                    .toList();
            alarms += new PlugTrend("1+ / 1-", plugIns).worn() ? 1 : 0;
        }

        // Three standard uncertainties, one-sided, of a normal value: 1.3 in 1,000; the spread itself is estimated.
        assertThat(alarms).isLessThanOrEqualTo(8);
    }

    @Test
    void beginsAnewWithACalibrationWhichTakesThePlugAsItIs() throws IOException {
        plugMany(30, 0);
        plugMany(12, 0.2);
        assertThat(trend().worn()).isTrue();

        calibrate();

        assertThat(PlugTrend.of(book)).isEmpty();
        assertThat(standing()).isEqualTo("dock-rig-passed");
    }
}
