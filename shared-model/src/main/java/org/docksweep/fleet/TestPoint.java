package org.docksweep.fleet;

import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

import java.util.List;

/**
 * A pair of contacts (or a line input) with what is behind it.
 *
 * @param code test point code, unique within the cabinet model, for example {@code IN} or {@code LF}
 * @param kind what it gives access to
 * @param contacts the contacts as printed on the connector, for example {@code 1+ / 1-}
 * @param positionCodes driver positions reached through it
 * @param ratedImpedanceOhm rated impedance seen there, greater than 0; ignored for LINE_INPUT
 * @param levelMask voltage allowed against frequency; its ends bound the sweep
 * @param elements network between the contacts and the drivers; empty for LINE_INPUT
 */
public record TestPoint(
        String code,
        TestPointKind kind,
        String contacts,
        List<String> positionCodes,
        double ratedImpedanceOhm,
        LevelMask levelMask,
        List<NetworkElement> elements) {

    public TestPoint {
        text("test point code", code);
        if (kind == null) {
            throw new IllegalArgumentException(
                    "test point " + code + ": kind must be TERMINALS, LINE_INPUT or BARE_DRIVER");
        }
        text("test point " + code + " contacts", contacts);
        positionCodes = Require.notEmpty("test point " + code + " positionCodes", positionCodes);
        if (kind != TestPointKind.LINE_INPUT) {
            positive("test point " + code + " ratedImpedanceOhm", ratedImpedanceOhm);
            elements = Require.notEmpty("test point " + code + " elements", elements);
        } else {
            elements = Require.copy("test point " + code + " elements", elements);
        }
        if (levelMask == null) {
            throw new IllegalArgumentException("test point " + code + ": levelMask is missing");
        }
    }
}
