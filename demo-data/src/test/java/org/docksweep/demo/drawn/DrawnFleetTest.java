package org.docksweep.demo.drawn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.demo.rig.VirtualProvingGround;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.junit.jupiter.api.Test;

class DrawnFleetTest {
    private static final double[] BAND_HZ = {20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000};

    private final ProvingGround ground = new VirtualProvingGround();
    private final ModelBook book = ground.book(ProvingGround.Models.DRAWN, 5);

    @Test
    void isTheSameForTheSameSeedAndAnotherForAnother() {
        assertThat(new VirtualProvingGround().book(ProvingGround.Models.DRAWN, 5))
                .isEqualTo(book);
        assertThat(ground.book(ProvingGround.Models.DRAWN, 6).driverModels())
                .extracting(DriverModel::dcResistanceOhm)
                .doesNotContainAnyElementsOf(book.driverModels().stream()
                        .map(DriverModel::dcResistanceOhm)
                        .toList());
    }

    @Test
    void holdsManyTopologies() {
        List<CabinetModel> models = book.cabinetModels();

        assertThat(models).hasSize(24);
        for (Feed feed : Feed.values()) {
            assertThat(models).anyMatch(m -> m.feed() == feed);
        }
        for (EnclosureKind kind : List.of(EnclosureKind.CLOSED, EnclosureKind.VENTED, EnclosureKind.HORN)) {
            assertThat(models).anyMatch(m -> m.enclosures().stream().anyMatch(e -> e.kind() == kind));
        }
        assertThat(models)
                .anyMatch(m -> m.positions().size() == 3)
                .anyMatch(m -> m.positions().size() == 1)
                .anyMatch(m ->
                        m.enclosures().stream().anyMatch(e -> e.positionCodes().size() == 2));
        assertThat(models).extracting(m -> parts(m)).contains(0L).anyMatch(n -> n > 8);
    }

    @Test
    void isRatedByItsLeastMagnitude() {
        for (CabinetModel model : book.cabinetModels()) {
            for (TestPoint point : model.testPoints()) {
                if (point.kind() == TestPointKind.TERMINALS) {
                    ProvingUnit unit = unit(model, null);
                    double least = least(ground.impedanceOhm(unit, point.code(), BAND_HZ));
                    // a unit lies a few per cent off the nominal one
                    assertThat(least)
                            .as(model.code() + " " + point.code())
                            .isGreaterThan(0.8 * 0.93 * point.ratedImpedanceOhm());
                }
            }
        }
    }

    @Test
    void hasFaultsThatChangeTheCurve() {
        for (CabinetModel model : book.cabinetModels()) {
            List<ProvingFault> faults = ground.faults(model.code());
            assertThat(faults).hasSizeGreaterThan(6);
            TestPoint point = model.testPoints().get(0);
            if (point.kind() == TestPointKind.TERMINALS) {
                ProvingFault shorted = faults.stream()
                        .filter(f -> f.kind() == ProvingFaultKind.TERMINALS_SHORTED
                                && f.target().equals(point.code()))
                        .findFirst()
                        .orElseThrow();
                double[][] ohm = ground.impedanceOhm(unit(model, shorted), point.code(), BAND_HZ);
                assertThat(least(ohm)).isCloseTo(0.05, within(0.05));
            }
        }
    }

    @Test
    void drawsDriversOfOrdinaryQuality() {
        assertThat(book.driverModels())
                .allMatch(d -> d.dcResistanceOhm() < d.ratedImpedanceOhm())
                .allMatch(d -> d.qes() > 0.2 && d.qms() > 1);
        assertThat(book.driverModels()).extracting(DriverModel::code).doesNotHaveDuplicates();
    }

    private static long parts(CabinetModel model) {
        return model.testPoints().stream()
                .flatMap(p -> p.elements().stream())
                .filter(e -> !(e instanceof NetworkElement.Driver))
                .count();
    }

    private static double least(double[][] ohm) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < ohm[0].length; i++) {
            least = Math.min(least, Math.hypot(ohm[0][i], ohm[1][i]));
        }
        return least;
    }

    private static ProvingUnit unit(CabinetModel model, ProvingFault fault) {
        return new ProvingUnit(model.code(), 3, 1, fault, 0.05, new ProvingUnit.Climate(20, 20, 20, 40));
    }
}
