package org.docksweep.kiosk.commands;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * One-port impedance in Touchstone files of version 1.1 (EIA/IBIS Open Forum, Touchstone File Format Specification).
 * Version 1 divides Z parameters by the reference resistance; it is 1 ohm here, so that the numbers are ohms.
 *
 * @param frequencyHz rising frequencies in hertz
 * @param resistanceOhm real parts in ohm
 * @param reactanceOhm imaginary parts in ohm
 */
record Touchstone(double[] frequencyHz, double[] resistanceOhm, double[] reactanceOhm) {
    /** Printed digits; a curve is never known to so many. */
    static final int DIGITS = 9;

    private static final String OPTION_LINE = "# HZ Z RI R 1";
    private static final int MAX_FILE_BYTES = 16 << 20;

    /** Units, parameter, number format and reference of an option line. */
    private record Options(double unitHz, String format, double referenceOhm) {}

    static Touchstone of(ImpedanceCurve curve) {
        return new Touchstone(curve.frequencyHz(), curve.resistanceOhm(), curve.reactanceOhm());
    }

    void print(PrintWriter out) {
        out.println("! one-port impedance in ohm");
        out.println(OPTION_LINE);
        for (int i = 0; i < frequencyHz.length; i++) {
            out.println(Digits.significant(frequencyHz[i], DIGITS)
                    + " "
                    + Digits.significant(resistanceOhm[i], DIGITS)
                    + " "
                    + Digits.significant(reactanceOhm[i], DIGITS));
        }
        out.flush();
    }

    /**
     * Reads a one-port file of Z parameters.
     *
     * @param file the file
     * @return the curve
     * @throws IOException if it cannot be read or is none; names file and line
     */
    static Touchstone read(Path file) throws IOException {
        if (!Files.isRegularFile(file)) {
            throw new IOException("there is no file " + file);
        }
        if (Files.size(file) > MAX_FILE_BYTES) {
            throw new IOException(file + " must have at most " + MAX_FILE_BYTES + " bytes");
        }
        Options options = null;
        List<double[]> rows = new ArrayList<>();
        String[] lines = new String(Files.readAllBytes(file), StandardCharsets.ISO_8859_1).split("\\R", -1);
        for (int i = 0; i < lines.length; i++) {
            String line = lines[i].replaceAll("!.*", "").strip();
            String at = file.getFileName() + ", line " + (i + 1) + ": ";
            if (line.startsWith("#")) {
                // The specification lets later option lines pass unread.
                options = options == null ? options(at, line) : options;
            } else if (!line.isEmpty()) {
                if (options == null) {
                    throw new IOException(at + "expected an option line like " + OPTION_LINE + " before the numbers");
                }
                rows.add(row(at, line, options, rows.isEmpty() ? 0 : rows.get(rows.size() - 1)[0]));
            }
        }
        if (rows.isEmpty()) {
            throw new IOException(file.getFileName() + ": holds no points");
        }
        return new Touchstone(column(rows, 0), column(rows, 1), column(rows, 2));
    }

    private static Options options(String at, String line) throws IOException {
        double unitHz = 1e9;
        String parameter = "S";
        String format = "MA";
        double referenceOhm = 50;
        String[] words = line.substring(1).strip().toUpperCase(Locale.ROOT).split("\\s+");
        for (int i = 0; i < words.length; i++) {
            switch (words[i]) {
                case "HZ" -> unitHz = 1;
                case "KHZ" -> unitHz = 1e3;
                case "MHZ" -> unitHz = 1e6;
                case "GHZ" -> unitHz = 1e9;
                case "S", "Y", "Z", "G", "H" -> parameter = words[i];
                case "RI", "MA", "DB" -> format = words[i];
                case "R" -> referenceOhm = number(at, i + 1 < words.length ? words[++i] : "nothing");
                default -> throw new IOException(at + "\"" + words[i] + "\" has no place in an option line");
            }
        }
        if (!parameter.equals("Z") || !(referenceOhm > 0)) {
            throw new IOException(at + "expected Z parameters and a positive reference resistance, but found "
                    + parameter + " and " + referenceOhm);
        }
        return new Options(unitHz, format, referenceOhm);
    }

    private static double[] row(String at, String line, Options options, double lastHz) throws IOException {
        String[] words = line.split("\\s+");
        if (words.length != 3) {
            throw new IOException(at + "expected a frequency and two numbers of one port, but found: " + line);
        }
        double frequencyHz = options.unitHz() * number(at, words[0]);
        double a = number(at, words[1]);
        double b = number(at, words[2]);
        if (!(frequencyHz > lastHz)) {
            throw new IOException(at + "frequencies must rise, but " + frequencyHz + " Hz follows " + lastHz + " Hz");
        }
        if (options.format().equals("RI")) {
            return new double[] {frequencyHz, a * options.referenceOhm(), b * options.referenceOhm()};
        }
        double magnitude = options.referenceOhm() * (options.format().equals("DB") ? StrictMath.pow(10, a / 20) : a);
        double angle = StrictMath.toRadians(b);
        return new double[] {frequencyHz, magnitude * StrictMath.cos(angle), magnitude * StrictMath.sin(angle)};
    }

    private static double number(String at, String word) throws IOException {
        try {
            double value = Double.parseDouble(word);
            if (Double.isFinite(value)) {
                return value;
            }
        } catch (NumberFormatException e) {
            throw new IOException(at + "expected a number, but found " + word, e);
        }
        throw new IOException(at + "expected a finite number, but found " + word);
    }

    private static double[] column(List<double[]> rows, int index) {
        return rows.stream().mapToDouble(row -> row[index]).toArray();
    }
}
