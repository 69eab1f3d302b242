package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: IEC 60028 (alpha 0.00393 per kelvin at 20 C); values computed from it, four decimals. */
class CopperTest {
    private static final double PRINTED = 5e-5;

    @ParameterizedTest
    @CsvSource({"25,6.1179", "40,6.4716", "120,8.3580", "200,10.2444"})
    void followsTheTable(double celsius, double expectedOhm) {
        assertThat(Copper.at(6, celsius)).isCloseTo(expectedOhm, within(PRINTED));
    }

    @Test
    void refersAColdWorkshopReadingTo20C() {
        assertThat(Copper.referredTo20C(5.80, 12)).isCloseTo(5.988271, within(5e-7));
    }
}
