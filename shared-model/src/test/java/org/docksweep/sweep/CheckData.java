package org.docksweep.sweep;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Tables of outside values; each file names its source in its header. */
final class CheckData {
    private CheckData() {}

    /** Rows of numbers, without comments and the heading. */
    static List<double[]> rows(String file) {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                CheckData.class.getResourceAsStream("/org/docksweep/check/" + file), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#"))
                    .skip(1)
                    .map(line -> java.util.Arrays.stream(line.split(","))
                            .mapToDouble(Double::parseDouble)
                            .toArray())
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
