package org.docksweep.paper;

/**
 * A rectangle on a page, in millimetres from the top left corner.
 *
 * @param x left edge
 * @param y top edge
 * @param width width
 * @param height height
 */
record Box(double x, double y, double width, double height) {

    double right() {
        return x + width;
    }

    double bottom() {
        return y + height;
    }

    double centreX() {
        return x + width / 2;
    }

    double centreY() {
        return y + height / 2;
    }

    /** What is left below a depth. */
    Box below(double depth) {
        return new Box(x, y + depth, width, height - depth);
    }

    Box inset(double margin) {
        return new Box(x + margin, y + margin, width - 2 * margin, height - 2 * margin);
    }
}
