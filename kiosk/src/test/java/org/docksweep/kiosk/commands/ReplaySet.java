package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPoint;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;
import org.docksweep.sweep.SweepSignal;
import org.docksweep.sweep.WavFormat;

/**
 * The committed recordings and what is needed to judge them: one 24-bit capture each of a healthy cabinet, one whose HF
 * driver is open, a shorted plug, a clipped capture and an open plug. Made again only on purpose, because a verdict
 * that moves must be seen: {@code mvn test -pl kiosk -am -Dtest=ReplayTest -Ddocksweep.replay.write=recordings}.
 */
final class ReplaySet {
    static final Path FOLDER = Path.of("src/test/resources/org/docksweep/kiosk/commands/replay");
    static final long SEED = 1;
    static final String MODEL = "SPIN12";

    /** The second sweep and the hall's sound would triple the size. */
    private static final double PRE_ROLL_S = 0.3;

    private static final double SWEEP_S = 0.8;
    private static final double TAIL_S = 0.5;
    private static final int REFERENCE_UNITS = 4;

    private final Path folder;
    private final DemoHouse house = house();

    ReplaySet(Path folder) {
        this.folder = folder;
    }

    /** The command that judges the set; what it prints is the verdict table. */
    static String[] command(Path into) {
        return new String[] {
            "judge",
            FOLDER.toString(),
            "--quiet",
            "--models",
            FOLDER.resolve("models.json").toString(),
            "--references",
            FOLDER.resolve("references.json").toString(),
            "--readings",
            into.resolve("readings.csv").toString(),
            "--json",
            into.resolve("judgements.json").toString()
        };
    }

    /** Compares byte for byte, and names the first line that differs. */
    static void assertSame(Path made, String where) throws IOException {
        for (String file : new String[] {"verdicts.csv", "readings.csv", "judgements.json"}) {
            List<String> expected = Files.readAllLines(FOLDER.resolve(file));
            List<String> actual = Files.readAllLines(made.resolve(file));
            for (int i = 0; i < Math.min(expected.size(), actual.size()); i++) {
                assertThat(actual.get(i))
                        .as("%s, line %d, on %s", file, i + 1, where)
                        .isEqualTo(expected.get(i));
            }
            assertThat(Files.readAllBytes(made.resolve(file)).length)
                    .as("bytes of %s on %s", file, where)
                    .isEqualTo(Files.readAllBytes(FOLDER.resolve(file)).length);
        }
    }

    static DemoHouse house() {
        return ServiceLoader.load(DemoHouseProvider.class)
                .findFirst()
                .orElseThrow()
                .house(SEED);
    }

    void write(Path scratch) throws IOException, RigException {
        Files.createDirectories(folder);
        calibrate(scratch);
        teach(scratch);
        JsonFiles.write(folder.resolve("models.json"), house.book());
        List<String> index = new ArrayList<>(List.of("cabinet,model,test_point,file"));
        TestPoint point = house.book().cabinetModel(MODEL).testPoints().get(0);
        AssetTag healthy = arrival(DemoHouse.Kind.HEALTHY, "");
        capture("healthy", healthy.value(), point, "at-return", "", index);
        capture("hf-open", arrival(DemoHouse.Kind.HARD_FAULT, "HF driver open").value(), point, "at-return", "", index);
        capture("shorted", "STD-000002", point, "at-return", "", index);
        capture("clipped", healthy.value(), point, "at-return", "clip", index);
        capture("unplugged", "STD-000001", point, "at-return", "", index);
        Files.writeString(folder.resolve("recordings.csv"), String.join("\n", index) + "\n");
    }

    private void calibrate(Path scratch) {
        render("STD-000001", scratch.resolve("open.wav"), "at-return");
        render("STD-000002", scratch.resolve("short.wav"), "at-return");
        render("STD-000003", scratch.resolve("load.wav"), "at-return");
        CommandRun run = CommandRun.of(
                "calibrate",
                "--open",
                scratch.resolve("open.wav"),
                "--short",
                scratch.resolve("short.wav"),
                "--load",
                scratch.resolve("load.wav"),
                "--load-ohm",
                10,
                "--load-uncertainty",
                0.0002,
                "--output",
                folder.resolve("calibration.json"));
        assertThat(run.err()).isEmpty();
    }

    private void teach(Path scratch) throws IOException {
        List<String> index = new ArrayList<>(List.of("cabinet,model,test_point,file"));
        List<AssetTag> units = house.cabinets().stream()
                .filter(c ->
                        c.modelCode().equals(MODEL) && house.referenceUnits().contains(c.tag()))
                .map(c -> c.tag())
                .limit(REFERENCE_UNITS)
                .toList();
        for (AssetTag unit : units) {
            render(unit.value(), scratch.resolve(unit + ".wav"), "before-hire");
            index.add(unit + "," + MODEL + ","
                    + house.book().cabinetModel(MODEL).testPoints().get(0).code() + "," + unit + ".wav");
        }
        Files.write(scratch.resolve("recordings.csv"), index);
        JsonFiles.write(scratch.resolve("models.json"), house.book());
        CommandRun run = CommandRun.of(
                "teach",
                scratch,
                "--quiet",
                "--models",
                scratch.resolve("models.json"),
                "--calibration",
                folder.resolve("calibration.json"),
                "--output",
                folder.resolve("references.json"));
        assertThat(run.err()).isEmpty();
    }

    private static void render(String label, Path wav, String moment) {
        CommandRun run = CommandRun.of("render", label, wav, "--seed", SEED, "--moment", moment);
        assertThat(run.err()).isEmpty();
    }

    private AssetTag arrival(DemoHouse.Kind kind, String words) {
        return house.arrivals().stream()
                .filter(a -> a.truth().kind() == kind
                        && a.truth().words().contains(words)
                        && house.cabinets().stream()
                                .anyMatch(c -> c.tag().equals(a.label())
                                        && c.modelCode().equals(MODEL)))
                .findFirst()
                .orElseThrow(() -> new AssertionError("no " + kind + " " + words + " of " + MODEL + " on the truck"))
                .label();
    }

    private void capture(
            String name, String label, TestPoint point, String moment, String disturbance, List<String> index)
            throws IOException, RigException {
        Map<String, String> settings =
                Map.of("seed", Long.toString(SEED), "moment", moment, "disturbances", disturbance);
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", settings)) {
            rig.plug(new AssetTag(label), label.startsWith("STD") ? "IN" : point.code());
            Capture capture = rig.play(shortened(point, rig.sampleRateHz()), point.kind(), share -> {});
            RecordingFiles.write(folder.resolve(name + ".wav"), electrical(capture), WavFormat.INT_24);
        }
        index.add(name + "," + MODEL + "," + point.code() + "," + name + ".wav");
    }

    private static SweepPlan shortened(TestPoint point, int sampleRateHz) {
        SweepSignal dock = SweepPlans.dock(point, sampleRateHz).signal();
        LevelMask level = dock.level();
        SweepSignal signal = SweepSignal.synchronised(dock.startHz(), dock.stopHz(), SWEEP_S, sampleRateHz, level);
        return new SweepPlan(signal, PRE_ROLL_S, TAIL_S, 1);
    }

    /** Without the microphone. */
    private static Capture electrical(Capture capture) {
        CaptureHeader h = capture.header();
        List<CaptureChannel> channels = h.channels().stream()
                .filter(c -> c.role() == ChannelRole.VOLTAGE || c.role() == ChannelRole.CURRENT)
                .toList();
        float[][] samples =
                channels.stream().map(c -> capture.fullScale(c.role())).toArray(float[][]::new);
        return new Capture(
                new CaptureHeader(h.capturedAt(), h.rigId(), h.testPointKind(), channels, h.plan(), h.ambientCelsius()),
                samples);
    }
}
