package org.docksweep.fleet;

import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import java.util.List;

/**
 * An air volume (or horn) that one or more drivers of a cabinet share.
 *
 * @param id name, unique within the cabinet model
 * @param kind acoustic load
 * @param positionCodes driver positions that share it, at least one
 * @param complianceRatio alpha: compliance of ONE driver's suspension over the compliance of its share of the box air,
 *     with all drivers of the enclosure working; greater than 0 for CLOSED and VENTED, ignored otherwise
 * @param tuningHz box tuning fb; greater than 0 for VENTED, ignored otherwise
 * @param leakageLossQ QL of the box at its tuning (VENTED) or at the closed-box resonance (CLOSED), greater than 0
 *     for both (Small 1973: healthy boxes about 5 to 10)
 */
public record Enclosure(
        String id,
        EnclosureKind kind,
        List<String> positionCodes,
        double complianceRatio,
        double tuningHz,
        double leakageLossQ) {

    public Enclosure {
        text("enclosure id", id);
        if (kind == null) {
            throw new IllegalArgumentException("enclosure " + id + ": kind must be FREE_AIR, CLOSED, VENTED or HORN");
        }
        positionCodes = Require.notEmpty("enclosure " + id + " positionCodes", positionCodes);
        if (kind == EnclosureKind.CLOSED || kind == EnclosureKind.VENTED) {
            positive("enclosure " + id + " complianceRatio", complianceRatio);
            positive("enclosure " + id + " leakageLossQ", leakageLossQ);
        }
        if (kind == EnclosureKind.VENTED) {
            positive("enclosure " + id + " tuningHz", tuningHz);
        }
    }
}
