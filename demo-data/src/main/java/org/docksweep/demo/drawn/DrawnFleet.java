package org.docksweep.demo.drawn;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;

/**
 * A fleet of cabinet models that nobody chose: topology, drivers, boxes and networks are drawn from a seed.
 *
 * @param book the models as the gate may know them
 * @param mechanics mechanical values of the drivers, by driver model code
 */
public record DrawnFleet(ModelBook book, Map<String, DriverMechanics> mechanics) {
    private static final int MODELS = 24;

    /**
     * Draws a fleet.
     *
     * @param seed which
     * @return 24 models, whose codes hold the seed; always the same for the same seed
     */
    public static DrawnFleet of(long seed) {
        DrawnDrivers drivers = new DrawnDrivers(new Dice(seed), "D" + seed);
        List<CabinetModel> models = new ArrayList<>();
        for (int i = 0; i < MODELS; i++) {
            models.add(new DrawnCabinet(new Dice(31 * seed + i + 1), drivers, "M" + seed + "-" + (i + 1)).model(i));
        }
        DrawnFleet fleet = new DrawnFleet(new ModelBook(models, drivers.models()), drivers.mechanics());
        return fleet.rated();
    }

    /** With the rated impedance that each test point's curve allows. */
    private DrawnFleet rated() {
        List<CabinetModel> rated = book.cabinetModels().stream()
                .map(m -> RatedImpedance.of(m, book, mechanics))
                .toList();
        return new DrawnFleet(new ModelBook(rated, book.driverModels()), mechanics);
    }
}
