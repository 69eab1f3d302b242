package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.NetworkElement.Capacitor;
import org.docksweep.fleet.NetworkElement.Inductor;
import org.docksweep.fleet.NetworkElement.Resistor;
import org.docksweep.fleet.TestPoint;
import org.junit.jupiter.api.Test;

/** Models nobody can have meant: refused by name, with what was expected and what to do. */
class WrongModelsTest {
    private final ModelBook book = SampleCabinets.twoWay();
    private final CabinetModel model = book.cabinetModels().get(0);

    private void compile(NetworkElement... more) {
        TestPoint point = model.testPoints().get(0);
        List<NetworkElement> elements = new ArrayList<>(point.elements());
        elements.addAll(List.of(more));
        TestPoint wrong = new TestPoint(
                point.code(),
                point.kind(),
                point.contacts(),
                point.positionCodes(),
                point.ratedImpedanceOhm(),
                point.levelMask(),
                elements);
        CircuitCompiler.compile(book, model, wrong, CircuitFault.NONE);
    }

    @Test
    void namesAFloatingNode() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> compile(new Resistor("R77", "in", "nowhere", 4, 0.05)))
                .withMessageContaining("\"nowhere\" hangs free")
                .withMessageContaining("connect");
    }

    @Test
    void namesPartsThatAreConnectedToEachOtherOnly() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> compile(
                        new Resistor("R77", "isle", "shore", 4, 0.05),
                        new Inductor("L77", "isle", "shore", 1e-3, 0.3, 0.05)))
                .withMessageContaining("[isle, shore]")
                .withMessageContaining("not connected to the input");
    }

    @Test
    void refusesALoopWithoutAnyValue() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Resistor("R1", "in", "in", 4, 0.05))
                .withMessageContaining("R1")
                .withMessageContaining("both ends on node in");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Resistor("R1", "in", "0", 0, 0.05))
                .withMessageContaining("R1 resistanceOhm");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Inductor("L1", "in", "0", 0, 0, 0.05))
                .withMessageContaining("L1");
    }

    @Test
    void saysWhichUnitWasProbablyMeant() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Capacitor("C2", "in", "a", 8.2, 0.05, 0.05))
                .withMessageContaining("C2")
                .withMessageContaining("8.2")
                .withMessageContaining("Were microfarads meant? 8.2 uF is 0.0000082");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Inductor("L1", "in", "a", 1.2, 0.3, 0.05))
                .withMessageContaining("Were millihenries meant? 1.2 mH is 0.0012");
    }

    @Test
    void refusesImpossibleValuesAndNamesThem() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Resistor("R1", "in", "0", -8, 0.05))
                .withMessageContaining("R1 resistanceOhm");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Capacitor("C1", "in", "0", Double.NaN, 0.05, 0.05))
                .withMessageContaining("C1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new MotionalResonance(50, 0, 40))
                .withMessageContaining("resonance q");
    }

    @Test
    void refusesTwoModelsOfOneCode() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new ModelBook(List.of(model, model), book.driverModels()))
                .withMessageContaining(model.code())
                .withMessageContaining("given twice");
    }
}
