package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.Callable;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.kiosk.spool.Wire;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.CurveCorrection;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tools.jackson.core.JacksonException;

/** Judges recordings again, without service, network or rig. */
@Command(
        name = "judge",
        mixinStandardHelpOptions = true,
        description =
                "Judges the recordings that recordings.csv in FOLDER lists (columns cabinet,model,test_point,file;"
                        + " rows of one cabinet are judged together) against the models, references, baselines and limits in"
                        + " fleet.json, and prints one line per cabinet as CSV.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:all judged, whatever the verdicts",
            "2:the command line is wrong",
            "3:something could not be read; nothing was written"
        })
public final class JudgeCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FOLDER", description = "Folder with recordings.csv and the recordings.")
    private Path folder;

    @Option(names = "--fleet", description = "Models, references, baselines and limits. Default: fleet.json in FOLDER")
    private Path fleetFile;

    @Option(
            names = "--calibration",
            description = "Calibration of the rig. Default: calibration.json in FOLDER if there is one")
    private Path calibrationFile;

    @Option(names = "--json", description = "Also writes the whole judgements, with curves, to this file.")
    private Path jsonFile;

    @Spec
    private CommandSpec spec;

    /**
     * A judged cabinet.
     *
     * @param cabinet its name in the index
     * @param judgement what the gate says
     */
    record Judged(String cabinet, CabinetJudgement judgement) {}

    @Override
    public Integer call() {
        try {
            List<Judged> judged = judgeAll();
            print(judged, spec.commandLine().getOut());
            if (jsonFile != null) {
                Files.write(jsonFile, Wire.json().writeValueAsBytes(judged));
            }
            return 0;
        } catch (IOException | IllegalArgumentException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return 3;
        }
    }

    private List<Judged> judgeAll() throws IOException {
        Path fleetPath = fleetFile == null ? folder.resolve("fleet.json") : fleetFile;
        KioskSnapshot fleet = json(fleetPath, KioskSnapshot.class);
        CurveCorrection correction = correction();
        List<Judged> judged = new ArrayList<>();
        for (Map.Entry<String, List<RecordingIndex.Row>> cabinet :
                RecordingIndex.read(folder).entrySet()) {
            judged.add(new Judged(
                    cabinet.getKey(), Judge.judge(request(cabinet.getKey(), cabinet.getValue(), fleet, correction))));
        }
        return judged;
    }

    private CurveCorrection correction() throws IOException {
        Path path = calibrationFile == null ? folder.resolve("calibration.json") : calibrationFile;
        if (calibrationFile == null && !Files.exists(path)) {
            return RigCalibration.nominal("unknown")::correct;
        }
        return json(path, RigCalibration.class)::correct;
    }

    private static JudgeRequest request(
            String cabinet, List<RecordingIndex.Row> rows, KioskSnapshot fleet, CurveCorrection correction)
            throws IOException {
        CabinetModel model = fleet.book().cabinetModel(rows.get(0).modelCode());
        List<JudgeRequest.PointCapture> captures = new ArrayList<>();
        for (TestPoint point : model.testPoints()) {
            for (RecordingIndex.Row row : rows) {
                if (row.testPointCode().equals(point.code())) {
                    captures.add(new JudgeRequest.PointCapture(point.code(), CurveCommand.read(row.file())));
                }
            }
        }
        if (captures.size() != rows.size()) {
            throw new IOException("cabinet " + cabinet + ": " + RecordingIndex.NAME + " names a test point that model "
                    + model.code() + " does not have; it has "
                    + model.testPoints().stream().map(TestPoint::code).toList());
        }
        List<Baseline> baselines = fleet.baselines().stream()
                .filter(b -> b.tag().value().equals(cabinet))
                .toList();
        return new JudgeRequest(
                fleet.book(), model, captures, correction, fleet.references(), baselines, fleet.limits());
    }

    private static <T> T json(Path path, Class<T> type) throws IOException {
        try {
            return Wire.json().readValue(Files.readAllBytes(path), type);
        } catch (JacksonException e) {
            throw new IOException(path + " cannot be read: " + e.getOriginalMessage(), e);
        } catch (java.nio.file.NoSuchFileException e) {
            throw new IOException("there is no file " + path, e);
        }
    }

    private static void print(List<Judged> judged, PrintWriter out) {
        out.println("cabinet,verdict,prompt,watch,first_suspect,position,probability,reason");
        for (Judged j : judged) {
            CabinetJudgement judgement = j.judgement();
            var suspect = judgement.suspects().stream().findFirst();
            out.println(String.join(
                    ",",
                    j.cabinet(),
                    judgement.verdict().name(),
                    judgement.prompt().name(),
                    Boolean.toString(judgement.watch()),
                    suspect.map(s -> s.kind().name()).orElse(""),
                    suspect.map(s -> Objects.toString(s.positionCode(), Objects.toString(s.elementId(), "")))
                            .orElse(""),
                    suspect.map(s -> String.format(Locale.ROOT, "%.3f", s.probability()))
                            .orElse(""),
                    "\"" + Reasons.text(judgement.reason(), Locale.ENGLISH).replace("\"", "\"\"") + "\""));
        }
        out.flush();
    }
}
