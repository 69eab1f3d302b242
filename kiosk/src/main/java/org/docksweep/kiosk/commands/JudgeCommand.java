package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.Capture;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Judges recordings again, without service, network or rig. */
@Command(
        name = "judge",
        mixinStandardHelpOptions = true,
        description =
                "Judges the recordings that recordings.csv in FOLDER lists (columns cabinet,model,test_point,file;"
                        + " rows of one cabinet are judged together) and prints one line per cabinet as CSV."
                        + " The microphone counts as proved unless --unproved-microphone says otherwise: recordings do"
                        + " not tell.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:all judged, whatever the verdicts",
            "2:the command line is wrong",
            "3:something could not be read; nothing was written"
        })
public final class JudgeCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FOLDER", description = "Folder with recordings.csv and the recordings.")
    private Path folder;

    @Mixin
    private KnowledgeOptions knowledge;

    @Mixin
    private CalibrationOption calibration;

    @Mixin
    private ProgressBar progress;

    @Option(
            names = "--readings",
            paramLabel = "FILE",
            description = "Also writes every number read, with its limits, as CSV to this file.")
    private Path readingsFile;

    @Option(
            names = "--json",
            paramLabel = "FILE",
            description = "Also writes the whole judgements, with curves, to this file.")
    private Path jsonFile;

    @Option(
            names = "--unproved-microphone",
            description = "The microphone was not proved when these were recorded: what it heard proves nothing, and"
                    + " powered cabinets are not judged.")
    private boolean unprovedMicrophone;

    @Spec
    private CommandSpec spec;

    @Override
    public Integer call() throws IOException {
        List<VerdictTable.Judged> judged = judgeAll();
        if (readingsFile != null) {
            StringWriter text = new StringWriter();
            VerdictTable.printReadings(judged, new PrintWriter(text));
            JsonFiles.write(readingsFile, text.toString().getBytes(StandardCharsets.UTF_8));
        }
        if (jsonFile != null) {
            JsonFiles.write(jsonFile, judged);
        }
        VerdictTable.print(judged, spec.commandLine().getOut());
        return 0;
    }

    private List<VerdictTable.Judged> judgeAll() throws IOException {
        KnowledgeOptions.Knowledge known = knowledge.read(folder);
        calibration.read(folder);
        Map<String, List<RecordingIndex.Row>> cabinets = RecordingIndex.read(folder);
        List<VerdictTable.Judged> judged = new ArrayList<>();
        progress.begin(spec.commandLine().getErr());
        try {
            for (Map.Entry<String, List<RecordingIndex.Row>> cabinet : cabinets.entrySet()) {
                progress.show(judged.size(), cabinets.size(), cabinet.getKey());
                judged.add(judge(cabinet.getKey(), cabinet.getValue(), known));
            }
        } finally {
            progress.end();
        }
        return judged;
    }

    private VerdictTable.Judged judge(String cabinet, List<RecordingIndex.Row> rows, KnowledgeOptions.Knowledge known)
            throws IOException {
        ModelBook book = BareDriver.recordedWith(known.book());
        CabinetModel model = RecordingIndex.model(book, cabinet, rows);
        boolean bare = BareDriver.isBare(model.code());
        List<JudgeRequest.PointCapture> captures = new ArrayList<>();
        for (TestPoint point : model.testPoints()) {
            for (RecordingIndex.Row row : rows) {
                if (row.testPointCode().equals(point.code())) {
                    captures.add(new JudgeRequest.PointCapture(point.code(), read(row, point)));
                }
            }
        }
        try {
            return new VerdictTable.Judged(
                    cabinet,
                    Judge.judge(new JudgeRequest(
                            book,
                            model,
                            captures,
                            calibration::correct,
                            known.references().stream()
                                    .filter(r -> BareDriver.isBare(r.cabinetModelCode()) == bare)
                                    .toList(),
                            known.baselinesOf(cabinet),
                            known.limits(),
                            known.priors(),
                            RigRepeatability.UNKNOWN,
                            unprovedMicrophone
                                    ? Optional.of(Reason.of("judge-unproved-microphone"))
                                    : Optional.empty())));
        } catch (IllegalArgumentException e) {
            throw new IOException("cabinet " + cabinet + " cannot be judged: " + e.getMessage(), e);
        }
    }

    private Capture read(RecordingIndex.Row row, TestPoint point) throws IOException {
        Capture capture = RecordingIndex.capture(row, point);
        calibration.requireFits(row.file(), capture);
        return capture;
    }
}
