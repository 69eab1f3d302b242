package org.docksweep.rigcal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Tables of outside values; each file names its source in its header. */
final class CheckData {
    private CheckData() {}

    /** A column of numbers, without comments and the heading. */
    static double[] column(String file, int column) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                CheckData.class.getResourceAsStream("/org/docksweep/check/" + file), StandardCharsets.UTF_8))) {
            List<String> lines =
                    reader.lines().filter(l -> !l.startsWith("#")).skip(1).toList();
            return lines.stream()
                    .mapToDouble(line -> Double.parseDouble(line.split(",")[column]))
                    .toArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
