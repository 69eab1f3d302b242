package org.docksweep.demo;

import static org.assertj.core.api.Assertions.assertThat;

import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;
import org.junit.jupiter.api.Test;

class DemoModelsTest {
    private final ModelBook book = DemoModels.book();

    @Test
    void holdsSixCabinetModelsOfAllFeeds() {
        assertThat(book.cabinetModels()).hasSize(6);
        assertThat(book.cabinetModels()).extracting(CabinetModel::feed).contains(Feed.values());
    }

    @Test
    void givesEveryDriverModelMechanicalValues() {
        assertThat(DemoModels.mechanics().keySet())
                .containsExactlyInAnyOrderElementsOf(
                        book.driverModels().stream().map(DriverModel::code).toList());
    }

    @Test
    void neverAllowsBassIntoAHornDriverOfItsOwnTerminals() {
        for (CabinetModel model : book.cabinetModels()) {
            for (TestPoint point : model.testPoints()) {
                boolean hornOnly = point.positionCodes().stream()
                        .allMatch(p -> model.position(p).way() == Way.HF);
                if (hornOnly && point.kind() == TestPointKind.TERMINALS) {
                    assertThat(point.levelMask().lowestHz()).isGreaterThanOrEqualTo(200);
                    assertThat(point.levelMask().voltageVrmsAt(300)).isLessThanOrEqualTo(0.5);
                }
            }
        }
    }

    @Test
    void keepsCoilResistanceBelowRatedImpedanceAsRealDriversDo() {
        assertThat(book.driverModels())
                .allSatisfy(d ->
                        assertThat(d.dcResistanceOhm() / d.ratedImpedanceOhm()).isBetween(0.69, 0.81));
    }
}
