package org.docksweep.kiosk.screens;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import org.docksweep.gate.ReadingState;

/**
 * Signs that stand beside every colour. Outlines differ as well (circle, triangle, octagon, square, shield), so that a
 * sign is told from three metres without colour.
 */
enum Sign {
    TICK,
    EXCLAMATION,
    CROSS,
    DASH,
    AGAIN,
    PLUG,
    LABEL,
    HAND,
    SHIELD,
    CODE,
    EYE,
    WAVE,
    ARROW;

    static Sign of(ReadingState state) {
        return switch (state) {
            case OK -> TICK;
            case WATCH -> EXCLAMATION;
            case FAULT -> CROSS;
            case NOT_JUDGED -> DASH;
        };
    }

    /**
     * Paints the sign into a square.
     *
     * @param size edge of the square
     * @param body colour of the outline shape
     * @param mark colour of what stands in it
     */
    void paint(Graphics2D g, double x, double y, double size, Color body, Color mark) {
        Graphics2D pen = (Graphics2D) g.create();
        pen.translate(x, y);
        pen.scale(size / 24, size / 24);
        pen.setColor(body);
        if (this == DASH) {
            pen.setStroke(new BasicStroke(2f));
            pen.draw(new Ellipse2D.Double(2, 2, 20, 20));
        } else {
            pen.fill(outline());
        }
        pen.setColor(this == DASH ? body : mark);
        pen.setStroke(new BasicStroke(2.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        paintMark(pen);
        pen.dispose();
    }

    private Shape outline() {
        return switch (this) {
            case TICK, DASH -> new Ellipse2D.Double(1, 1, 22, 22);
            case EXCLAMATION -> polygon(12, 0.5, 24, 22.5, 0, 22.5);
            case CROSS -> polygon(7, 0.5, 17, 0.5, 23.5, 7, 23.5, 17, 17, 23.5, 7, 23.5, 0.5, 17, 0.5, 7);
            case SHIELD -> shield();
            default -> new RoundRectangle2D.Double(1, 1, 22, 22, 6, 6);
        };
    }

    private static Shape shield() {
        Path2D path = new Path2D.Double();
        path.moveTo(12, 0);
        path.lineTo(22.5, 3.5);
        path.lineTo(22.5, 11);
        path.curveTo(22.5, 18, 17, 22, 12, 24);
        path.curveTo(7, 22, 1.5, 18, 1.5, 11);
        path.lineTo(1.5, 3.5);
        path.closePath();
        return path;
    }

    private void paintMark(Graphics2D pen) {
        switch (this) {
            case TICK -> pen.draw(polyline(6.5, 12.5, 10.5, 16.5, 17.5, 8));
            case EXCLAMATION -> exclamation(pen, 9, 15.5, 19.2);
            case SHIELD -> exclamation(pen, 6, 13.5, 17.8);
            case CROSS -> {
                pen.draw(new Line2D.Double(7.5, 7.5, 16.5, 16.5));
                pen.draw(new Line2D.Double(16.5, 7.5, 7.5, 16.5));
            }
            case DASH -> pen.draw(new Line2D.Double(8, 12, 16, 12));
            case AGAIN -> {
                pen.draw(new Arc2D.Double(6.5, 6.5, 11, 11, 60, 270, Arc2D.OPEN));
                pen.fill(polygon(14, 2.8, 20, 7.2, 13.4, 10.2));
            }
            case PLUG -> {
                pen.draw(new Line2D.Double(9.5, 4.5, 9.5, 9));
                pen.draw(new Line2D.Double(14.5, 4.5, 14.5, 9));
                pen.fill(new RoundRectangle2D.Double(6.5, 8.5, 11, 6.5, 3, 3));
                pen.draw(new Line2D.Double(12, 14, 12, 19.5));
            }
            case LABEL -> {
                pen.setStroke(new BasicStroke(2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
                pen.draw(polygon(5, 12, 9, 6.5, 19.5, 6.5, 19.5, 17.5, 9, 17.5));
                pen.fill(new Ellipse2D.Double(8.2, 10.6, 2.8, 2.8));
                pen.draw(new Line2D.Double(14.5, 10, 14.5, 14));
            }
            case HAND -> {
                pen.setStroke(new BasicStroke(3f));
                pen.draw(new Line2D.Double(9, 7, 9, 17));
                pen.draw(new Line2D.Double(15, 7, 15, 17));
            }
            case CODE -> code(pen);
            case EYE -> {
                pen.setStroke(new BasicStroke(2f));
                Path2D lid = new Path2D.Double();
                lid.moveTo(4, 12);
                lid.curveTo(8, 5.5, 16, 5.5, 20, 12);
                lid.curveTo(16, 18.5, 8, 18.5, 4, 12);
                lid.closePath();
                pen.draw(lid);
                pen.fill(new Ellipse2D.Double(9.5, 9.5, 5, 5));
            }
            case WAVE -> {
                Path2D wave = new Path2D.Double();
                wave.moveTo(4, 12);
                wave.curveTo(7, 3, 9, 3, 12, 12);
                wave.curveTo(14, 21, 16, 21, 17.5, 12);
                wave.lineTo(20, 8);
                pen.setStroke(new BasicStroke(2.2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
                pen.draw(wave);
            }
            case ARROW -> {
                pen.setStroke(new BasicStroke(3.2f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
                pen.draw(new Line2D.Double(5, 12, 18, 12));
                pen.draw(polyline(12.5, 6.5, 18.5, 12, 12.5, 17.5));
            }
        }
    }

    private static void exclamation(Graphics2D pen, double top, double bottom, double dot) {
        pen.draw(new Line2D.Double(12, top, 12, bottom - 0.5));
        pen.fill(new Ellipse2D.Double(10.5, dot - 1.5, 3, 3));
    }

    private static void code(Graphics2D pen) {
        double[] bars = {5, 1.5, 7.7, 0.8, 9.7, 2, 13, 0.8, 15, 1.6, 17.8, 1.4};
        for (int i = 0; i < bars.length; i += 2) {
            pen.fill(new java.awt.geom.Rectangle2D.Double(bars[i], 6, bars[i + 1], 12));
        }
    }

    static Path2D polygon(double... xy) {
        Path2D path = polyline(xy);
        path.closePath();
        return path;
    }

    static Path2D polyline(double... xy) {
        Path2D path = new Path2D.Double();
        path.moveTo(xy[0], xy[1]);
        for (int i = 2; i < xy.length; i += 2) {
            path.lineTo(xy[i], xy[i + 1]);
        }
        return path;
    }
}
