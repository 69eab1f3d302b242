package org.docksweep.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.distribution.continuous.GammaDistribution;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.junit.jupiter.api.Test;

/**
 * Worked examples of JCGM 106:2012, values and their standing in {@code org/docksweep/check/jcgm106_cases.csv}: inputs of resistors and
 * ball bearings seen in independent code, printed results of the one-sided ones from memory, all recomputed.
 */
class ConformanceTest {
    /** The recomputed values carry seven digits. */
    private static final double DIGITS = 2e-6;

    private static final double NONE_BELOW = Double.NEGATIVE_INFINITY;
    private static final double NONE_ABOVE = Double.POSITIVE_INFINITY;

    @Test
    void givesTheProbabilitiesOfOneSidedLimits() {
        assertThat(Conformance.probabilityWithin(NONE_BELOW, -5.40, -5.47, 0.05))
                .isCloseTo(0.9192433, within(DIGITS));
        assertThat(Conformance.probabilityWithin(490, NONE_ABOVE, 509.7, 8.6)).isCloseTo(0.9890095, within(DIGITS));
    }

    @Test
    void drawsGuardBands() {
        double atGuard = LimitSet.initial().guardFactor();
        assertThat(Conformance.probabilityWithin(NONE_BELOW, 6, Conformance.acceptanceLimit(6, atGuard, 0.4), 0.4))
                .as("95 %% one-sided, as table 1 rounds it")
                .isCloseTo(0.95, within(6e-4));
        // guarded rejection: 100 km/h, 2 % of the reading, 99.9 %
        double reading = 106.5876;
        assertThat(reading - 3.0902 * 0.02 * reading).isCloseTo(100, within(1e-3));
        assertThat(Conformance.acceptanceLimit(100, -3.0902, 0.02 * reading)).isCloseTo(reading, within(1e-3));
        assertThat(Conformance.probabilityWithin(100, NONE_ABOVE, reading, 0.02 * reading))
                .isCloseTo(0.999, within(1e-6));
    }

    @Test
    void addsUpToTheRisksOfTheResistors() {
        NormalDistribution made = new NormalDistribution(1500, 0.12);
        double consumer = 0;
        double producer = 0;
        double step = 1e-4;
        for (double ohm = 1498.5; ohm < 1501.5; ohm += step) {
            double accepted = Conformance.probabilityWithin(1499.82, 1500.18, ohm, 0.04);
            boolean conforms = ohm >= 1499.8 && ohm <= 1500.2;
            consumer += conforms ? 0 : made.density(ohm) * accepted * step;
            producer += conforms ? made.density(ohm) * (1 - accepted) * step : 0;
        }
        assertThat(consumer).isCloseTo(0.0098783, within(1e-5));
        assertThat(producer).isCloseTo(0.0690265, within(1e-5));
    }

    @Test
    void addsUpToTheRisksOfTheBallBearings() {
        assertThat(falselyAccepted(2)).isCloseTo(0.0080191, within(1e-5));
        assertThat(falselyAccepted(1.6718288)).isCloseTo(0.001, within(1e-5));
    }

    private static double falselyAccepted(double acceptanceUm) {
        GammaDistribution made = new GammaDistribution(4, 0.25);
        DoubleUnaryOperator accepted = um -> Conformance.probabilityWithin(NONE_BELOW, acceptanceUm, um, 0.25);
        double sum = 0;
        double step = 1e-4;
        for (double um = 2 + step / 2; um < 12; um += step) {
            sum += made.density(um) * accepted.applyAsDouble(um) * step;
        }
        return sum;
    }
}
