package org.docksweep.gate;

import static org.assertj.core.api.Assertions.assertThat;

import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.ModelBook;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Source: IEC 60268-5:2003+A1:2007, clause 16.1 (80 % of the rated impedance; equality passes). */
class RatedImpedanceRuleTest {
    @ParameterizedTest
    @CsvSource({"6.40,8,true", "6.39,8,false", "3.20,4,true", "4.79,6,false", "12.8,16,true"})
    void keepsEightyPerCent(double lowestOhm, double ratedOhm, boolean kept) {
        assertThat(RatedImpedanceRule.keeps(lowestOhm, ratedOhm)).isEqualTo(kept);
    }

    @Test
    void warnsOfAModelRatedTooHigh() {
        ModelBook book = SampleCabinets.twoWay();
        assertThat(RatedImpedanceRule.warnings(book, book.cabinetModel("TWO")))
                .singleElement()
                .satisfies(warning -> {
                    assertThat(warning.testPointCode()).isEqualTo("IN");
                    assertThat(warning.lowestOhm()).isLessThan(6.4);
                });
    }
}
