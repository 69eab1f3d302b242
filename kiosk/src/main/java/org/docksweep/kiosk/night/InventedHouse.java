package org.docksweep.kiosk.night;

import java.time.Instant;
import java.util.Map;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.RigException;

/** The invented house without a service: what a kiosk's copy of its fleet would be. */
public final class InventedHouse {
    private InventedHouse() {}

    /**
     * The house of a seed.
     *
     * @param seed seed
     * @return the house
     */
    public static DemoHouse of(long seed) {
        return HouseLoader.house(seed);
    }

    /**
     * Sweeps known-good units and the cabinets that go out, as before the hire, and makes the copy.
     *
     * @param house the house, or a part of it
     * @param gate measurement
     * @param correction correction of the rig
     * @param seed seed of the house
     * @return the copy of its fleet
     * @throws RigException if the virtual rig cannot be opened
     */
    public static KioskSnapshot snapshot(DemoHouse house, Gate gate, CurveCorrection correction, long seed)
            throws RigException {
        Map<String, String> before = Map.of("seed", Long.toString(seed), "moment", "before-hire");
        return HouseLoader.snapshot(house, new Commissioning(house, gate, correction, before).run(), Instant.now());
    }
}
