package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ThirdOctaveTest {
    /** Exact base-ten mid-band frequencies beside their nominal names (IEC 61260-1:2014, table from memory). */
    @ParameterizedTest
    @CsvSource({
        "-16, 25.119",
        "-15, 31.623",
        "-12, 63.096",
        "-9, 125.89",
        "-6, 251.19",
        "-3, 501.19",
        "0, 1000",
        "3, 1995.3",
        "6, 3981.1",
        "9, 7943.3",
        "12, 15849",
        "13, 19953"
    })
    void centresAreThoseOfTheStandard(int index, double exactHz) {
        assertThat(ThirdOctave.centreHz(index)).isCloseTo(exactHz, within(exactHz * 3e-5));
    }

    @Test
    void tenBandsAreADecadeAndThreeAnOctaveOfTheStandard() {
        assertThat(ThirdOctave.centreHz(10) / ThirdOctave.centreHz(0)).isCloseTo(10, within(1e-12));
        assertThat(ThirdOctave.centreHz(3) / ThirdOctave.centreHz(0)).isCloseTo(1.995262, within(1e-6));
    }

    @Test
    void takesOnlyBandsThatFit() {
        assertThat(ThirdOctave.centresWithin(890, 1123)).containsExactly(1000);
        assertThat(ThirdOctave.centresWithin(892, 1123)).isEmpty();
        assertThat(ThirdOctave.centresWithin(20, 20000)).hasSize(29);
    }
}
