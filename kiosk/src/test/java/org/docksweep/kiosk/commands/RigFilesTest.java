package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.docksweep.contract.DemoHouse;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tools.jackson.databind.json.JsonMapper;

/** From the rig to a verdict with nothing but files: render, calibrate, curve, teach, judge. */
class RigFilesTest {
    private static final long SEED = 2;
    /** Promised for cabinets, and so for a check standard. */
    private static final double PROMISED = 0.005;

    private static final double CHECK_OHM = 4.7;

    @TempDir
    Path folder;

    @Test
    void calibratesFromThreeRecordingsSoThatACheckStandardReadsItsValue() {
        Path calibration = calibration();
        render("STD-000004", "check.wav", "at-return");
        assertThat(worstShare(curve(calibration), CHECK_OHM)).isLessThan(PROMISED);
        // The raw rig is off by gain and cable, so it was the calibration that did it.
        assertThat(worstShare(curve(null), CHECK_OHM)).isGreaterThan(PROMISED);
    }

    @Test
    void refusesStandardsThatAreExchanged() {
        calibration();
        assertThat(calibrate("load.wav", "short.wav", "open.wav").exitCode()).isEqualTo(1);
        assertThat(calibrate("load.wav", "short.wav", "open.wav").err()).contains("load.wav", "should be open");
        assertThat(calibrate("open.wav", "open.wav", "load.wav").err()).contains("open.wav", "should be shorted");
        assertThat(calibrate("open.wav", "short.wav", "open.wav").err()).contains("open.wav", "should be plugged");
    }

    @Test
    void teachesAReferenceAndJudgesByIt() throws IOException {
        DemoHouse house = ReplaySet.house();
        String unit = house.cabinets().stream()
                .filter(c -> c.modelCode().equals("DUNE15B")
                        && house.referenceUnits().contains(c.tag()))
                .findFirst()
                .orElseThrow()
                .tag()
                .value();
        JsonFiles.write(folder.resolve("models.json"), house.book());
        String point = house.book().cabinetModel("DUNE15B").testPoints().get(0).code();
        assertThat(CommandRun.of(
                                "render",
                                unit,
                                folder.resolve("unit.wav"),
                                "--seed",
                                ReplaySet.SEED,
                                "--moment",
                                "before-hire")
                        .exitCode())
                .isZero();
        Files.writeString(
                folder.resolve("recordings.csv"),
                "cabinet,model,test_point,file\n" + unit + ",DUNE15B," + point + ",unit.wav\n");
        Path references = folder.resolve("references.json");
        CommandRun taught =
                CommandRun.of("teach", folder, "--models", folder.resolve("models.json"), "--output", references);
        assertThat(taught.exitCode()).as(taught.err()).isZero();
        assertThat(taught.out()).isEqualToNormalizingNewlines("DUNE15B " + point + ": 1 units\n");
        // Drawn, then erased.
        assertThat(taught.err()).contains("[", "1/2").endsWith(" \r");
        CommandRun judged = CommandRun.of(
                "judge", folder, "-q", "--models", folder.resolve("models.json"), "--references", references);
        assertThat(judged.err()).isEmpty();
        assertThat(judged.out().lines().toList().get(1)).startsWith(unit + ",PASS,NONE,");

        // a microphone that was not proved neither judges nor teaches
        CommandRun current = CommandRun.of(
                "judge",
                folder,
                "-q",
                "--unproved-microphone",
                "--models",
                folder.resolve("models.json"),
                "--references",
                references);
        assertThat(current.out().lines().toList().get(1))
                .startsWith(unit + ",PASS,NONE,")
                .contains("current")
                .isNotEqualTo(judged.out().lines().toList().get(1));
        assertThat(soundPoints(references)).isGreaterThan(1);
        CommandRun again = CommandRun.of(
                "teach",
                folder,
                "-q",
                "--unproved-microphone",
                "--models",
                folder.resolve("models.json"),
                "--output",
                references);
        assertThat(again.exitCode()).as(again.err()).isZero();
        assertThat(soundPoints(references)).isZero();
    }

    /** Points of the sound of the first reference of a file. */
    private static int soundPoints(Path references) throws IOException {
        return JsonMapper.builder()
                .build()
                .readTree(references.toFile())
                .get(0)
                .get("acousticFrequencyHz")
                .size();
    }

    @Test
    void rendersTheSameBytesAgainAndSaysNothingOfTheTruth() throws IOException {
        DemoHouse house = ReplaySet.house();
        DemoHouse.Arrival faulty = house.arrivals().stream()
                .filter(a -> a.truth().kind() == DemoHouse.Kind.HARD_FAULT)
                .findFirst()
                .orElseThrow();
        byte[][] files = new byte[4][];
        for (int i = 0; i < 2; i++) {
            Path wav = folder.resolve("r" + i + ".wav");
            CommandRun run = CommandRun.of(
                    "render",
                    faulty.label(),
                    wav,
                    "--seed",
                    ReplaySet.SEED,
                    "--captured-at",
                    "2026-05-01T01:23:45Z",
                    "--samples",
                    "int_24");
            assertThat(run.exitCode()).as(run.err()).isZero();
            files[i] = Files.readAllBytes(wav);
            files[2 + i] = Files.readAllBytes(folder.resolve("r" + i + ".json"));
        }
        assertThat(files[1]).isEqualTo(files[0]);
        assertThat(files[3]).isEqualTo(files[2]);
        String model = house.cabinets().stream()
                .filter(c -> c.tag().equals(faulty.label()))
                .findFirst()
                .orElseThrow()
                .modelCode();
        String all =
                new String(files[0], StandardCharsets.ISO_8859_1) + new String(files[2], StandardCharsets.ISO_8859_1);
        assertThat(all)
                .doesNotContain(faulty.label().value(), model, faulty.truth().words())
                .doesNotContainIgnoringCase("fault", "healthy", "truth", "position");
    }

    private Path calibration() {
        render("STD-000001", "open.wav", "at-return");
        render("STD-000002", "short.wav", "at-return");
        render("STD-000003", "load.wav", "at-return");
        CommandRun run = calibrate("open.wav", "short.wav", "load.wav");
        assertThat(run.exitCode()).as(run.err()).isZero();
        return folder.resolve("made.json");
    }

    private CommandRun calibrate(String open, String shorted, String load) {
        return CommandRun.of(
                "calibrate",
                "--open",
                folder.resolve(open),
                "--short",
                folder.resolve(shorted),
                "--load",
                folder.resolve(load),
                "--load-ohm",
                10,
                "-o",
                folder.resolve("made.json"));
    }

    private void render(String label, String file, String moment) {
        CommandRun run = CommandRun.of("render", label, folder.resolve(file), "--seed", SEED, "--moment", moment);
        assertThat(run.exitCode()).as(run.err()).isZero();
    }

    private List<String> curve(Path calibration) {
        Path wav = folder.resolve("check.wav");
        CommandRun run = calibration == null
                ? CommandRun.of("curve", wav)
                : CommandRun.of("curve", wav, "--calibration", calibration);
        assertThat(run.exitCode()).as(run.err()).isZero();
        return run.out().lines().skip(1).toList();
    }

    private static double worstShare(List<String> curve, double ohm) {
        double worst = 0;
        for (String line : curve) {
            double magnitudeOhm = Double.parseDouble(line.split(",")[3]);
            worst = Math.max(worst, Math.abs(magnitudeOhm / ohm - 1));
        }
        assertThat(worst).isNotCloseTo(0, within(1e-12));
        return worst;
    }
}
