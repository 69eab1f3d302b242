package org.docksweep.kiosk.screens;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.RoundRectangle2D;
import org.docksweep.fleet.VisualItem;

/** Line drawings of what is looked over before the sweep, on a field of 48 by 48. */
final class ItemPicture {
    private ItemPicture() {}

    static void paint(Graphics2D g, VisualItem item, double x, double y, double size, Color color) {
        Graphics2D pen = (Graphics2D) g.create();
        pen.translate(x, y);
        pen.scale(size / 48, size / 48);
        pen.setColor(color);
        pen.setStroke(new BasicStroke(2.6f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        switch (item) {
            case GRILLE -> grille(pen);
            case HANDLES -> {
                pen.draw(new RoundRectangle2D.Double(4, 10, 40, 28, 8, 8));
                pen.setStroke(new BasicStroke(5f, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
                pen.draw(Sign.polyline(12, 30, 14, 20, 34, 20, 36, 30));
            }
            case CONNECTORS -> ConnectorDrawing.face(pen, 24, 24, 19);
            case RIGGING -> {
                pen.draw(new RoundRectangle2D.Double(6, 26, 36, 16, 4, 4));
                pen.draw(new Line2D.Double(14, 26, 24, 12));
                pen.draw(new Line2D.Double(34, 26, 24, 12));
                pen.draw(new Ellipse2D.Double(20, 4, 8, 8));
                pen.fill(new Ellipse2D.Double(11.5, 23.5, 5, 5));
                pen.fill(new Ellipse2D.Double(31.5, 23.5, 5, 5));
            }
            case WET -> {
                drop(pen, 24, 5, 15, true);
                drop(pen, 9, 22, 7, false);
                drop(pen, 40, 22, 7, false);
            }
            case MAINS_INLET -> {
                pen.draw(Sign.polygon(6, 34, 6, 20, 14, 10, 34, 10, 42, 20, 42, 34));
                pen.setStroke(new BasicStroke(4f));
                pen.draw(new Line2D.Double(24, 15, 24, 22));
                pen.draw(new Line2D.Double(15, 22, 15, 29));
                pen.draw(new Line2D.Double(33, 22, 33, 29));
            }
            case KNOBS_AND_PRESETS -> {
                knob(pen, 13, 26, -2.2);
                knob(pen, 35, 26, -0.8);
            }
        }
        pen.dispose();
    }

    private static void grille(Graphics2D pen) {
        pen.draw(new RoundRectangle2D.Double(5, 5, 38, 38, 6, 6));
        for (int row = 0; row < 4; row++) {
            for (int column = 0; column < 4; column++) {
                pen.fill(new Ellipse2D.Double(10.5 + column * 7.3, 10.5 + row * 7.3, 4.6, 4.6));
            }
        }
    }

    private static void drop(Graphics2D pen, double x, double top, double r, boolean filled) {
        Path2D path = new Path2D.Double();
        path.moveTo(x, top);
        path.curveTo(x + r * 0.5, top + r * 0.9, x + r, top + r * 1.3, x + r, top + r * 1.8);
        path.curveTo(x + r, top + r * 2.8, x - r, top + r * 2.8, x - r, top + r * 1.8);
        path.curveTo(x - r, top + r * 1.3, x - r * 0.5, top + r * 0.9, x, top);
        path.closePath();
        if (filled) {
            pen.fill(path);
        } else {
            pen.draw(path);
        }
    }

    private static void knob(Graphics2D pen, double x, double y, double angle) {
        pen.draw(new Ellipse2D.Double(x - 9, y - 9, 18, 18));
        pen.draw(new Line2D.Double(
                x + 3 * Math.cos(angle), y + 3 * Math.sin(angle), x + 8 * Math.cos(angle), y + 8 * Math.sin(angle)));
        pen.setStroke(new BasicStroke(2f));
        pen.draw(new Arc2D.Double(x - 13, y - 13, 26, 26, -40, 260, Arc2D.OPEN));
    }
}
