package org.docksweep.service;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.junit.jupiter.api.Test;

class HistoryTextsTest {
    private static final Pattern KEY = Pattern.compile("\"(history-[a-z-]+)\"");

    @Test
    void everyEventTheServiceWritesHasWordsInBothLanguages() throws IOException {
        Set<String> keys = new TreeSet<>();
        try (Stream<Path> files = Files.walk(Path.of("src/main/java"))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                KEY.matcher(Files.readString(file))
                        .results()
                        .map((MatchResult r) -> r.group(1))
                        .forEach(keys::add);
            }
        }
        assertThat(keys).contains("history-registered", "history-missing").hasSizeGreaterThan(5);
        for (Locale locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(keys)
                    .allSatisfy(key -> assertThat(Reasons.text(Reason.of(key, "a", "b"), locale))
                            .isNotBlank());
        }
    }
}
