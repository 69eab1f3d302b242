package org.docksweep.gate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Small's equations on the reference driver of the check values (Re 6 ohm, fs 40 Hz, Qms 4, Qes 0.5; computed in closed form and
 * confirmed by an independent circuit simulator; equations: Small, JAES 20 (1972) 383 and JAES 21 (1973)).
 */
class SmallEquationsTest {
    private static final double RE_OHM = 6;
    private static final double RES_OHM = 48;
    private static final double LCES_H = 47.74648293e-3;
    private static final double CMES_F = 331.5727981e-6;
    /** Half a unit of the last digit of the table's frequencies. */
    private static final double TABLE = 0.6e-6;

    private static DoubleUnaryOperator magnitude(double alpha, double tuningHz, double leakQ) {
        return hz -> {
            double w = 2 * Math.PI * hz;
            Complex y = new Complex(1 / RES_OHM, w * CMES_F - 1 / (w * LCES_H));
            if (tuningHz > 0) {
                double coil = LCES_H / alpha;
                double wb = 2 * Math.PI * tuningHz;
                double loss = leakQ > 0 ? wb * coil / leakQ : 0;
                y = y.add(new Complex(loss, w * coil - wb * wb * coil / w).reciprocal());
            } else if (alpha > 0) {
                y = y.add(new Complex(0, -alpha / (w * LCES_H)));
            }
            return y.reciprocal().add(RE_OHM).norm();
        };
    }

    @Test
    void readsTheFreeDriverExactly() {
        ThreeFrequencyRule.Driver driver = ThreeFrequencyRule.driver(magnitude(0, 0, 0), 40, RE_OHM);
        assertThat(driver.lowerHz()).isCloseTo(27.72001873, within(2e-5));
        assertThat(driver.upperHz()).isCloseTo(57.72001873, within(2e-5));
        assertThat(driver.qms()).isCloseTo(4, within(1e-5));
        assertThat(driver.qes()).isCloseTo(0.5, within(1e-6));
        assertThat(driver.qts()).isCloseTo(0.444444, within(1e-6));
        // a public page prints fs sqrt(r0 / (f2 - f1)), which gives 21.91
        assertThat(driver.qms()).isNotCloseTo(21.91, within(1.0));
    }

    @ParameterizedTest
    @CsvSource({"1,56.56854249,0.707106781,5.656854249,0.628539361", "3,80,1.0,8.0,0.888888889"})
    void readsTheClosedBoxExactly(double alpha, double fc, double qec, double qmc, double qtc) {
        ThreeFrequencyRule.Driver driver = ThreeFrequencyRule.driver(magnitude(alpha, 0, 0), fc, RE_OHM);
        assertThat(driver.resonanceHz()).isCloseTo(fc, within(1e-5));
        assertThat(driver.qes()).isCloseTo(qec, within(1e-6));
        assertThat(driver.qms()).isCloseTo(qmc, within(1e-5));
        assertThat(driver.qts()).isCloseTo(qtc, within(1e-6));
        assertThat(driver.resonanceHz() * driver.qes() / (40 * 0.5) - 1).isCloseTo(alpha, within(1e-5));
    }

    /** Lossless: exact. With QL = 7: the known bias, 1 to 4 %, is why a fit and not this rule is used. */
    @ParameterizedTest
    @CsvSource({
        "2,40,0,20.705524,40,77.274066,40,2.0",
        "2,36,0,19.015983,36,75.725770,40,2.0",
        "2,40,7,20.624495,40.000000,77.577657,39.99927,2.0273",
        "1.5,36,7,20.536446,36.369536,70.069524,39.5655,1.5608"
    })
    void hasTheKnownBiasOnLossyVentedBoxes(
            double alpha, double fb, double leakQ, double fL, double fM, double fH, double fs, double foundAlpha) {
        DoubleUnaryOperator z = magnitude(alpha, fb, leakQ);
        double dip = Extrema.between(z, fL, fH, false);
        double lower = Extrema.nearest(z, dip, 5, -1, true);
        double upper = Extrema.nearest(z, dip, 300, 1, true);
        assertThat(lower).isCloseTo(fL, within(TABLE + fL * 1e-7));
        assertThat(dip).isCloseTo(fM, within(TABLE + fM * 1e-7));
        assertThat(upper).isCloseTo(fH, within(TABLE + fH * 1e-7));
        ThreeFrequencyRule.Vented box = ThreeFrequencyRule.vented(lower, dip, upper);
        assertThat(box.complianceRatio()).isCloseTo(foundAlpha, within(0.5e-3));
        assertThat(box.resonanceHz()).isCloseTo(fs, within(0.01));
        if (leakQ == 0) {
            assertThat(box.tuningHz()).isCloseTo(fb, within(1e-5));
        }
    }

    /** With fb 36, alpha 1.5, QL 7 the dip lies at 36.370 Hz, 1 % above the tuning: a dip is not a tuning. */
    @Test
    void doesNotTakeTheDipForTheTuning() {
        double dip = Extrema.between(magnitude(1.5, 36, 7), 21, 70, false);
        assertThat(dip / 36).isCloseTo(1.0103, within(1e-4));
    }

    @Test
    void refusesTwoPeaks() {
        assertThatThrownBy(() -> ThreeFrequencyRule.driver(hz -> 8, 40, RE_OHM))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("isolated peak");
    }
}
