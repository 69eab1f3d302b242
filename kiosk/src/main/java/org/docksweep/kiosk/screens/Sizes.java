package org.docksweep.kiosk.screens;

import java.awt.BasicStroke;
import java.awt.Font;

/**
 * Lengths and fonts at the scale of the window. Lengths are given in design pixels of 1/96 inch on a grid of 8.
 *
 * @param scale device pixels per design pixel
 */
record Sizes(double scale) {
    /** Smallest edge of anything that is touched: 64 design pixels are 16.9 mm, above the 15 mm a glove needs. */
    static final int TOUCH = 64;

    int px(double designPixels) {
        return (int) Math.round(designPixels * scale);
    }

    BasicStroke stroke(double designPixels) {
        return new BasicStroke((float) (designPixels * scale), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND);
    }

    BasicStroke dashed(double designPixels, double dash) {
        float d = (float) (dash * scale);
        return new BasicStroke(
                (float) (designPixels * scale), BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1, new float[] {d, d}, 0);
    }

    Font regular(double designPixels) {
        return new Font("Inter", Font.PLAIN, 1).deriveFont((float) (designPixels * scale));
    }

    Font semiBold(double designPixels) {
        return new Font("Inter SemiBold", Font.PLAIN, 1).deriveFont((float) (designPixels * scale));
    }

    Font bold(double designPixels) {
        return new Font("Inter", Font.BOLD, 1).deriveFont((float) (designPixels * scale));
    }
}
