package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

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
        Path file = folder.resolve(fields[3].strip()).normalize();
        return new Row(fields[0].strip(), fields[1].strip(), fields[2].strip(), file);
    }
}
