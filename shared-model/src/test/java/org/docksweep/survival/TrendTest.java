package org.docksweep.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TrendTest {
    private static final Trend.Rule LEVEL_DB = new Trend.Rule(0.3, 1.5);

    @Test
    void saysHowMuchWasLostInHowManyReturns() {
        Trend trend = Trend.of(List.of(0.1, -0.1, 0.0, -0.7, -1.4, -2.0), LEVEL_DB);

        assertThat(trend.state()).isEqualTo(Trend.State.FALLING);
        assertThat(trend.returns()).isEqualTo(3);
        assertThat(trend.change()).isCloseTo(-2.0, within(1e-12));
        assertThat(trend.perReturn()).isCloseTo(-2 / 3.0, within(1e-12));
    }

    /**
     * By hand: start 0 from one reading; three readings -0.7, -1.4, -2.1 with weights 0.144, 0.24, 0.4 give -1.2768; the
     * width is 3.5 * 0.3 * sqrt(0.238336 + 0.784^2) = 0.96975.
     */
    @Test
    void setsLimitsForFewReadings() {
        Trend trend = Trend.of(List.of(0.0, -0.7, -1.4, -2.1), LEVEL_DB);

        assertThat(trend.smoothed()).isCloseTo(-1.2768, within(1e-9));
        assertThat(trend.limits().upper()).isCloseTo(0.96975, within(1e-4));
        assertThat(trend.state()).isEqualTo(Trend.State.FALLING);
        assertThat(trend.returns()).isEqualTo(3);
    }

    @Test
    void keepsQuietAboutWhatDoesNotMatter() {
        List<Double> clearButSmall = List.of(0.0, 0.0, 0.0, 0.0, -0.9, -0.9, -0.9, -0.9, -0.9);

        Trend trend = Trend.of(clearButSmall, new Trend.Rule(0.05, 1.5));

        assertThat(trend.limits().contains(trend.smoothed())).isFalse();
        assertThat(trend.state()).isEqualTo(Trend.State.STEADY);
    }

    @Test
    void believesNoSingleOutlier() {
        assertThat(Trend.of(List.of(0.0, 0.1, -0.1, 0.0, -1.6, 0.1, 0.0), LEVEL_DB)
                        .state())
                .isEqualTo(Trend.State.STEADY);
    }

    @Test
    void saysNothingOfThreeReadings() {
        assertThat(Trend.of(List.of(0.0, -2.0, -4.0), LEVEL_DB).state()).isEqualTo(Trend.State.TOO_FEW);
        assertThat(Trend.of(List.of(), LEVEL_DB).state()).isEqualTo(Trend.State.TOO_FEW);
    }

    @Test
    void refusesReadingsThatAreNone() {
        assertThatThrownBy(() -> Trend.of(List.of(0.0, Double.NaN), LEVEL_DB))
                .hasMessageContaining("reading of a trend");
    }

    /** Looked at after every return: 2,000 healthy units over 30 returns, 2,000 that lose 2 dB over three returns. */
    @Test
    void seldomWarnsOfAHealthyUnitAndMostlyOfAFailingOne() {
        SplittableRandom random = new SplittableRandom(7);
        int warned = 0;
        int caught = 0;
        for (int unit = 0; unit < 2_000; unit++) {
            List<Double> readings = new ArrayList<>();
            boolean everWarned = false;
            for (int i = 0; i < 30; i++) {
                readings.add(gauss(random) * LEVEL_DB.spread());
                everWarned |= warns(readings);
            }
            warned += everWarned ? 1 : 0;
            for (int i = 1; i <= 3; i++) {
                readings.add(gauss(random) * LEVEL_DB.spread() - i * 2 / 3.0);
            }
            caught += warns(readings) ? 1 : 0;
        }
        assertThat(warned)
                .as("healthy units warned of, of 2,000 over 30 returns")
                .isLessThanOrEqualTo(4);
        assertThat(caught).as("units that lost 2 dB in three returns, of 2,000").isGreaterThanOrEqualTo(1_700);
    }

    @Test
    void learnsTheSpreadFromManyUnitsAndKeepsTheUsualForNone() {
        SplittableRandom random = new SplittableRandom(3);
        List<List<Double>> series = new ArrayList<>();
        for (int unit = 0; unit < 200; unit++) {
            List<Double> one = new ArrayList<>();
            for (int i = 0; i < 10; i++) {
                // Every tenth unit is on its way down; it must not widen the limits of the others.
                one.add(gauss(random) * 0.2 - (unit % 10 == 0 ? 0.8 * i : 0));
            }
            series.add(one);
        }
        assertThat(HealthySpread.of(series, 0.5)).isCloseTo(0.2, within(0.03));
        assertThat(HealthySpread.of(List.of(), 0.5)).isEqualTo(0.5);
        assertThat(HealthySpread.of(List.of(List.of(1.0)), 0.5)).isEqualTo(0.5);
    }

    private static boolean warns(List<Double> readings) {
        Trend.State state = Trend.of(readings, LEVEL_DB).state();
        return state == Trend.State.FALLING || state == Trend.State.RISING;
    }

    private static double gauss(SplittableRandom random) {
        return Math.sqrt(-2 * Math.log(1 - random.nextDouble())) * Math.cos(2 * Math.PI * random.nextDouble());
    }
}
