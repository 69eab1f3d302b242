package org.docksweep.contract;

import java.time.LocalDate;
import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;

/**
 * A cabinet of the fleet.
 *
 * @param tag asset tag
 * @param modelCode cabinet model
 * @param shelfPlace its place on the shelf, for example {@code C-04}
 * @param status where it stands
 * @param watch whether it carries a watch mark
 * @param drivers drivers installed, one per position
 * @param safetyTestDue day the next periodic electrical safety test of a powered cabinet is due; null when nobody said, and always for others.
 *     Null in a body that is sent leaves it as it is
 */
public record CabinetBody(
        AssetTag tag,
        String modelCode,
        String shelfPlace,
        CabinetStatus status,
        boolean watch,
        List<InstalledDriver> drivers,
        LocalDate safetyTestDue) {

    /**
     * A cabinet of whose safety test nothing is said.
     *
     * @param tag asset tag
     * @param modelCode cabinet model
     * @param shelfPlace its place on the shelf
     * @param status where it stands
     * @param watch whether it carries a watch mark
     * @param drivers drivers installed
     */
    public CabinetBody(
            AssetTag tag,
            String modelCode,
            String shelfPlace,
            CabinetStatus status,
            boolean watch,
            List<InstalledDriver> drivers) {
        this(tag, modelCode, shelfPlace, status, watch, drivers, null);
    }

    /**
     * The same cabinet with another day of its safety test.
     *
     * @param dueOn day, or null
     * @return another body
     */
    public CabinetBody withSafetyTestDue(LocalDate dueOn) {
        return new CabinetBody(tag, modelCode, shelfPlace, status, watch, drivers, dueOn);
    }
}
