package org.docksweep.kiosk.screens;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Arc2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.util.List;

/**
 * Face of the socket on a cabinet: the 4-pole loudspeaker connector with its contacts 1+, 1-, 2+, 2-, or a 3-pin line
 * input. The contacts of a test point are filled and joined to their names.
 */
final class ConnectorDrawing {
    private static final List<String> CONTACTS = List.of("1+", "1-", "2+", "2-");
    /** Where the contacts sit on the face, in degrees clockwise from the top. */
    private static final double[] ANGLES = {45, 135, 225, 315};

    private final Sizes sizes;

    ConnectorDrawing(Sizes sizes) {
        this.sizes = sizes;
    }

    /** Whether the contacts are ones of a 4-pole connector. */
    static boolean isFourPole(String contacts) {
        return CONTACTS.stream().anyMatch(contacts::contains);
    }

    /** A small plain face, for the picture button. */
    static void face(Graphics2D g, double x, double y, double r) {
        g.draw(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
        g.draw(new Ellipse2D.Double(x - r * 0.42, y - r * 0.42, r * 0.84, r * 0.84));
        for (double angle : ANGLES) {
            double cx = x + r * 0.7 * Math.sin(Math.toRadians(angle));
            double cy = y - r * 0.7 * Math.cos(Math.toRadians(angle));
            g.fill(new Ellipse2D.Double(cx - r * 0.13, cy - r * 0.13, r * 0.26, r * 0.26));
        }
    }

    /** The face with the contacts of a test point marked. */
    void paint(Graphics2D g, Ink ink, String contacts, Rectangle box) {
        double r = Math.min(box.height, box.width) / 2.0 - sizes.px(8);
        double x = box.getCenterX();
        double y = box.getCenterY();
        g.setColor(Look.color("box"));
        g.fill(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
        g.setColor(Look.color("box.edge"));
        g.setStroke(sizes.stroke(2));
        g.draw(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
        if (isFourPole(contacts)) {
            fourPole(g, ink, contacts, x, y, r);
        } else {
            lineInput(g, x, y, r);
        }
    }

    private void fourPole(Graphics2D g, Ink ink, String contacts, double x, double y, double r) {
        g.setColor(Look.color("box.driver"));
        g.fill(new Ellipse2D.Double(x - r * 0.36, y - r * 0.36, r * 0.72, r * 0.72));
        Font font = sizes.bold(22);
        for (int i = 0; i < CONTACTS.size(); i++) {
            String name = CONTACTS.get(i);
            boolean used = contacts.contains(name);
            double sin = Math.sin(Math.toRadians(ANGLES[i]));
            double cos = Math.cos(Math.toRadians(ANGLES[i]));
            double cx = x + r * 0.66 * sin;
            double cy = y - r * 0.66 * cos;
            double size = r * (used ? 0.38 : 0.26);
            g.setColor(used ? Tone.ACT.plate() : Look.color("box.cone"));
            g.fill(new Ellipse2D.Double(cx - size / 2, cy - size / 2, size, size));
            if (used) {
                g.setColor(Tone.ACT.onPlate());
                g.setStroke(sizes.stroke(3));
                g.draw(new Ellipse2D.Double(cx - size / 2, cy - size / 2, size, size));
            }
            int side = sin > 0 ? 1 : -1;
            double lx = x + side * (r + sizes.px(16));
            g.setColor(used ? Tone.ACT.ink() : Look.color("line"));
            g.setStroke(sizes.stroke(used ? 3 : 1.5));
            g.draw(new Line2D.Double(cx + side * size / 2, cy, lx, cy));
            int width = sizes.px(48);
            ink.line(
                    name,
                    used ? font : sizes.regular(18),
                    used ? Tone.ACT.ink() : Look.color("quiet"),
                    new Rectangle(
                            (int) (side > 0 ? lx + sizes.px(8) : lx - width - sizes.px(8)),
                            (int) cy - sizes.px(16),
                            width,
                            sizes.px(32)),
                    side > 0 ? Ink.Align.LEFT : Ink.Align.RIGHT);
        }
    }

    private void lineInput(Graphics2D g, double x, double y, double r) {
        Color pin = Tone.ACT.plate();
        for (double angle : new double[] {90, 180, 270}) {
            double cx = x + r * 0.5 * Math.sin(Math.toRadians(angle));
            double cy = y - r * 0.5 * Math.cos(Math.toRadians(angle));
            double size = r * 0.3;
            g.setColor(pin);
            g.fill(new Ellipse2D.Double(cx - size / 2, cy - size / 2, size, size));
            g.setColor(Tone.ACT.onPlate());
            g.setStroke(sizes.stroke(2));
            g.draw(new Ellipse2D.Double(cx - size / 2, cy - size / 2, size, size));
        }
        g.setStroke(new BasicStroke((float) (r * 0.08)));
        g.draw(new Arc2D.Double(x - r * 0.82, y - r * 0.82, r * 1.64, r * 1.64, 70, 40, Arc2D.OPEN));
    }
}
