package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.docksweep.fleet.Reasons;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Prints the impedance curve of a recording. */
@Command(
        name = "curve",
        mixinStandardHelpOptions = true,
        description =
                "Prints the impedance curve of a recording: frequency in hertz, real and imaginary part in ohm; as"
                        + " CSV also magnitude and standard uncertainty in ohm and phase in degrees.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:curve printed",
            "1:the recording is spoiled or shows no load",
            "2:the command line is wrong",
            "3:the recording cannot be read"
        })
public final class CurveCommand implements Callable<Integer> {
    private static final int DIGITS = 6;

    @Parameters(
            paramLabel = "FILE",
            description =
                    "WAV file with its sidecar beside it, an archive of both (.zip), or a one-port Touchstone file"
                            + " (.s1p) to print in the other form.")
    private Path file;

    @Option(
            names = "--format",
            paramLabel = "FORM",
            description =
                    "CSV, or TOUCHSTONE (one-port Z of version 1 with a reference of 1 ohm, so that the numbers are"
                            + " ohms). Default: ${DEFAULT-VALUE}",
            defaultValue = "CSV")
    private Form form;

    @Mixin
    private CalibrationOption calibration;

    @Spec
    private CommandSpec spec;

    /** How a curve is printed. */
    enum Form {
        CSV,
        TOUCHSTONE
    }

    @Override
    public Integer call() throws IOException {
        PrintWriter out = spec.commandLine().getOut();
        if (file.toString().toLowerCase(Locale.ROOT).endsWith(".s1p")) {
            print(Touchstone.read(file), null, out);
            return 0;
        }
        Path parent = file.toAbsolutePath().getParent();
        calibration.read(parent == null ? file.toAbsolutePath() : parent);
        Capture capture = Recordings.read(file);
        calibration.requireFits(file, capture);
        SweepAnalysis analysis = Recordings.analyse(file, capture);
        PrintWriter err = spec.commandLine().getErr();
        analysis.issues().forEach(issue -> err.println(Reasons.text(issue.reason(), Locale.ENGLISH)));
        if (analysis.impedance() == null || analysis.load() == SweepAnalysis.Load.OPEN) {
            err.println("No impedance curve: the terminals look "
                    + analysis.load().name().toLowerCase(Locale.ROOT) + ".");
            return 1;
        }
        ImpedanceCurve curve = calibration.correct(analysis.impedance());
        print(Touchstone.of(curve), curve.standardUncertaintyOhm(), out);
        return analysis.clean() ? 0 : 1;
    }

    private void print(Touchstone curve, double[] standardUncertaintyOhm, PrintWriter out) {
        if (form == Form.TOUCHSTONE) {
            curve.print(out);
            return;
        }
        out.println("frequency_hz,resistance_ohm,reactance_ohm,magnitude_ohm,phase_deg,standard_uncertainty_ohm");
        for (int i = 0; i < curve.frequencyHz().length; i++) {
            double re = curve.resistanceOhm()[i];
            double im = curve.reactanceOhm()[i];
            out.println(String.join(
                    ",",
                    Digits.decimals(curve.frequencyHz()[i], 4),
                    Digits.significant(re, DIGITS),
                    Digits.significant(im, DIGITS),
                    Digits.significant(StrictMath.hypot(re, im), DIGITS),
                    Digits.decimals(StrictMath.toDegrees(StrictMath.atan2(im, re)), 4),
                    standardUncertaintyOhm == null ? "" : Digits.significant(standardUncertaintyOhm[i], 3)));
        }
        out.flush();
    }
}
