package org.docksweep.suspect;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.DrawnUnits;
import org.docksweep.gate.ReferenceTeacher;
import org.junit.jupiter.api.Test;

class TeachingCheckTest {
    private static final long SEED = 300;
    private static final CircuitFault HORN_OPEN = new CircuitFault(CircuitFault.Kind.DRIVER_OPEN, "HF1");

    private final ModelBook book = SampleCabinets.twoWay();
    private final CabinetModel model = book.cabinetModels().get(0);

    @Test
    void namesTheFaultyUnitAmongGoodOnes() {
        List<ReferenceTeacher.Unit> units = good(5);
        units.set(2, DrawnUnits.unit(book, HORN_OPEN, 0, SEED + 99));
        List<TeachingCheck.Doubt> doubts = doubts(units);
        assertThat(doubts).extracting(TeachingCheck.Doubt::unit).contains(2);
        TeachingCheck.Doubt doubt =
                doubts.stream().filter(d -> d.unit() == 2).findFirst().orElseThrow();
        assertThat(doubt.suspects().get(0).positionCode()).isEqualTo("HF1");
    }

    @Test
    void saysNothingOfGoodUnits() {
        assertThat(doubts(good(6))).isEmpty();
    }

    @Test
    void seesAHardFaultInASingleUnit() {
        assertThat(doubts(List.of(DrawnUnits.unit(book, HORN_OPEN, 0, SEED + 99))))
                .hasSize(1);
        assertThat(doubts(good(1))).isEmpty();
    }

    private List<TeachingCheck.Doubt> doubts(List<ReferenceTeacher.Unit> units) {
        return TeachingCheck.doubts(book, model, model.testPoints().get(0), units);
    }

    private List<ReferenceTeacher.Unit> good(int count) {
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            units.add(DrawnUnits.unit(book, CircuitFault.NONE, 0, SEED + i));
        }
        return units;
    }
}
