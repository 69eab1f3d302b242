package org.docksweep.fleet;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ReasonsTest {
    private static final Pattern PLACEHOLDER = Pattern.compile("\\{[0-9]+[^}]*}");

    /** Both sides of a merge are kept in these files, so the same key may arrive twice, and the last one would win. */
    @ParameterizedTest
    @ValueSource(strings = {"reasons.properties", "reasons_de.properties"})
    void givesEveryKeyOnce(String file) throws IOException {
        assertThat(lines(file)).extracting(line -> line.split("=", 2)[0]).doesNotHaveDuplicates();
    }

    @Test
    void saysTheSameKeysInBothLanguages() throws IOException {
        assertThat(texts("reasons_de.properties").keySet())
                .isEqualTo(texts("reasons.properties").keySet());
    }

    @Test
    void takesTheSameArgumentsInBothLanguages() throws IOException {
        Map<String, String> german = texts("reasons_de.properties");
        texts("reasons.properties")
                .forEach((key, english) ->
                        assertThat(placeholders(german.get(key))).as(key).isEqualTo(placeholders(english)));
    }

    /** An apostrophe that stands alone would swallow the placeholders behind it. */
    @ParameterizedTest
    @ValueSource(strings = {"reasons.properties", "reasons_de.properties"})
    void showsEveryArgumentATextNames(String file) throws IOException {
        texts(file)
                .forEach((key, text) -> assertThat(new MessageFormat(text, Locale.ROOT).getFormatsByArgumentIndex())
                        .as(key)
                        .hasSize(1 + highest(text)));
    }

    @Test
    void namesTheKeyThatHasNoText() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Reasons.text(Reason.of("no-such-reason"), Locale.ENGLISH))
                .withMessageContaining("no-such-reason");
    }

    private static int highest(String text) {
        return PLACEHOLDER
                .matcher(text)
                .results()
                .mapToInt(r -> Integer.parseInt(r.group().replaceAll("[^0-9]", "")))
                .max()
                .orElse(-1);
    }

    private static List<String> placeholders(String text) {
        return PLACEHOLDER
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .distinct()
                .sorted()
                .toList();
    }

    private static Map<String, String> texts(String file) throws IOException {
        Map<String, String> texts = new TreeMap<>();
        for (String line : lines(file)) {
            String[] parts = line.split("=", 2);
            assertThat(parts).as("a line of %s: %s", file, line).hasSize(2);
            texts.put(parts[0], parts[1]);
        }
        return texts;
    }

    private static List<String> lines(String file) throws IOException {
        try (BufferedReader reader = new BufferedReader(
                new InputStreamReader(Reasons.class.getResourceAsStream(file), StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .toList();
        }
    }
}
