package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class FrequencyGridTest {
    /** Rounding of a power and a logarithm in double precision. */
    private static final double ROUNDING = 1e-12;

    @Test
    void passesThroughOneKilohertzAndItsOctaves() {
        assertThat(FrequencyGrid.pointHz(0)).isEqualTo(1000);
        assertThat(FrequencyGrid.pointHz(24)).isEqualTo(2000);
        assertThat(FrequencyGrid.pointHz(-48)).isEqualTo(250);
    }

    @Test
    void sharesPointsBetweenBands() {
        double[] wide = FrequencyGrid.within(20, 20000);
        double[] narrow = FrequencyGrid.within(300, 5000);
        assertThat(wide).contains(narrow);
        assertThat(wide[0]).isGreaterThanOrEqualTo(20);
        assertThat(wide[wide.length - 1]).isLessThanOrEqualTo(20000);
    }

    @Test
    void spacesPointsByATwentyFourthOfAnOctave() {
        double[] points = FrequencyGrid.within(20, 20000);
        for (int i = 1; i < points.length; i++) {
            assertThat(Math.log(points[i] / points[i - 1]) / Math.log(2)).isCloseTo(1 / 24.0, within(ROUNDING));
        }
    }

    @Test
    void includesEndsThatAreGridPoints() {
        assertThat(FrequencyGrid.within(500, 1000)).hasSize(25).startsWith(500).endsWith(1000);
    }

    @Test
    void isEmptyBetweenTwoPoints() {
        assertThat(FrequencyGrid.within(1001, 1002)).isEmpty();
    }

    @Test
    void refusesBandsThatAreNone() {
        assertThatIllegalArgumentException().isThrownBy(() -> FrequencyGrid.within(Double.NaN, 100));
        assertThatIllegalArgumentException().isThrownBy(() -> FrequencyGrid.within(100, Double.NaN));
        assertThatIllegalArgumentException().isThrownBy(() -> FrequencyGrid.within(100, 50));
        assertThatIllegalArgumentException().isThrownBy(() -> FrequencyGrid.within(0, 50));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FrequencyGrid.within(100, 1e300))
                .withMessageContaining("1000000");
    }

    @Test
    void findsTheNearestPoint() {
        assertThat(FrequencyGrid.nearestIndex(1000)).isZero();
        assertThat(FrequencyGrid.nearestIndex(1014)).isZero();
        assertThat(FrequencyGrid.nearestIndex(1016)).isEqualTo(1);
    }
}
