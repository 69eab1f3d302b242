package org.docksweep.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class SurvivalCurveTest {
    private static final double CONFIDENCE = 0.95;
    /** The handbook prints four decimals; the chain of fractions gives the rest. */
    private static final double PRINTED = 5e-5;

    /** NIST/SEMATECH e-Handbook 8.2.1.5; see the data file. */
    @Test
    void reproducesTheHandbooksExample() {
        SurvivalCurve curve = SurvivalCurve.of(LifeData.kaplanMeier(), CONFIDENCE);

        double[] chain = {
            19 / 20.0,
            19 / 20.0 * 18 / 19,
            19 / 20.0 * 18 / 19 * 16 / 17,
            19 / 20.0 * 18 / 19 * 16 / 17 * 15 / 16,
            19 / 20.0 * 18 / 19 * 16 / 17 * 15 / 16 * 13 / 14,
            19 / 20.0 * 18 / 19 * 16 / 17 * 15 / 16 * 13 / 14 * 10 / 11
        };
        double[] errors = {0.04873, 0.06708, 0.08139, 0.09192, 0.10136, 0.11214};
        assertThat(curve.steps())
                .extracting(SurvivalCurve.Step::age)
                .containsExactly(10.0, 32.0, 56.0, 98.0, 122.0, 181.0);
        assertThat(curve.steps()).extracting(SurvivalCurve.Step::atRisk).containsExactly(20, 19, 17, 16, 14, 11);
        for (int i = 0; i < chain.length; i++) {
            assertThat(curve.steps().get(i).survival()).isCloseTo(chain[i], within(1e-12));
            assertThat(curve.steps().get(i).standardError()).isCloseTo(errors[i], within(5e-6));
        }
        assertThat(curve.survivalAt(200)).isCloseTo(0.6704, within(PRINTED));
        assertThat(curve.survivalAt(9.9)).isEqualTo(1);
        assertThat(curve.median()).isEmpty();
    }

    /** Textbook values of the 6-MP group, from memory; see the data file. */
    @Test
    void reproducesTheRemissionCurve() {
        SurvivalCurve curve = SurvivalCurve.of(LifeData.remission("6-MP"), CONFIDENCE);

        double[] shares = {0.857, 0.807, 0.753, 0.690, 0.627, 0.538, 0.448};
        double[] errors = {0.0764, 0.0869, 0.0963, 0.1068, 0.1141, 0.1282, 0.1346};
        for (int i = 0; i < shares.length; i++) {
            assertThat(curve.steps().get(i).survival()).isCloseTo(shares[i], within(6e-4));
            assertThat(curve.steps().get(i).standardError()).isCloseTo(errors[i], within(6e-5));
        }
        assertThat(curve.median()).hasValue(23);
    }

    /** By hand: S = 0.95, sum d/(n(n-d)) = 1/(20*19), spread = 1.959964 sqrt(1/380) / |ln 0.95| = 1.960176. */
    @Test
    void setsLimitsOnTheLogLogScale() {
        Interval limits = SurvivalCurve.of(LifeData.kaplanMeier(), CONFIDENCE)
                .steps()
                .get(0)
                .limits();

        double spread = 1.959964 * Math.sqrt(1 / 380.0) / -Math.log(0.95);
        assertThat(limits.lower()).isCloseTo(Math.pow(0.95, Math.exp(spread)), within(1e-6));
        assertThat(limits.upper()).isCloseTo(Math.pow(0.95, Math.exp(-spread)), within(1e-6));
    }

    @Test
    void countsAPartThatCameOldOnlyFromItsEntryOn() {
        List<Lifetime> lives = List.of(
                Lifetime.failedAt(5),
                Lifetime.failedAt(20),
                Lifetime.failedAt(30).observedFrom(10),
                Lifetime.workedUntil(40).observedFrom(10));

        SurvivalCurve curve = SurvivalCurve.of(lives, CONFIDENCE);

        assertThat(curve.steps()).extracting(SurvivalCurve.Step::atRisk).containsExactly(2, 3, 2);
        assertThat(curve.survivalAt(30)).isCloseTo(1 / 2.0 * 2 / 3 * 1 / 2, within(1e-12));
    }

    @Test
    void fallsToNothingWithTheUpperLimitOfTheStepBefore() {
        SurvivalCurve curve = SurvivalCurve.of(List.of(Lifetime.failedAt(3), Lifetime.failedAt(7)), CONFIDENCE);

        SurvivalCurve.Step last = curve.steps().get(1);
        assertThat(last.survival()).isZero();
        assertThat(last.limits())
                .isEqualTo(new Interval(0, curve.steps().get(0).limits().upper()));
    }

    @Test
    void staysAtOneWithoutFailures() {
        SurvivalCurve curve = SurvivalCurve.of(List.of(Lifetime.workedUntil(50)), CONFIDENCE);

        assertThat(curve.steps()).isEmpty();
        assertThat(curve.survivalAt(1e6)).isEqualTo(1);
    }

    @Test
    void refusesLivesThatCannotBe() {
        assertThatThrownBy(() -> Lifetime.failedBetween(10, 5))
                .hasMessageContaining("10.0")
                .hasMessageContaining("5.0");
        assertThatThrownBy(() -> Lifetime.workedUntil(Double.NaN)).hasMessageContaining("last good age");
        assertThatThrownBy(() -> Lifetime.failedAt(0)).hasMessageContaining("faulty delivery");
        assertThatThrownBy(() -> Lifetime.workedUntil(5).observedFrom(6)).hasMessageContaining("6.0");
        assertThatThrownBy(() -> SurvivalCurve.of(List.of(), 95)).hasMessageContaining("0.95");
    }
}
