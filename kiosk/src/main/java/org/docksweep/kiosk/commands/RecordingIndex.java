package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RecordingException;

/**
 * Says which recording belongs to which cabinet and test point: {@code recordings.csv} in UTF-8 with the columns
 * {@code cabinet,model,test_point,file}. Recordings themselves say nothing of that. Fields hold no commas or quotes.
 */
final class RecordingIndex {
    static final String NAME = "recordings.csv";
    private static final String HEADER = "cabinet,model,test_point,file";

    /**
     * One recording.
     *
     * @param cabinet name of the cabinet; rows with the same name are judged together
     * @param modelCode cabinet model
     * @param testPointCode test point
     * @param file WAV file or archive
     */
    record Row(String cabinet, String modelCode, String testPointCode, Path file) {}

    private RecordingIndex() {}

    /**
     * The model of a cabinet, when all its rows agree and the model has their test points.
     *
     * @param book models
     * @param cabinet name of the cabinet
     * @param rows its rows
     * @return the model
     * @throws IOException if something does not fit; names the cabinet
     */
    static CabinetModel model(ModelBook book, String cabinet, List<Row> rows) throws IOException {
        String code = rows.get(0).modelCode();
        CabinetModel model = book.cabinetModels().stream()
                .filter(m -> m.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new IOException(NAME + ": cabinet " + cabinet + ": model " + code
                        + " is not among the models; they are "
                        + book.cabinetModels().stream().map(CabinetModel::code).toList()));
        List<String> points = model.testPoints().stream().map(TestPoint::code).toList();
        Set<String> seen = new HashSet<>();
        for (Row row : rows) {
            if (!row.modelCode().equals(code)) {
                throw new IOException(
                        NAME + ": cabinet " + cabinet + " has two models, " + code + " and " + row.modelCode());
            }
            if (!points.contains(row.testPointCode())) {
                throw new IOException(NAME + ": cabinet " + cabinet + ": model " + code + " has no test point "
                        + row.testPointCode() + "; it has " + points);
            }
            if (!seen.add(row.testPointCode())) {
                throw new IOException(NAME + ": cabinet " + cabinet + ": test point " + row.testPointCode()
                        + " is listed twice; keep the recording that counts");
            }
        }
        return model;
    }

    /**
     * Reads the recording of a row.
     *
     * @param row the row
     * @param point the test point it names
     * @return the capture
     * @throws IOException if it cannot be read or was made at another kind of test point
     */
    static Capture capture(Row row, TestPoint point) throws IOException {
        Capture capture = Recordings.read(row.file());
        if (capture.header().testPointKind() != point.kind()) {
            throw new RecordingException(
                    row.file().getFileName().toString(),
                    "testPointKind",
                    "must be " + point.kind() + " for test point " + point.code() + " of model " + row.modelCode()
                            + ", but is " + capture.header().testPointKind(),
                    "Correct " + NAME + " or bring the recording that belongs to it");
        }
        return capture;
    }

    static Map<String, List<Row>> read(Path folder) throws IOException {
        Path index = folder.resolve(NAME);
        List<String> lines;
        try {
            lines = Files.readAllLines(index, StandardCharsets.UTF_8);
        } catch (NoSuchFileException e) {
            throw new IOException(
                    "there is no " + NAME + " in " + folder + "; write one with the columns " + HEADER, e);
        } catch (java.nio.charset.MalformedInputException e) {
            throw new IOException(index + " is not in UTF-8; save it again in UTF-8", e);
        }
        if (lines.isEmpty() || !lines.get(0).strip().equals(HEADER)) {
            throw new IOException(index + ", line 1: expected the columns " + HEADER + ", but found "
                    + (lines.isEmpty() ? "nothing" : lines.get(0)));
        }
        Map<String, List<Row>> byCabinet = new LinkedHashMap<>();
        for (int i = 1; i < lines.size(); i++) {
            if (!lines.get(i).isBlank()) {
                Row row = row(folder, index, i + 1, lines.get(i));
                byCabinet.computeIfAbsent(row.cabinet(), c -> new ArrayList<>()).add(row);
            }
        }
        return byCabinet;
    }

    private static Row row(Path folder, Path index, int number, String line) throws IOException {
        String[] fields = line.split(",", -1);
        if (fields.length != 4 || List.of(fields).stream().anyMatch(String::isBlank)) {
            throw new IOException(
                    index + ", line " + number + ": expected four fields (" + HEADER + "), but found: " + line);
        }
        Path file;
        try {
            file = folder.resolve(fields[3].strip()).normalize();
        } catch (InvalidPathException e) {
            throw new IOException(index + ", line " + number + ": file: no file can have this name", e);
        }
        return new Row(fields[0].strip(), fields[1].strip(), fields[2].strip(), file);
    }
}
