package org.docksweep.survival;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** Published lives, read from files that stand beside their source. */
final class LifeData {
    private LifeData() {}

    static List<Lifetime> weibull(String dataset) {
        return rows("weibull_censored_published.csv").stream()
                .filter(r -> r[0].equals(dataset))
                .map(r -> life(r[1], r[2]))
                .toList();
    }

    static List<Lifetime> kaplanMeier() {
        return rows("kaplan_meier_nist_8215.csv").stream()
                .map(r -> life(r[0], r[1]))
                .toList();
    }

    static List<Lifetime> remission(String group) {
        return rows("remission_freireich_1963.csv").stream()
                .filter(r -> r[0].equals(group))
                .map(r -> life(r[1], r[2]))
                .toList();
    }

    /** Rows of a file without comments and head, split at commas. */
    static List<String[]> rows(String file) {
        try (InputStream stream = LifeData.class.getResourceAsStream(file);
                BufferedReader reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(l -> !l.startsWith("#"))
                    .skip(1)
                    .map(l -> l.split(","))
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Lifetime life(String age, String status) {
        double known = Double.parseDouble(age);
        return status.equals("1") ? Lifetime.failedAt(known) : Lifetime.workedUntil(known);
    }
}
