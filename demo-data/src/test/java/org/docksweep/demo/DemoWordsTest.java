package org.docksweep.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.docksweep.contract.DemoHouse;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every sentence the demo makes has its words in both languages. */
class DemoWordsTest {
    private static final long SEED = 12;

    @Test
    void saysEveryPastEventInEnglishAndGerman() {
        DemoHouse papers = MarramCoastHire.of(SEED, LocalDate.of(2026, 3, 14)).papers();
        Set<String> kinds = papers.pastEvents().stream()
                .map(e -> {
                    String english = Reasons.text(e.text(), Locale.ENGLISH);
                    String german = Reasons.text(e.text(), Locale.GERMAN);
                    assertThat(english).doesNotContain("{").isNotEqualTo(german);
                    return e.text().key();
                })
                .collect(Collectors.toSet());
        assertThat(kinds).hasSize(5);
    }

    @ParameterizedTest
    @ValueSource(strings = {"rig-settings-wrong", "rig-busy", "rig-sample-rate", "rig-wrong-lead", "rig-stopped"})
    void saysEveryRefusalOfTheRig(String key) {
        assertThat(Reasons.text(Reason.of(key, "a", "b"), Locale.GERMAN))
                .isNotEqualTo(Reasons.text(Reason.of(key, "a", "b"), Locale.ENGLISH));
    }
}
