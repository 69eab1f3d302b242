package org.docksweep.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.Way;
import org.junit.jupiter.api.Test;

class HeldBackModelsTest {
    private final ModelBook book = HeldBackModels.book();

    @Test
    void sharesNothingWithTheModelsTheGateIsTunedOn() {
        ModelBook tuning = DemoModels.book();

        assertThat(book.cabinetModels())
                .extracting(CabinetModel::code)
                .doesNotContainAnyElementsOf(
                        tuning.cabinetModels().stream().map(CabinetModel::code).toList());
        assertThat(book.driverModels())
                .extracting(DriverModel::code)
                .doesNotContainAnyElementsOf(
                        tuning.driverModels().stream().map(DriverModel::code).toList());
        assertThat(HeldBackModels.bookOfAll().cabinetModels()).hasSize(12);
    }

    @Test
    void givesEveryDriverModelMechanicalValues() {
        assertThat(HeldBackModels.mechanicsOfAll())
                .containsKeys(HeldBackModels.bookOfAll().driverModels().stream()
                        .map(DriverModel::code)
                        .toArray(String[]::new));
    }

    @Test
    void differsInTopology() {
        List<CabinetModel> models = book.cabinetModels();

        assertThat(models).anyMatch(m -> has(m, EnclosureKind.VENTED)).anyMatch(m -> !has(m, EnclosureKind.VENTED));
        assertThat(models).anyMatch(m -> ways(m) == 3).anyMatch(m -> ways(m) == 2);
        assertThat(models).anyMatch(m -> m.feed() == Feed.BIAMPED).anyMatch(m -> m.feed() == Feed.PASSIVE);
        assertThat(models)
                .anyMatch(m ->
                        m.enclosures().stream().anyMatch(e -> e.positionCodes().size() == 2));
        assertThat(models).anyMatch(m -> parts(m) == 3).anyMatch(m -> parts(m) >= 9);
        assertThat(models).anyMatch(m -> m.enclosures().stream().noneMatch(e -> e.kind() == EnclosureKind.HORN));
    }

    private static boolean has(CabinetModel model, EnclosureKind kind) {
        return model.enclosures().stream().anyMatch(e -> e.kind() == kind);
    }

    private static long ways(CabinetModel model) {
        return model.positions().stream()
                .map(p -> p.way())
                .filter(w -> w != null)
                .distinct()
                .count();
    }

    private static long parts(CabinetModel model) {
        return model.testPoints().stream()
                .flatMap(t -> t.elements().stream())
                .filter(e -> !(e instanceof NetworkElement.Driver))
                .count();
    }

    @Test
    void knowsOnlyTheThreeWays() {
        assertThat(book.cabinetModels())
                .flatMap(CabinetModel::positions)
                .extracting(p -> p.way())
                .contains(Way.values());
    }
}
