package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.suspect.TeachingCheck;
import org.docksweep.suspect.TeachingProgress;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.SweepAnalysis;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** Teaches references from recordings of known-good units. */
@Command(
        name = "teach",
        mixinStandardHelpOptions = true,
        description =
                "Teaches what healthy cabinets of a model look like from the recordings of 1 to 20 known-good units"
                        + " that recordings.csv in FOLDER lists (columns cabinet,model,test_point,file), one reference per model"
                        + " and test point, and writes them as JSON for judge --references. A driver on the bench rig stands"
                        + " there as model BARE-DRIVERMODEL with test point BARE; its reference is the driver's own."
                        + " The microphone counts as proved unless --unproved-microphone says otherwise: recordings do"
                        + " not tell.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:references written",
            "1:a recording is spoiled or shows no load; nothing was written",
            "2:the command line is wrong",
            "3:something could not be read or written"
        })
public final class TeachCommand implements Callable<Integer> {
    @Parameters(paramLabel = "FOLDER", description = "Folder with recordings.csv and the recordings.")
    private Path folder;

    @Mixin
    private KnowledgeOptions knowledge;

    @Mixin
    private CalibrationOption calibration;

    @Mixin
    private ProgressBar progress;

    @Option(names = "--model", paramLabel = "CODE", description = "Teaches this model only.")
    private String onlyModel;

    @Option(
            names = {"-o", "--output"},
            paramLabel = "FILE",
            description = "File to write. Default: ${DEFAULT-VALUE}",
            defaultValue = "references.json")
    private Path output;

    @Option(
            names = "--unproved-microphone",
            description = "The microphone was not proved when these were recorded: references hold no sound, and"
                    + " powered cabinets teach nothing.")
    private boolean unprovedMicrophone;

    @Spec
    private CommandSpec spec;

    private final List<String> doubts = new ArrayList<>();

    /** A recording that teaches nothing; the message names it and says why. */
    private static final class SpoiledException extends Exception {
        private static final long serialVersionUID = 1L;

        SpoiledException(String message) {
            super(message);
        }
    }

    /** A reference to be taught. */
    private record Lesson(String modelCode, String testPointCode) {}

    @Override
    public Integer call() throws IOException {
        try {
            List<PointReference> references = teachAll();
            JsonFiles.write(output, references);
            doubts.forEach(spec.commandLine().getErr()::println);
            references.forEach(r -> spec.commandLine()
                    .getOut()
                    .println(r.cabinetModelCode() + " " + r.testPointCode() + ": " + r.unitCount() + " units"));
            return 0;
        } catch (SpoiledException e) {
            spec.commandLine().getErr().println(e.getMessage());
            return 1;
        }
    }

    private List<PointReference> teachAll() throws IOException, SpoiledException {
        ModelBook book = BareDriver.recordedWith(knowledge.read(folder).book());
        calibration.read(folder);
        Map<Lesson, List<RecordingIndex.Row>> lessons = lessons(book);
        int total = lessons.values().stream().mapToInt(List::size).sum() + lessons.size();
        int done = 0;
        List<PointReference> references = new ArrayList<>();
        progress.begin(spec.commandLine().getErr());
        try {
            for (Map.Entry<Lesson, List<RecordingIndex.Row>> entry : lessons.entrySet()) {
                Lesson lesson = entry.getKey();
                CabinetModel model = book.cabinetModel(lesson.modelCode());
                List<ReferenceTeacher.Unit> units = new ArrayList<>();
                for (RecordingIndex.Row row : entry.getValue()) {
                    progress.show(done++, total, row.cabinet());
                    units.add(unit(row, model.testPoint(lesson.testPointCode())));
                }
                progress.show(done++, total, lesson.modelCode() + " " + lesson.testPointCode());
                TeachingProgress taught =
                        TeachingProgress.of(book, model, model.testPoint(lesson.testPointCode()), units, false);
                taught.doubts().forEach(d -> leftOut(lesson, entry.getValue().get(d.unit()), d));
                references.add(taught.reference());
            }
        } finally {
            progress.end();
        }
        return references;
    }

    /** A unit that does not belong among the good ones is named; a lesson of one unit has nobody else to go by. */
    private void leftOut(Lesson lesson, RecordingIndex.Row row, TeachingCheck.Doubt doubt) {
        String why = doubt.suspects().isEmpty()
                ? "unlike the others"
                : Reasons.text(doubt.suspects().get(0).evidence(), Locale.ENGLISH);
        doubts.add(row.cabinet() + " does not belong among the good " + lesson.modelCode() + " at "
                + lesson.testPointCode() + ": " + why);
    }

    /** Recordings by what they teach; checked before the first is read, because reading takes its time. */
    private Map<Lesson, List<RecordingIndex.Row>> lessons(ModelBook book) throws IOException {
        Map<Lesson, List<RecordingIndex.Row>> lessons = new LinkedHashMap<>();
        for (Map.Entry<String, List<RecordingIndex.Row>> cabinet :
                RecordingIndex.read(folder).entrySet()) {
            RecordingIndex.model(book, cabinet.getKey(), cabinet.getValue());
            for (RecordingIndex.Row row : cabinet.getValue()) {
                if (onlyModel == null || onlyModel.equals(row.modelCode())) {
                    lessons.computeIfAbsent(new Lesson(row.modelCode(), row.testPointCode()), l -> new ArrayList<>())
                            .add(row);
                }
            }
        }
        if (lessons.isEmpty()) {
            throw new IOException(folder.resolve(RecordingIndex.NAME) + " lists no recording"
                    + (onlyModel == null ? "" : " of model " + onlyModel));
        }
        for (Map.Entry<Lesson, List<RecordingIndex.Row>> lesson : lessons.entrySet()) {
            int units = lesson.getValue().size();
            if (units > ReferenceTeacher.MAX_UNITS) {
                throw new IOException(folder.resolve(RecordingIndex.NAME) + ": model "
                        + lesson.getKey().modelCode() + ", test point "
                        + lesson.getKey().testPointCode() + ": at most " + ReferenceTeacher.MAX_UNITS
                        + " units teach a reference, but " + units + " are listed");
            }
        }
        return lessons;
    }

    private ReferenceTeacher.Unit unit(RecordingIndex.Row row, TestPoint point) throws IOException, SpoiledException {
        Capture capture = RecordingIndex.capture(row, point);
        calibration.requireFits(row.file(), capture);
        SweepAnalysis analysis = Recordings.analyse(row.file(), capture);
        String name = row.file().getFileName() + " of " + row.cabinet() + ": ";
        if (!analysis.clean()) {
            throw new SpoiledException(
                    name + Reasons.text(analysis.issues().get(0).reason(), Locale.ENGLISH));
        }
        boolean terminals = point.kind() != org.docksweep.fleet.TestPointKind.LINE_INPUT;
        if (terminals && analysis.load() != SweepAnalysis.Load.PRESENT) {
            throw new SpoiledException(name + "a known-good unit must show a load, but the terminals look "
                    + analysis.load().name().toLowerCase(Locale.ROOT));
        }
        if (!terminals && unprovedMicrophone) {
            throw new SpoiledException(name + "a powered cabinet teaches by its sound alone, and the microphone was not"
                    + " proved; check it and record again");
        }
        return new ReferenceTeacher.Unit(
                analysis.impedance() == null ? null : calibration.correct(analysis.impedance()),
                unprovedMicrophone ? null : analysis.acoustic(),
                capture.header().ambientCelsius());
    }
}
