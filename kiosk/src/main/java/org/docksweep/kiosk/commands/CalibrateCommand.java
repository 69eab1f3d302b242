package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.docksweep.fleet.Reasons;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.SweepAnalysis;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Makes the calibration of a rig from three recordings. */
@Command(
        name = "calibrate",
        mixinStandardHelpOptions = true,
        description = "Makes the calibration of a rig from recordings of the far plug open, shorted, and with a known"
                + " load, and writes it as JSON. All three with one rig and one plan, cable laid as in use.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:calibration written",
            "1:a recording is spoiled or shows another part than it should; nothing was written",
            "2:the command line is wrong",
            "3:something could not be read or written"
        })
public final class CalibrateCommand implements Callable<Integer> {
    @Option(names = "--open", required = true, paramLabel = "FILE", description = "Recording with the plug open.")
    private Path openFile;

    @Option(names = "--short", required = true, paramLabel = "FILE", description = "Recording with the plug shorted.")
    private Path shortFile;

    @Option(names = "--load", required = true, paramLabel = "FILE", description = "Recording with the known load.")
    private Path loadFile;

    @Option(names = "--load-ohm", required = true, paramLabel = "OHM", description = "Resistance of the known load.")
    private double loadOhm;

    @Option(
            names = "--load-uncertainty",
            paramLabel = "SHARE",
            description = "Relative standard uncertainty of that value. Default: ${DEFAULT-VALUE}",
            defaultValue = "0.001")
    private double loadUncertainty;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "File to write. Default: ${DEFAULT-VALUE}",
            defaultValue = CalibrationOption.NAME)
    private Path output;

    @Spec
    private CommandSpec spec;

    /** A recording of a standard. */
    private record Standard(Path file, Capture capture, SweepAnalysis analysis) {}

    @Override
    public Integer call() throws IOException {
        Standard open = read(openFile);
        Standard shorted = read(shortFile);
        Standard load = read(loadFile);
        requireOneRig(open, load);
        requireOneRig(shorted, load);
        String wrong = wrong(open, shorted, load);
        if (wrong != null) {
            spec.commandLine().getErr().println(wrong);
            return 1;
        }
        RigCalibration made;
        try {
            made = RigCalibration.of(
                    load.capture().header().rigId(),
                    load.capture().header().capturedAt(),
                    open.analysis().impedance(),
                    shorted.analysis().impedance(),
                    load.analysis().impedance(),
                    loadOhm,
                    loadUncertainty);
        } catch (IllegalArgumentException e) {
            throw new IOException("no calibration could be made: " + e.getMessage(), e);
        }
        JsonFiles.write(output, made);
        spec.commandLine().getOut().println(output);
        return 0;
    }

    private static Standard read(Path file) throws IOException {
        Capture capture = Recordings.read(file);
        return new Standard(file, capture, Recordings.analyse(file, capture));
    }

    private static void requireOneRig(Standard one, Standard load) throws IOException {
        String mine = one.capture().header().rigId();
        String others = load.capture().header().rigId();
        if (!Objects.equals(mine, others)) {
            throw new IOException(one.file().getFileName() + ": rigId: must be the one of "
                    + load.file().getFileName() + ", " + others + ", but is " + mine
                    + ". Record all three standards with one rig");
        }
    }

    /** What is wrong with the recordings, in words, or null. */
    private static String wrong(Standard open, Standard shorted, Standard load) {
        for (Standard standard : new Standard[] {open, shorted, load}) {
            if (!standard.analysis().clean()) {
                return standard.file().getFileName() + ": "
                        + Reasons.text(standard.analysis().issues().get(0).reason(), Locale.ENGLISH);
            }
        }
        SweepAnalysis.Load atOpen = open.analysis().load();
        if (atOpen == SweepAnalysis.Load.SHORT || atOpen == SweepAnalysis.Load.PRESENT) {
            return open.file().getFileName() + ": the plug should be open, but looks " + lower(atOpen)
                    + ". Pull it and record again.";
        }
        if (shorted.analysis().load() == SweepAnalysis.Load.OPEN
                || shorted.analysis().impedance() == null) {
            return shorted.file().getFileName() + ": the plug should be shorted, but looks "
                    + lower(shorted.analysis().load()) + ". Plug the short and record again.";
        }
        SweepAnalysis.Load atLoad = load.analysis().load();
        if (atLoad != SweepAnalysis.Load.PRESENT) {
            return load.file().getFileName() + ": the load should be plugged, but the plug looks " + lower(atLoad)
                    + ". Plug it and record again.";
        }
        return null;
    }

    private static String lower(SweepAnalysis.Load load) {
        return load == SweepAnalysis.Load.PRESENT ? "loaded" : load.name().toLowerCase(Locale.ROOT);
    }
}
