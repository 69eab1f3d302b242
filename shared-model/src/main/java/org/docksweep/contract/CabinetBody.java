package org.docksweep.contract;

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
 */
public record CabinetBody(
        AssetTag tag,
        String modelCode,
        String shelfPlace,
        CabinetStatus status,
        boolean watch,
        List<InstalledDriver> drivers) {}
