package org.docksweep.suspect;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.circuit.CircuitFault;
import org.docksweep.circuit.SampleCabinets;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.DrawnUnits;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.ReferenceTeacher;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SuspectRankingTest {
    private static final long TAUGHT_FROM = 300;
    private static final long JUDGED_FROM = 900;
    private static final int UNITS = 3;

    @ParameterizedTest
    @CsvSource({
        "DRIVER_OPEN,HF1,DRIVER_OPEN",
        "DRIVER_OPEN,LF1,DRIVER_OPEN",
        "DRIVER_SHORTED,HF1,DRIVER_SHORTED",
        "DRIVER_DOUBLED,LF1,WRONG_IMPEDANCE_PART",
        "DRIVER_HALVED,HF1,WRONG_IMPEDANCE_PART",
        "COIL_SEIZED,LF1,COIL_SEIZED",
        "ELEMENT_OPEN,C2,PART_OPEN",
        "ELEMENT_SHORTED,L1,PART_SHORTED",
        "PORT_BLOCKED,BOX,PORT_BLOCKED"
    })
    void namesTheHardFaultFirst(CircuitFault.Kind kind, String target, FaultKind expected) {
        ModelBook book = SampleCabinets.twoWay();
        SuspectRanking ranking = ranking(book, knowledge(book));
        for (int i = 0; i < UNITS; i++) {
            Explanation explanation =
                    ranking.explain(DrawnUnits.draw(book, new CircuitFault(kind, target), 0, JUDGED_FROM + i));
            assertThat(explanation.faultProbability()).isGreaterThan(0.99);
            Suspect first = explanation.suspects().get(0);
            assertThat(first.kind()).isEqualTo(expected);
            assertThat(first.elementId() != null ? first.elementId() : first.positionCode())
                    .isEqualTo(target);
        }
    }

    @Test
    void believesHealthyUnitsItHasNotSeen() {
        ModelBook book = SampleCabinets.twoWay();
        SuspectRanking ranking = ranking(book, knowledge(book));
        for (int i = 0; i < 10; i++) {
            Explanation explanation =
                    ranking.explain(DrawnUnits.draw(book, CircuitFault.NONE, 0, JUDGED_FROM + 50 + i));
            assertThat(explanation.faultProbability()).as("unit " + i).isLessThan(0.1);
        }
    }

    @Test
    void cannotTellWhichOfTwoEqualDriversIsOpen() {
        ModelBook book = SampleCabinets.doubleFifteen();
        Explanation explanation = ranking(book, knowledge(book))
                .explain(DrawnUnits.draw(book, new CircuitFault(CircuitFault.Kind.DRIVER_OPEN, "LF2"), 0, JUDGED_FROM));
        assertThat(explanation.suspects().get(0).kind()).isEqualTo(FaultKind.DRIVER_OPEN);
        assertThat(explanation.suspects().get(1).kind()).isEqualTo(FaultKind.DRIVER_OPEN);
        assertThat(explanation.suspects().get(1).probability()).isGreaterThan(0.2);
    }

    /** Wherever the short sits: the shorted coil brakes its cone, or carries nothing and leaves it free. Either of the two equal drivers. */
    @ParameterizedTest
    @EnumSource(names = {"DRIVER_SHORTED", "DRIVER_BRIDGED"})
    void namesAShortedCoilOfTwoInSeries(CircuitFault.Kind kind) {
        ModelBook book = SampleCabinets.doubleFifteenInSeries();
        SuspectRanking ranking = ranking(book, knowledge(book));
        for (int i = 0; i < UNITS; i++) {
            Explanation explanation =
                    ranking.explain(DrawnUnits.draw(book, new CircuitFault(kind, "LF2"), 0, JUDGED_FROM + i));
            assertThat(explanation.suspects().subList(0, 2))
                    .extracting(Suspect::kind, Suspect::positionCode)
                    .containsExactlyInAnyOrder(
                            tuple(FaultKind.DRIVER_SHORTED, "LF1"), tuple(FaultKind.DRIVER_SHORTED, "LF2"));
            assertThat(explanation.suspects())
                    .extracting(s -> s.kind() + " " + s.positionCode() + " " + s.elementId())
                    .doesNotHaveDuplicates();
        }
    }

    /** The cabinet's own last curve sees what the model's reference leaves in its spread. */
    @Test
    void seesMoreWithTheCabinetsOwnBaseline() {
        ModelBook book = SampleCabinets.twoWay();
        Knowledge model = knowledge(book);
        CircuitFault joint = new CircuitFault(CircuitFault.Kind.SERIES_RESISTANCE, "HF1");
        double withModel = 0;
        double withBaseline = 0;
        for (int i = 0; i < 6; i++) {
            long unit = JUDGED_FROM + 70 + i;
            Knowledge own = model.sharpenedBy(new Baseline(
                    new AssetTag("MCH-000001"),
                    "IN",
                    Instant.EPOCH,
                    20.0,
                    DrawnUnits.draw(book, CircuitFault.NONE, 0, unit),
                    null));
            var curve = DrawnUnits.draw(book, joint, 1.2, unit);
            withModel += ranking(book, model).explain(curve).faultProbability();
            withBaseline += ranking(book, own).explain(curve).faultProbability();
        }
        assertThat(withBaseline).isGreaterThan(withModel);
    }

    private static SuspectRanking ranking(ModelBook book, Knowledge knowledge) {
        CabinetModel model = book.cabinetModels().get(0);
        return new SuspectRanking(book, model, model.testPoints().get(0), knowledge);
    }

    private static Knowledge knowledge(ModelBook book) {
        CabinetModel model = book.cabinetModels().get(0);
        TestPoint point = model.testPoints().get(0);
        List<ReferenceTeacher.Unit> units = new ArrayList<>();
        for (int i = 0; i < 6; i++) {
            units.add(DrawnUnits.unit(book, CircuitFault.NONE, 0, TAUGHT_FROM + i));
        }
        return Knowledge.nominal(book, model, point)
                .taughtBy(ReferenceTeacher.teach(book, model.code(), point.code(), units));
    }
}
