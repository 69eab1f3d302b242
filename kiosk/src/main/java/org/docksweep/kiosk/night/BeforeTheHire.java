package org.docksweep.kiosk.night;

import java.util.List;
import java.util.Map;
import org.docksweep.contract.DemoHouse;
import org.docksweep.gate.PointReference;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.RigException;

/** Where a night gets from what the house knew of its cabinets and drivers before the hire. */
@FunctionalInterface
interface BeforeTheHire {
    /**
     * What was known.
     *
     * @param cabinets references and baselines of cabinets
     * @param drivers references of bare drivers; none for a house without a bench
     */
    record Known(Commissioning.Result cabinets, List<PointReference> drivers) {}

    /**
     * What was known before the hire.
     *
     * @param house the house
     * @param gate measures
     * @param correction of the rig's calibration
     * @param rigSettings the rig as it was then
     * @param bench whether the house has a bench
     * @throws RigException if the rig cannot be had
     */
    Known known(DemoHouse house, Gate gate, CurveCorrection correction, Map<String, String> rigSettings, boolean bench)
            throws RigException;

    /** By sweeping known-good units and drivers, and the cabinets that go out. */
    static Known sweep(
            DemoHouse house, Gate gate, CurveCorrection correction, Map<String, String> rigSettings, boolean bench)
            throws RigException {
        return new Known(
                new Commissioning(house, gate, correction, rigSettings).run(),
                bench ? new BenchLessons(house, gate, correction, rigSettings).teach() : List.of());
    }
}
