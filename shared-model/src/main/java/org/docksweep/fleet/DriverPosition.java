package org.docksweep.fleet;

import static org.docksweep.fleet.Require.notNegative;
import static org.docksweep.fleet.Require.positive;
import static org.docksweep.fleet.Require.text;

/**
 * A place in a cabinet where one driver sits, with its outline on the front for the drawing.
 *
 * @param code position code, unique within the cabinet model, for example {@code LF1}
 * @param way the way it serves
 * @param driverModelCode the driver model that belongs there
 * @param centreXMm centre from the left edge of the front, in millimetres
 * @param centreYMm centre from the top edge of the front, in millimetres
 * @param widthMm width of the cone or horn mouth, in millimetres
 * @param heightMm height of the cone or horn mouth, in millimetres
 */
public record DriverPosition(
        String code,
        Way way,
        String driverModelCode,
        double centreXMm,
        double centreYMm,
        double widthMm,
        double heightMm) {

    public DriverPosition {
        text("position code", code);
        if (way == null) {
            throw new IllegalArgumentException("position " + code + ": way must be one of LF, MF, HF");
        }
        text("position " + code + " driverModelCode", driverModelCode);
        notNegative("position " + code + " centreXMm", centreXMm);
        notNegative("position " + code + " centreYMm", centreYMm);
        positive("position " + code + " widthMm", widthMm);
        positive("position " + code + " heightMm", heightMm);
    }
}
