package org.docksweep.service.imports;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.docksweep.contract.Problem;
import org.docksweep.service.web.Refusal;

/**
 * A CSV file with a header line, commas or semicolons between, quotes where needed (RFC 4180). Errors are collected with
 * their line; {@link #refuseIfWrong} refuses once.
 */
public final class CsvTable {
    /** Most data lines of one import. */
    public static final int MOST_LINES = 100_000;

    private final List<Line> lines = new ArrayList<>();
    private final List<Problem.Entry> errors = new ArrayList<>();

    private CsvTable() {}

    /**
     * Reads a file.
     *
     * @param file its bytes, null when nothing was sent
     * @param contentType content type it was sent with
     * @param needed columns that must be there
     * @param optional columns that may be there
     * @return the table
     * @throws Refusal if it is not UTF-8, not CSV, empty, too long, or has wrong columns
     */
    public static CsvTable read(byte[] file, String contentType, List<String> needed, Set<String> optional) {
        String text = CsvText.decode(file == null ? new byte[0] : file, contentType);
        CsvTable table = new CsvTable();
        try (CSVParser parser = CSVParser.parse(text, format(text))) {
            List<String> columns = null;
            long firstLine = 1;
            for (CSVRecord line : parser) {
                if (columns == null) {
                    columns = columns(line, needed, optional);
                } else {
                    table.add(line, firstLine, columns);
                }
                firstLine = parser.getCurrentLineNumber() + 1;
            }
            if (columns == null) {
                throw wrongColumns("the file is empty", needed, optional);
            }
        } catch (IOException | UncheckedIOException e) {
            throw Refusal.unreadable(
                    "the file is not CSV: " + e.getMessage(),
                    "Look for a quote that is never closed, correct it and import the whole file again.");
        }
        if (table.lines.isEmpty() && table.errors.isEmpty()) {
            table.error(1, null, "there is a header line only; at least one data line is needed");
        }
        return table;
    }

    private static CSVFormat format(String text) {
        int end = text.indexOf('\n');
        String header = end < 0 ? text : text.substring(0, end);
        char delimiter = header.indexOf(';') >= 0 && header.indexOf(',') < 0 ? ';' : ',';
        return CSVFormat.RFC4180
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreEmptyLines(true)
                .setIgnoreSurroundingSpaces(true)
                .get();
    }

    private static List<String> columns(CSVRecord header, List<String> needed, Set<String> optional) {
        List<String> columns = new ArrayList<>();
        for (String cell : header) {
            String name = cell.strip().toLowerCase(Locale.ROOT);
            if (columns.contains(name)) {
                throw wrongColumns("column \"" + printable(name) + "\" is there twice", needed, optional);
            }
            if (!needed.contains(name) && !optional.contains(name)) {
                throw wrongColumns("column \"" + printable(name) + "\" is not known here", needed, optional);
            }
            columns.add(name);
        }
        for (String name : needed) {
            if (!columns.contains(name)) {
                throw wrongColumns("column \"" + name + "\" is missing", needed, optional);
            }
        }
        return columns;
    }

    private static Refusal wrongColumns(String what, List<String> needed, Set<String> optional) {
        String expected = "expected a first line with the columns " + String.join(", ", needed)
                + (optional.isEmpty()
                        ? ""
                        : " and, if wanted, "
                                + String.join(", ", optional.stream().sorted().toList()));
        return Refusal.importErrors(List.of(new Problem.Entry(1, null, what + "; " + expected)));
    }

    private void add(CSVRecord record, long line, List<String> columns) {
        if (lines.size() >= MOST_LINES) {
            throw Refusal.importErrors(List.of(new Problem.Entry(
                    (int) line, null, "at most " + MOST_LINES + " lines are read at once; split the file")));
        }
        if (record.size() != columns.size()) {
            error((int) line, null, "has " + record.size() + " cells, but the header has " + columns.size());
            return;
        }
        Map<String, String> cells = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            cells.put(columns.get(i), record.get(i).strip());
        }
        lines.add(new Line((int) line, cells));
    }

    /**
     * Data lines that have the right number of cells.
     *
     * @return the lines
     */
    public List<Line> lines() {
        return lines;
    }

    /**
     * Notes an error.
     *
     * @param line line of the file, from 1
     * @param column column, or null
     * @param message what is wrong and what was expected
     */
    public void error(int line, String column, String message) {
        errors.add(new Problem.Entry(line, column, message));
    }

    /**
     * Refuses when anything was noted.
     *
     * @throws Refusal listing the errors by line
     */
    public void refuseIfWrong() {
        if (!errors.isEmpty()) {
            errors.sort(java.util.Comparator.comparing(Problem.Entry::line));
            throw Refusal.importErrors(errors);
        }
    }

    /**
     * Makes foreign text fit to be quoted in a message.
     *
     * @param text text
     * @return at most 60 characters, none of them control characters
     */
    public static String printable(String text) {
        String plain = text.replaceAll("\\p{Cntrl}", "?");
        return plain.length() <= 60 ? plain : plain.substring(0, 59) + "…";
    }

    /**
     * A data line.
     *
     * @param number line of the file where it begins, from 1
     * @param cells cells by column, surrounding blanks removed
     */
    public record Line(int number, Map<String, String> cells) {
        /**
         * A cell.
         *
         * @param column column
         * @return its text, empty when the column is not there
         */
        public String cell(String column) {
            return cells.getOrDefault(column, "");
        }
    }
}
