package org.docksweep.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LearnedSharesTest {
    private static final Instant NOW = Instant.parse("2026-11-26T02:00:00Z");
    private static final Duration YEAR = Duration.ofDays(365);
    private static final Map<String, Double> ALIKE = Map.of("a", 1.0, "b", 1.0, "c", 1.0);

    /** Textbook: (1,1,1) + (3,2,0) has means 0.5, 0.375, 0.125 and variances 0.027778, 0.026042, 0.012153. */
    @Test
    void addsWhatWasSeenToWhatIsUsual() {
        List<LearnedShares.Seen<String>> seen = List.of(seen("a"), seen("a"), seen("a"), seen("b"), seen("b"));

        LearnedShares<String> learned = LearnedShares.of(ALIKE, 3, seen, NOW, YEAR);

        assertThat(learned.share("a")).isCloseTo(0.5, within(1e-12));
        assertThat(learned.share("b")).isCloseTo(0.375, within(1e-12));
        assertThat(learned.share("c")).isCloseTo(0.125, within(1e-12));
        assertThat(learned.variance("a")).isCloseTo(0.027778, within(5e-7));
        assertThat(learned.variance("b")).isCloseTo(0.026042, within(5e-7));
        assertThat(learned.variance("c")).isCloseTo(0.012153, within(5e-7));
    }

    /** By hand: one sighting two half-lives ago counts 1/4, so a has (1 + 1/4) of (3 + 1/4). */
    @Test
    void forgetsHalfInAHalfLife() {
        LearnedShares<String> learned = LearnedShares.of(
                ALIKE,
                3,
                List.of(new LearnedShares.Seen<>(Map.of("a", 1.0), NOW.minus(YEAR.multipliedBy(2)))),
                NOW,
                YEAR);

        assertThat(learned.share("a")).isCloseTo(1.25 / 3.25, within(1e-12));
    }

    @Test
    void takesNeitherTheFutureNorTheUnknown() {
        LearnedShares<String> learned = LearnedShares.of(
                ALIKE,
                3,
                List.of(
                        new LearnedShares.Seen<>(Map.of("a", 1.0), NOW.plusSeconds(1)),
                        new LearnedShares.Seen<>(Map.of("z", 1.0), NOW)),
                NOW,
                YEAR);

        assertThat(learned.share("a")).isCloseTo(1 / 3.0, within(1e-12));
        assertThat(learned.share("z")).isZero();
    }

    @Test
    void refusesAUsualShareOfNothing() {
        assertThatThrownBy(() -> LearnedShares.of(Map.of("a", 0.0, "b", 1.0), 3, List.of(), NOW, YEAR))
                .hasMessageContaining("cause a");
    }

    private static LearnedShares.Seen<String> seen(String cause) {
        return new LearnedShares.Seen<>(Map.of(cause, 1.0), NOW);
    }
}
