package org.docksweep.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class LogRankTest {
    /** Printed values of the remission data; see the data file. Tolerance: half a unit of the last digit printed. */
    @Test
    void reproducesTheRemissionComparison() {
        LogRank test = LogRank.of(LifeData.remission("placebo"), LifeData.remission("6-MP"));

        assertThat(test.first().failures()).isEqualTo(21);
        assertThat(test.second().failures()).isEqualTo(9);
        assertThat(test.first().expected()).isCloseTo(10.7, within(0.051));
        assertThat(test.second().expected()).isCloseTo(19.3, within(0.051));
        assertThat(test.chiSquared()).isCloseTo(16.8, within(0.05));
        assertThat(test.probability()).isCloseTo(4.17e-5, within(5e-8));
    }

    /**
     * By hand: ages 1 (2 and 2 at risk, first fails), 2 (1 and 2, second fails), 3 (1 and 1, first fails): expected of the
     * first 1/2 + 1/3 + 1/2 = 4/3, variance 1/4 + 2/9 + 1/4 = 13/18.
     */
    @Test
    void agreesWithTheHandCalculation() {
        LogRank test = LogRank.of(
                List.of(Lifetime.failedAt(1), Lifetime.failedAt(3)),
                List.of(Lifetime.failedAt(2), Lifetime.workedUntil(4)));

        assertThat(test.first().expected()).isCloseTo(4 / 3.0, within(1e-12));
        assertThat(test.second().expected()).isCloseTo(5 / 3.0, within(1e-12));
        assertThat(test.variance()).isCloseTo(13 / 18.0, within(1e-12));
        assertThat(test.chiSquared()).isCloseTo((2 / 3.0) * (2 / 3.0) / (13 / 18.0), within(1e-12));
        assertThat(test.hazardRatio()).isCloseTo(Math.exp((2 / 3.0) / (13 / 18.0)), within(1e-12));
    }

    @Test
    void saysTheSameOfExchangedGroups() {
        LogRank one = LogRank.of(LifeData.remission("placebo"), LifeData.remission("6-MP"));
        LogRank other = LogRank.of(LifeData.remission("6-MP"), LifeData.remission("placebo"));

        assertThat(other.chiSquared()).isCloseTo(one.chiSquared(), within(1e-9));
        assertThat(other.hazardRatio()).isCloseTo(1 / one.hazardRatio(), within(1e-9));
    }

    @Test
    void knowsThatNothingWasCompared() {
        LogRank test = LogRank.of(List.of(Lifetime.workedUntil(10)), List.of(Lifetime.workedUntil(20)));

        assertThat(test.probability()).isEqualTo(1);
        assertThat(test.hazardRatio(0.95)).isEqualTo(new Interval(0, Double.POSITIVE_INFINITY));
        assertThat(test.smallestRatioToShow()).isInfinite();
    }

    /** Schoenfeld: 65 failures in two equal groups show a doubling with 80 % power at 5 %; textbook value, from memory. */
    @Test
    void tellsWhatSoManyFailuresWouldShow() {
        LogRank test = new LogRank(new LogRank.Group(100, 33, 32.5), new LogRank.Group(100, 32, 32.5), 65 / 4.0, 0, 1);

        assertThat(test.smallestRatioToShow()).isCloseTo(2, within(0.01));
    }

    /** Exact Poisson limits: 0 failures, upper 97.5 % limit 3.68888; 10 failures 4.79539 to 18.39036 (tables, from memory). */
    @Test
    void setsExactLimitsToARate() {
        assertThat(new FailureRate(0, 1000).limitsPerThousandWeeks(0.95).lower())
                .isZero();
        assertThat(new FailureRate(0, 1000).limitsPerThousandWeeks(0.95).upper())
                .isCloseTo(3.68888, within(1e-5));
        assertThat(new FailureRate(10, 1000).limitsPerThousandWeeks(0.95).lower())
                .isCloseTo(4.79539, within(1e-5));
        assertThat(new FailureRate(10, 1000).limitsPerThousandWeeks(0.95).upper())
                .isCloseTo(18.39036, within(1e-5));
    }
}
