package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.docksweep.fleet.Reasons;
import org.docksweep.kiosk.rig.RecordingKeeper;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the impedance curve of a recording. */
@Command(
        name = "curve",
        mixinStandardHelpOptions = true,
        description = "Prints the impedance curve of a recording as CSV: frequency in hertz, real and imaginary part,"
                + " magnitude and standard uncertainty in ohm, phase in degrees. Without rig calibration.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:curve printed",
            "1:the recording is spoiled or shows no load",
            "2:the command line is wrong",
            "3:the recording cannot be read"
        })
public final class CurveCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FILE", description = "WAV file with its sidecar beside it, or an archive of both.")
    private Path file;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter err = spec.commandLine().getErr();
        SweepAnalysis analysis;
        try {
            analysis = new SweepAnalyser().analyse(read(file));
        } catch (IOException e) {
            err.println(e.getMessage());
            return 3;
        }
        analysis.issues().forEach(issue -> err.println(Reasons.text(issue.reason(), Locale.ENGLISH)));
        if (analysis.impedance() == null) {
            err.println("No impedance curve: the terminals look "
                    + analysis.load().name().toLowerCase(Locale.ROOT) + ".");
            return 1;
        }
        print(analysis.impedance(), spec.commandLine().getOut());
        return analysis.clean() ? 0 : 1;
    }

    static Capture read(Path file) throws IOException {
        boolean archive = file.getFileName().toString().toLowerCase(Locale.ROOT).endsWith(".zip");
        return archive ? RecordingKeeper.read(file) : RecordingFiles.read(file);
    }

    private static void print(ImpedanceCurve curve, PrintWriter out) {
        double[] frequencyHz = curve.frequencyHz();
        double[] re = curve.resistanceOhm();
        double[] im = curve.reactanceOhm();
        double[] u = curve.standardUncertaintyOhm();
        out.println("frequency_hz,resistance_ohm,reactance_ohm,magnitude_ohm,phase_deg,standard_uncertainty_ohm");
        for (int i = 0; i < frequencyHz.length; i++) {
            out.println(String.format(
                    Locale.ROOT,
                    "%.4f,%.6g,%.6g,%.6g,%.4f,%.3g",
                    frequencyHz[i],
                    re[i],
                    im[i],
                    curve.magnitudeOhm(i),
                    Math.toDegrees(Math.atan2(im[i], re[i])),
                    u[i]));
        }
        out.flush();
    }
}
