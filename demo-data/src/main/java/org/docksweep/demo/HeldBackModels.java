package org.docksweep.demo;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import tools.jackson.core.type.TypeReference;

/**
 * Models of other topology than the demo house's, for proving runs only. Whoever tunes the gate looks at
 * {@link DemoModels} and never at results of these.
 */
public final class HeldBackModels {
    private HeldBackModels() {}

    /**
     * The held-back cabinet and driver models.
     *
     * @return a new book
     */
    public static ModelBook book() {
        return DemoModels.read("held-back-models.json", new TypeReference<>() {});
    }

    /**
     * The demo house's models and the held-back ones together.
     *
     * @return a new book
     */
    public static ModelBook bookOfAll() {
        ModelBook tuning = DemoModels.book();
        ModelBook heldBack = book();
        List<CabinetModel> cabinets = new ArrayList<>(tuning.cabinetModels());
        cabinets.addAll(heldBack.cabinetModels());
        List<DriverModel> drivers = new ArrayList<>(tuning.driverModels());
        drivers.addAll(heldBack.driverModels());
        return new ModelBook(cabinets, drivers);
    }

    /**
     * Mechanical values of all driver models of {@link #bookOfAll()}.
     *
     * @return values by driver model code
     */
    public static Map<String, DriverMechanics> mechanicsOfAll() {
        return Mechanics.BY_CODE;
    }

    /** Read once: every cabinet built asks for it. */
    private static final class Mechanics {
        static final Map<String, DriverMechanics> BY_CODE = all();

        private static Map<String, DriverMechanics> all() {
            Map<String, DriverMechanics> all = new HashMap<>(DemoModels.mechanics());
            all.putAll(DemoModels.read("held-back-drivers.json", new TypeReference<Map<String, DriverMechanics>>() {}));
            return Map.copyOf(all);
        }
    }
}
