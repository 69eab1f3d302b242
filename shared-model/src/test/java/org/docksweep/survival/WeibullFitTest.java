package org.docksweep.survival;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WeibullFitTest {
    private static final double CONFIDENCE = 0.95;

    /** Published maximum likelihood estimates; tolerance is half a unit of the last digit printed. Sources in the data file. */
    @ParameterizedTest
    @CsvSource({
        "nist_apr413,   1.7208,  606.5280, 5e-5, 5e-4",
        "jqt1997,       2.7540,   67.9188, 5e-5, 5e-5",
        "abernethy_c5,  2.257,  4900.1,    5e-4, 0.05",
        "abernethy_fig2_5, 3.0170, 87.956, 5e-5, 5e-4",
        "bury_17_3,     1.89833, 1467.761, 5e-6, 5e-4",
        "rinne_p338,    2.59566,   99.2079, 5e-6, 5e-5"
    })
    void reproducesPublishedFits(String dataset, double shape, double scale, double shapeDigits, double scaleDigits) {
        WeibullFit fit = fit(LifeData.weibull(dataset));

        assertThat(fit.weibull().shape()).isCloseTo(shape, within(shapeDigits));
        assertThat(fit.weibull().scale()).isCloseTo(scale, within(scaleDigits));
    }

    /** NIST/SEMATECH e-Handbook 8.4.1.3: logarithm of the likelihood and mean life as printed. */
    @Test
    void reproducesTheHandbooksLikelihood() {
        WeibullFit fit = fit(LifeData.weibull("nist_apr413"));

        assertThat(fit.logLikelihood()).isCloseTo(-75.135, within(5e-4));
        assertThat(-2 * fit.logLikelihood() + 4).isCloseTo(154.27, within(5e-3));
        assertThat(fit.failures()).isEqualTo(10);
        assertThat(fit.parts()).isEqualTo(20);
    }

    @Test
    void agreesWithExactLivesWhenIntervalsShrink() {
        List<Lifetime> exact = LifeData.weibull("nist_apr413");
        List<Lifetime> narrow = exact.stream()
                .map(l -> l.failed() ? Lifetime.failedBetween(l.failedAge() - 1e-4, l.failedAge() + 1e-4) : l)
                .toList();

        assertThat(fit(narrow).weibull().shape()).isCloseTo(fit(exact).weibull().shape(), within(1e-5));
        assertThat(fit(narrow).tenPercentAge().lower())
                .isCloseTo(fit(exact).tenPercentAge().lower(), within(1e-3));
    }

    @Test
    void holdsTheThresholdAtTheEndsOfItsIntervals() {
        List<Lifetime> lives = LifeData.weibull("bury_17_3");
        WeibullFit fit = (WeibullFit) WeibullFit.of(lives, CONFIDENCE, WeibullFit.Threshold.MANY_FAILURES);
        WeibullLikelihood likelihood = new WeibullLikelihood(lives);

        for (double end : new double[] {fit.scale().lower(), fit.scale().upper()}) {
            double best = Double.NEGATIVE_INFINITY;
            for (double logShape = -2; logShape < 3; logShape += 1e-4) {
                best = Math.max(best, likelihood.of(Math.log(end), 0, logShape));
            }
            // Half of the 95 % quantile of chi squared with one degree of freedom, 3.841459.
            assertThat(fit.logLikelihood() - best).isCloseTo(1.920729, within(1e-4));
        }
    }

    @Test
    void widensItsIntervalsForFewFailuresOnly() {
        assertThat(WeibullFit.Threshold.FEW_FAILURES.of(CONFIDENCE, 5)).isGreaterThan(5);
        assertThat(WeibullFit.Threshold.FEW_FAILURES.of(CONFIDENCE, 5_000)).isCloseTo(3.8415, within(0.005));
    }

    @Test
    void saysThatTooFewFailuresSettleNothing() {
        List<Lifetime> lives = new ArrayList<>();
        for (int i = 0; i < 50; i++) {
            lives.add(Lifetime.workedUntil(100 + i));
        }
        lives.add(Lifetime.failedAt(20));
        lives.add(Lifetime.failedAt(60));
        lives.add(Lifetime.failedAt(70));

        assertThat(WeibullFit.of(lives, CONFIDENCE))
                .isEqualTo(new WeibullAnswer.Unsettled(WeibullAnswer.Why.TOO_FEW_FAILURES, 3));
    }

    @Test
    void saysThatFailuresAtOneAgeSettleNothing() {
        List<Lifetime> lives =
                List.of(Lifetime.failedAt(30), Lifetime.failedAt(30), Lifetime.failedAt(30), Lifetime.failedAt(30));

        assertThat(WeibullFit.of(lives, CONFIDENCE))
                .isEqualTo(new WeibullAnswer.Unsettled(WeibullAnswer.Why.NO_MAXIMUM, 4));
    }

    @Test
    void survivesFailuresFoundAtTheFirstReturn() {
        List<Lifetime> lives = List.of(
                Lifetime.failedBetween(0, 3),
                Lifetime.failedBetween(0, 4),
                Lifetime.failedBetween(12, 15),
                Lifetime.failedBetween(40, 44),
                Lifetime.workedUntil(80),
                Lifetime.workedUntil(300).observedFrom(150));

        WeibullFit fit = fit(lives);

        assertThat(fit.weibull().shape()).isBetween(0.2, 1.2);
        assertThat(fit.shape().contains(fit.weibull().shape())).isTrue();
        assertThat(fit.scale().contains(fit.weibull().scale())).isTrue();
        assertThat(fit.tenPercentAge().contains(fit.weibull().age(0.1))).isTrue();
    }

    static WeibullFit fit(List<Lifetime> lives) {
        WeibullAnswer answer = WeibullFit.of(lives, CONFIDENCE);
        assertThat(answer).isInstanceOf(WeibullFit.class);
        return (WeibullFit) answer;
    }
}
