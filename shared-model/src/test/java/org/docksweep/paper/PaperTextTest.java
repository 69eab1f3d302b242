package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import java.util.stream.Stream;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.PartSource;
import org.docksweep.fleet.ProcedurePurpose;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Sighting;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class PaperTextTest {
    private final PaperText english = new PaperText(SampleTag.ENGLISH);
    private final PaperText german = new PaperText(SampleTag.GERMAN);

    @Test
    void hasTheSameKeysInBothLanguages() throws IOException {
        Properties root = bundle("paper.properties");
        Properties translated = bundle("paper_de.properties");

        assertThat(translated.keySet()).isEqualTo(root.keySet());
        assertThat(root.values()).noneMatch(value -> value.toString().isBlank());
        assertThat(translated.values()).noneMatch(value -> value.toString().isBlank());
    }

    @Test
    void hasTheSamePlaceholdersInBothLanguages() throws IOException {
        Properties root = bundle("paper.properties");
        Properties translated = bundle("paper_de.properties");

        root.stringPropertyNames()
                .forEach(key -> assertThat(placeholders(translated.getProperty(key)))
                        .as(key)
                        .isEqualTo(placeholders(root.getProperty(key))));
    }

    static Stream<Arguments> words() {
        return Stream.of(
                Arguments.of("verdict", Verdict.values()),
                Arguments.of("route", Route.values()),
                Arguments.of("damage", VisualItem.values()),
                Arguments.of("source", PartSource.values()),
                Arguments.of("event", HistoryEvent.Kind.values()),
                Arguments.of("reading", ReadingKind.values()),
                Arguments.of("state", ReadingState.values()),
                Arguments.of("fault", FaultKind.values()),
                Arguments.of("likelihood", Suspect.Likelihood.values()),
                Arguments.of("job-state", BenchJobBody.State.values()),
                Arguments.of("purpose", ProcedurePurpose.values()),
                Arguments.of("seen", Sighting.values()),
                Arguments.of("charge", ChargeClass.values()),
                Arguments.of("removed", PartExchangeBody.What.values()),
                Arguments.of("swept", ProofSweepBody.Subject.values()),
                Arguments.of("polarity", ProofSweepBody.Polarity.values()));
    }

    @ParameterizedTest
    @MethodSource("words")
    void hasAWordForEveryConstant(String group, Enum<?>[] constants) {
        for (Enum<?> constant : constants) {
            assertThat(english.word(group, constant)).isNotBlank();
            assertThat(german.word(group, constant)).isNotBlank();
        }
    }

    @ParameterizedTest
    @CsvSource({
        "DC_RESISTANCE, 5.617, 5.62",
        "DC_RESISTANCE, 56.17, 56.2",
        "PEAK_MAGNITUDE, 561.7, 562",
        "PEAK_MAGNITUDE, 1e9, > 9999",
        "PEAK_FREQUENCY, 83.14, 83.1",
        "PEAK_FREQUENCY, 1234.5, 1234",
        "WAY_LEVEL, -6.04, \u22126.0",
        "MINIMUM, NaN, \u2013"
    })
    void roundsToWhatAReaderNeeds(ReadingKind kind, double value, String shown) {
        assertThat(english.value(kind, value).replace(",", "")).isEqualTo(shown);
    }

    private static String placeholders(String pattern) {
        return java.util.regex.Pattern.compile("\\{(\\d)")
                .matcher(pattern)
                .results()
                .map(match -> match.group(1))
                .sorted()
                .distinct()
                .reduce("", String::concat);
    }

    private static Properties bundle(String name) throws IOException {
        Properties properties = new Properties();
        try (InputStream stream = PaperText.class.getResourceAsStream(name)) {
            properties.load(stream);
        }
        return properties;
    }
}
