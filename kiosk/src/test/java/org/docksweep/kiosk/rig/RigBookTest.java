package org.docksweep.kiosk.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIOException;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.docksweep.fleet.AssetTag;
import org.docksweep.rigcal.RepeatabilityStudy;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.rigcal.RigStudy;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RigBookTest {
    private static final Instant NOON = Instant.parse("2026-05-08T12:00:00Z");

    @TempDir
    private Path folder;

    private static RigEntry.Calibrated calibrated(Instant at) {
        RigCalibration calibration = new RigCalibration(
                "audio", at, List.of(new RigCalibration.Point(1000, 1.02, 0.001, -0.15, 0, 1e-6, 0, 0.001, 0.0002)));
        return new RigEntry.Calibrated(at, "A. Person", 10, calibration);
    }

    private static RigEntry.SetUp setUp(String rate, String loadOhm) {
        return new RigEntry.SetUp(NOON, "A. Person", Map.of("sampleRateHz", rate, "standard.loadOhm", loadOhm));
    }

    private static RigEntry.Checked checked(double worst) {
        return new RigEntry.Checked(
                NOON, "A. Person", List.of(new CheckReading("4.7 \u03a9", -0.0003, worst, 19_500, 0.005)));
    }

    @Test
    void readsBackEveryKindOfEntryAfterARestart() throws IOException {
        List<RigEntry> written = List.of(
                setUp("48000", "10"),
                calibrated(NOON),
                checked(0.001),
                new RigEntry.Contact(NOON, "A. Person", "1+ / 1-", -0.0004),
                new RigEntry.CommonMode(NOON, "A. Person", -71.3),
                new RigEntry.PlugIn(NOON, "A. Person", new AssetTag("TST-000001"), "IN", "1+ / 1-", 0.0812, 0.019),
                studied());
        try (RigBook book = RigBook.open(folder, "audio")) {
            for (RigEntry entry : written) {
                book.append(entry);
            }
        }

        try (RigBook again = RigBook.open(folder, "audio")) {
            assertThat(again.entries()).isEqualTo(written);
            assertThat(again.damagedLines()).isZero();
        }
    }

    private static RigEntry.Studied studied() {
        RepeatabilityStudy contact =
                RepeatabilityStudy.of(new double[][][] {{{1, 1.1}, {1.3, 1.2}}, {{2, 2.3}, {2, 2.2}}});
        return new RigEntry.Studied(
                NOON,
                "A. Person",
                List.of("4.7 \u03a9", "TST-000001"),
                new RigStudy(contact, contact, null, 2, 2, 2, new RigRepeatability(0.001, 0.01, 0, 2)));
    }

    @Test
    void keepsAStudyInForceOverACalibrationButNotOverAnotherRig() throws IOException {
        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(setUp("48000", "10"));
            book.append(studied());
            book.append(calibrated(NOON));
            assertThat(book.studyInForce()).contains(studied());

            book.append(setUp("48000", "8.2"));
            assertThat(book.studyInForce()).contains(studied());

            book.append(setUp("96000", "8.2"));
            assertThat(book.studyInForce()).isEmpty();
        }
    }

    @Test
    void isOnTheDiskWhenAppendHasReturned() throws IOException {
        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(calibrated(NOON));

            // Read while the book is still open, as a power cut would leave it.
            assertThat(Files.readString(book.file())).contains(" calibration ").endsWith("\n");
        }
    }

    @Test
    void passesOverALineTornByAPowerCutAndGoesOn() throws IOException {
        Path file;
        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(calibrated(NOON));
            book.append(checked(0.001));
            file = book.file();
        }
        byte[] whole = Files.readAllBytes(file);
        for (int cut = whole.length - 2; cut > whole.length - 60; cut -= 7) {
            Files.write(file, java.util.Arrays.copyOf(whole, cut));
            try (RigBook torn = RigBook.open(folder, "audio")) {
                assertThat(torn.damagedLines()).isEqualTo(1);
                assertThat(torn.entries()).containsExactly(calibrated(NOON));
                torn.append(checked(0.002));
            }
            try (RigBook after = RigBook.open(folder, "audio")) {
                assertThat(after.entries()).containsExactly(calibrated(NOON), checked(0.002));
            }
        }
    }

    @Test
    void noticesAFigureThatWasChanged() throws IOException {
        Path file;
        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(checked(0.009));
            file = book.file();
        }
        Files.writeString(file, Files.readString(file).replace("0.009", "0.001"));

        try (RigBook book = RigBook.open(folder, "audio")) {
            assertThat(book.entries()).isEmpty();
            assertThat(book.damagedLines()).isEqualTo(1);
        }
    }

    @Test
    void leavesEverythingThatWasWrittenWhereItIs() throws IOException {
        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(checked(0.001));
            Files.writeString(book.file(), "nonsense\n", StandardCharsets.UTF_8, StandardOpenOption.APPEND);
        }
        String before = Files.readString(folder.resolve("audio.rigbook"));

        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(checked(0.002));

            assertThat(Files.readString(book.file())).startsWith(before);
            assertThat(book.damagedLines()).isEqualTo(1);
        }
    }

    @Test
    void isOpenOnceAtATime() throws IOException {
        try (RigBook book = RigBook.open(folder, "audio")) {
            assertThatIOException()
                    .isThrownBy(() -> RigBook.open(folder, "audio"))
                    .withMessageContaining("in use by another kiosk")
                    .withMessageContaining(book.file().toString());
        }
    }

    @Test
    void keepsRigsApartWhateverTheirNames() throws IOException {
        try (RigBook one = RigBook.open(folder, "../dock 1");
                RigBook other = RigBook.open(folder, "../dock_1")) {
            assertThat(one.file()).isNotEqualTo(other.file()).hasParent(folder);
        }
    }

    @Test
    void forgetsACalibrationWhenTheRigIsSetUpOtherwise() throws IOException {
        try (RigBook book = RigBook.open(folder, "audio")) {
            book.append(setUp("48000", "10"));
            book.append(calibrated(NOON));
            book.append(setUp("48000", "8.2"));
            assertThat(book.calibrationInForce()).contains(calibrated(NOON));

            book.append(setUp("96000", "8.2"));
            assertThat(book.calibrationInForce()).isEmpty();
        }
    }
}
