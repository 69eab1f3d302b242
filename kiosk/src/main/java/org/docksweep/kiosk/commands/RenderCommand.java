package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.concurrent.Callable;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.kiosk.rig.Rigs;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlans;
import org.docksweep.sweep.WavFormat;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Renders a capture of the virtual rig into a file. */
@Command(
        name = "render",
        mixinStandardHelpOptions = true,
        description = "Plays the dock sweep to a cabinet of the invented house, or to a standard (STD-000001 open,"
                + " STD-000002 short, STD-000003 10 ohm, STD-000004 and STD-000005 to check), on the virtual rig and"
                + " writes the capture as a recording. The files say nothing of what is connected.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:recording written",
            "2:the command line is wrong",
            "3:nothing carries that label, or the recording could not be written"
        })
public final class RenderCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "LABEL", description = "Label of the cabinet or standard, like MCH-000101.")
    private String label;

    @Parameters(index = "1", paramLabel = "FILE", description = "WAV file to write; the sidecar goes beside it.")
    private Path file;

    @Option(
            names = "--point",
            paramLabel = "CODE",
            description = "Test point. Default: the first one of the cabinet's model.")
    private String pointCode;

    @Option(
            names = "--driver",
            paramLabel = "POSITION",
            description = "The bare driver of this position on the bench rig, instead of the cabinet.")
    private String driverPosition;

    @Option(names = "--seed", description = "Seed of house and rig. Default: ${DEFAULT-VALUE}", defaultValue = "1")
    private long seed;

    @Option(
            names = "--moment",
            paramLabel = "MOMENT",
            description = "before-hire, when all are healthy, or at-return. Default: ${DEFAULT-VALUE}",
            defaultValue = "at-return")
    private String moment;

    @Option(
            names = "--plug",
            paramLabel = "N",
            description = "The capture after the lead was plugged in so many times. Default: ${DEFAULT-VALUE}",
            defaultValue = "1")
    private int plug;

    @Option(
            names = "--rig-setting",
            paramLabel = "NAME=VALUE",
            description =
                    "Further setting of the virtual rig: sampleRateHz, ambientCelsius, hallNoiseDb, knocksPerS, disturbances; may"
                            + " be repeated.")
    private Map<String, String> rigSettings = Map.of();

    @Option(
            names = "--captured-at",
            paramLabel = "TIME",
            description = "Time to write into the sidecar, like 2026-05-01T01:23:45Z. Default: now")
    private Instant capturedAt;

    @Option(
            names = "--samples",
            paramLabel = "FORMAT",
            description = "FLOAT_32, which keeps every sample as it is, or INT_24. Default: ${DEFAULT-VALUE}",
            defaultValue = "FLOAT_32")
    private WavFormat samples;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        RecordingFiles.sidecarOf(file);
        Map<String, String> settings = new HashMap<>(rigSettings);
        settings.put("seed", Long.toString(seed));
        settings.put("moment", moment);
        AssetTag tag = new AssetTag(label);
        TestPoint point = point(tag);
        if (plug < 1 || plug > 100) {
            throw new IOException("--plug must be from 1 to 100, but is " + plug);
        }
        try (PracticeRig rig = (PracticeRig) Rigs.open("virtual", settings)) {
            Capture capture = null;
            for (int n = 1; n <= plug; n++) {
                if (driverPosition == null) {
                    rig.plug(tag, point.code());
                } else {
                    rig.plugDriver(tag, driverPosition);
                }
                capture = rig.play(SweepPlans.dock(point, rig.sampleRateHz()), point.kind(), share -> {});
            }
            RecordingFiles.write(file, stamped(capture), samples);
        } catch (RigException e) {
            throw new IOException(Reasons.text(e.reason(), Locale.ENGLISH), e);
        }
        spec.commandLine().getOut().println(file);
        return 0;
    }

    private Capture stamped(Capture capture) {
        CaptureHeader h = capture.header();
        float[][] channels = h.channels().stream()
                .map(channel -> capture.fullScale(channel.role()))
                .toArray(float[][]::new);
        Instant at = capturedAt == null ? h.capturedAt() : capturedAt;
        return new Capture(
                new CaptureHeader(at, h.rigId(), h.testPointKind(), h.channels(), h.plan(), h.ambientCelsius()),
                channels);
    }

    private TestPoint point(AssetTag tag) throws IOException {
        if (driverPosition != null && pointCode != null) {
            throw new IOException("--driver and --point exclude each other: a bare driver has one test point");
        }
        if (StandardSet.practice().has(tag)) {
            return StandardSet.testPoint(StandardSet.practice().loadOhm());
        }
        DemoHouse house = ServiceLoader.load(DemoHouseProvider.class)
                .findFirst()
                .orElseThrow(() -> new IOException("there is no demo house on the class path"))
                .house(seed);
        // What the label says is all a dock hand knows, so it decides the plan, even on the wrong cabinet.
        String modelCode = house.cabinets().stream()
                .filter(c -> c.tag().equals(tag))
                .findFirst()
                .orElseThrow(() -> new IOException(
                        "no cabinet of the house of seed " + seed + " and no standard carries" + " the label " + tag))
                .modelCode();
        if (driverPosition != null) {
            return bareDriver(house, house.book().cabinetModel(modelCode));
        }
        return pointCode == null
                ? house.book().cabinetModel(modelCode).testPoints().get(0)
                : house.book().cabinetModel(modelCode).testPoint(pointCode);
    }

    private TestPoint bareDriver(DemoHouse house, CabinetModel model) throws IOException {
        List<String> positions =
                model.positions().stream().map(DriverPosition::code).toList();
        if (!positions.contains(driverPosition)) {
            throw new IOException("--driver: " + label + " has the positions " + positions + ", not " + driverPosition);
        }
        DriverModel driver = house.book().driverModelAt(model, driverPosition);
        LevelMask mask = house.bench().benchData().stream()
                .filter(d -> d.driverModelCode().equals(driver.code()))
                .findFirst()
                .map(DriverBenchData::benchLevelMask)
                .orElseThrow(() -> new IOException("the house has no bench level for " + driver.code()));
        return BareDriver.model(driver, mask).testPoint(BareDriver.TEST_POINT);
    }
}
