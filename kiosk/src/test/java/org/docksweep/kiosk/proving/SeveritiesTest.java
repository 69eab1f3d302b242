package org.docksweep.kiosk.proving;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.contract.ProvingFaultKind;
import org.junit.jupiter.api.Test;

class SeveritiesTest {
    private static final double EXACT = 1e-12;

    @Test
    void holdsThePromiseOfTheProduct() {
        Severities promised = Severities.promised();

        assertThat(promised.of(ProvingFaultKind.CONTACT_RESISTANCE, Knowing.BASELINE))
                .isEqualTo(0.10);
        assertThat(promised.of(ProvingFaultKind.CONTACT_RESISTANCE, Knowing.REFERENCE))
                .isEqualTo(0.25);
        assertThat(promised.of(ProvingFaultKind.SHORTED_TURNS, Knowing.BASELINE))
                .isEqualTo(0.05);
        assertThat(promised.of(ProvingFaultKind.SHORTED_TURNS, Knowing.REFERENCE))
                .isEqualTo(0.10);
        assertThat(promised.of(ProvingFaultKind.PART_OFF_VALUE, Knowing.BASELINE))
                .isEqualTo(0.15);
        assertThat(promised.of(ProvingFaultKind.PART_OFF_VALUE, Knowing.REFERENCE))
                .isEqualTo(0.35);
        assertThat(promised.of(ProvingFaultKind.LEAK, Knowing.BASELINE)).isEqualTo(0.5);
        assertThat(promised.of(ProvingFaultKind.WAY_WEAK, Knowing.BASELINE)).isEqualTo(3);
        assertThat(promised.of(ProvingFaultKind.WAY_WEAK, Knowing.REFERENCE)).isEqualTo(6);
        assertThat(promised.of(ProvingFaultKind.RUB, Knowing.REFERENCE)).isEqualTo(-40);
        assertThat(promised.of(ProvingFaultKind.MAGNET_WEAK, Knowing.BASELINE)).isEqualTo(0.10);
    }

    @Test
    void readsAFileAndKeepsThePromiseForWhatItLeavesOut() {
        Severities read = Severities.parse("s.csv", List.of(Severities.HEADER, "leak,0.7,0.3", ""));

        assertThat(read.of(ProvingFaultKind.LEAK, Knowing.BASELINE)).isCloseTo(0.7, within(EXACT));
        assertThat(read.of(ProvingFaultKind.LEAK, Knowing.REFERENCE)).isCloseTo(0.3, within(EXACT));
        assertThat(read.of(ProvingFaultKind.RUB, Knowing.BASELINE)).isEqualTo(-40);
    }

    @Test
    void saysWhichLineIsWrong() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Severities.parse("s.csv", List.of("kind")))
                .withMessageContaining("s.csv, line 1")
                .withMessageContaining(Severities.HEADER);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Severities.parse("s.csv", List.of(Severities.HEADER, "LEEK,1,1")))
                .withMessageContaining("line 2")
                .withMessageContaining("LEEK")
                .withMessageContaining("LEAK");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Severities.parse("s.csv", List.of(Severities.HEADER, "LEAK,much,1")))
                .withMessageContaining("much");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Severities.parse("s.csv", List.of(Severities.HEADER, "DRIVER_OPEN,1,1")))
                .withMessageContaining("not a soft fault");
    }
}
