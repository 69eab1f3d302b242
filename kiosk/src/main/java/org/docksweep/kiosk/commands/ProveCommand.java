package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.Callable;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.LimitSet;
import org.docksweep.kiosk.proving.IdealBounds;
import org.docksweep.kiosk.proving.Knowing;
import org.docksweep.kiosk.proving.ProvingFiles;
import org.docksweep.kiosk.proving.ProvingOptions;
import org.docksweep.kiosk.proving.ProvingReport;
import org.docksweep.kiosk.proving.ProvingRun;
import org.docksweep.kiosk.proving.ProvingTable;
import org.docksweep.kiosk.proving.Severities;
import org.docksweep.kiosk.proving.SeveritySweep;
import org.docksweep.sweep.RigException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Proves the gate on virtual returns whose truth is known. */
@Command(
        name = "prove",
        mixinStandardHelpOptions = true,
        description =
                "Takes virtual returns, whose truth is known, through sweep, calibration and judgement, and counts"
                        + " what the gate finds, misses and names. The virtual rig's microphone counts as proved.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the run is done, whatever it counted",
            "2:the command line is wrong",
            "3:something could not be read or written"
        })
public final class ProveCommand implements Callable<Integer> {
    @Option(
            names = "--models",
            paramLabel = "WHICH",
            description = "tuning, held-back, all or drawn. Default: ${DEFAULT-VALUE}",
            defaultValue = "tuning")
    private String models;

    @Option(
            names = "--seed",
            paramLabel = "N",
            description = "Seed of everything; below 100000 for tuning models, from 100000 for all others."
                    + " Default: ${DEFAULT-VALUE}",
            defaultValue = "1")
    private long seed;

    @Option(
            names = "--returns",
            paramLabel = "N",
            description = "Number of returns. Default: ${DEFAULT-VALUE}",
            defaultValue = "500")
    private int returns;

    @Option(
            names = "--kinds",
            paramLabel = "KIND",
            split = ",",
            description =
                    "Deals only these faults, like polarity,rub,way_weak, in turns with healthy cabinets. Default: all.")
    private String[] kinds = {};

    @Option(names = "--baseline", description = "Every cabinet has its own baseline. Default: as many as have not.")
    private boolean baselineOnly;

    @Option(names = "--reference", description = "No cabinet has a baseline of its own.")
    private boolean referenceOnly;

    @Option(
            names = "--severities",
            paramLabel = "FILE",
            description = "CSV file with other severities of soft faults, kind,with_baseline,with_reference.")
    private Path severities;

    @Option(
            names = "--noise",
            paramLabel = "LOW:HIGH",
            description = "Noise of the hall in dB re 20 uPa. Default: ${DEFAULT-VALUE}",
            defaultValue = "45:70")
    private String noise;

    @Option(
            names = "--converter-noise",
            paramLabel = "DB",
            description = "Noise of the rig's converter in dB re full scale. Default: ${DEFAULT-VALUE}",
            defaultValue = "-106")
    private double converterNoise;

    @Option(
            names = "--temperature",
            paramLabel = "LOW:HIGH",
            description = "Air at the dock in C. Default: ${DEFAULT-VALUE}",
            defaultValue = "6:34")
    private String temperature;

    @Option(
            names = "--unknown",
            paramLabel = "SHARE",
            description = "Share of returns of models without a reference. Default: ${DEFAULT-VALUE}",
            defaultValue = "0.01")
    private double unknown;

    @Option(
            names = "--recorded",
            paramLabel = "SHARE",
            description = "Share of returns judged from encoded recordings as well. Default: ${DEFAULT-VALUE}",
            defaultValue = "0.02")
    private double recorded;

    @Option(
            names = "--good-units",
            paramLabel = "N",
            description = "Known-good units that teach each reference. Default: ${DEFAULT-VALUE}",
            defaultValue = "5")
    private int goodUnits;

    @Option(
            names = "--teachings",
            paramLabel = "N",
            description = "How often each model is taught, each time from other good units; every return draws one."
                    + " Default: ${DEFAULT-VALUE}",
            defaultValue = "1")
    private int teachings;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Worker threads. Default: ${DEFAULT-VALUE}",
            defaultValue = "2")
    private int threads;

    @Option(
            names = "--limits",
            paramLabel = "FILE",
            description = "Limits to judge with, JSON. Default: those of a new house")
    private Path limits;

    @Option(
            names = "--within",
            paramLabel = "MINUTES",
            description = "Takes no further return after this time and reports those taken. Default: all are taken")
    private double minutes = Double.POSITIVE_INFINITY;

    @Option(
            names = "--severity-sweep",
            paramLabel = "N",
            description = "Also takes N returns of every soft fault at each of a row of severities.")
    private int sweepEach;

    @Option(
            names = "--at-best",
            description =
                    "Also prints how much of each soft fault of the terminals the best possible detector would miss.")
    private boolean atBest;

    @Option(names = "--no-returns", description = "Takes no return: prints what --at-best prints of the models alone.")
    private boolean noReturns;

    @Option(names = "--csv", paramLabel = "FILE", description = "Also writes every return as CSV.")
    private Path csv;

    @Option(names = "--json", paramLabel = "FILE", description = "Also writes all counts as JSON.")
    private Path json;

    @Mixin
    private ProgressBar progress;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        ProvingOptions options = options();
        PrintWriter out = spec.commandLine().getOut();
        if (noReturns) {
            IdealBounds.of(options).lines().forEach(out::println);
            out.flush();
            return 0;
        }
        try {
            ProvingRun run = new ProvingRun(options);
            progress.begin(spec.commandLine().getErr());
            ProvingReport report;
            SeveritySweep sweep = null;
            try {
                report = run.run(60 * minutes, done -> show(done, options.returns(), "returns"));
                if (sweepEach > 0) {
                    int cells = run.sweepSize(sweepEach);
                    sweep = run.sweepSeverities(sweepEach, done -> show(done, cells, "severities"));
                }
            } finally {
                progress.end();
            }
            ProvingTable.lines(report).forEach(out::println);
            if (atBest) {
                IdealBounds bounds = IdealBounds.of(options);
                out.println();
                bounds.lines().forEach(out::println);
                out.println();
                bounds.beside(report).forEach(out::println);
            }
            if (sweep != null) {
                out.println();
                sweep.lines().forEach(out::println);
            }
            out.flush();
            if (csv != null) {
                JsonFiles.write(csv, ProvingFiles.csv(report).getBytes(StandardCharsets.UTF_8));
            }
            if (json != null) {
                JsonFiles.write(json, ProvingFiles.counts(report, sweep));
            }
            return 0;
        } catch (RigException e) {
            throw new IOException("the virtual rig refuses: " + Reasons.text(e.reason(), Locale.ENGLISH), e);
        }
    }

    private synchronized void show(int done, int total, String doing) {
        progress.show(done, total, doing);
    }

    private ProvingOptions options() throws IOException {
        Set<Knowing> knowing = EnumSet.allOf(Knowing.class);
        if (baselineOnly != referenceOnly) {
            knowing = EnumSet.of(baselineOnly ? Knowing.BASELINE : Knowing.REFERENCE);
        }
        return new ProvingOptions(
                which(),
                seed,
                returns,
                kinds(),
                knowing,
                severities == null
                        ? Severities.promised()
                        : Severities.parse(severities.toString(), Files.readAllLines(severities)),
                range("--noise", noise),
                converterNoise,
                range("--temperature", temperature),
                unknown,
                recorded,
                goodUnits,
                teachings,
                threads,
                limits == null ? LimitSet.initial() : JsonFiles.read(limits, LimitSet.class));
    }

    private Set<ProvingFaultKind> kinds() {
        EnumSet<ProvingFaultKind> named = EnumSet.noneOf(ProvingFaultKind.class);
        for (String kind : kinds) {
            try {
                named.add(ProvingFaultKind.valueOf(kind.strip().toUpperCase(Locale.ROOT)));
            } catch (IllegalArgumentException e) {
                throw new IllegalArgumentException(
                        "--kinds must name faults of " + EnumSet.allOf(ProvingFaultKind.class) + ", but names \"" + kind
                                + "\"",
                        e);
            }
        }
        return named;
    }

    private ProvingGround.Models which() {
        return switch (models) {
            case "tuning" -> ProvingGround.Models.TUNING;
            case "held-back" -> ProvingGround.Models.HELD_BACK;
            case "all" -> ProvingGround.Models.ALL;
            case "drawn" -> ProvingGround.Models.DRAWN;
            default ->
                throw new IllegalArgumentException(
                        "--models must be tuning, held-back, all or drawn, but is \"" + models + "\"");
        };
    }

    private static ProvingOptions.Range range(String option, String text) {
        String[] ends = text.split(":", -1);
        try {
            if (ends.length <= 2) {
                double low = Double.parseDouble(ends[0].strip());
                return new ProvingOptions.Range(low, ends.length == 1 ? low : Double.parseDouble(ends[1].strip()));
            }
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(option + " must be LOW:HIGH, but is \"" + text + "\"", e);
        }
        throw new IllegalArgumentException(option + " must be LOW:HIGH, but is \"" + text + "\"");
    }
}
