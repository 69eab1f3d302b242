package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.kiosk.dock.DockState.SlotState;

/** Draws the front of a cabinet from its model's measures: as a front with cones and horn, or as a small silhouette. */
final class CabinetDrawing {
    /** A mouth whose sides differ by more than this share is drawn as a horn, else as a round cone. */
    private static final double ROUND_WITHIN = 0.05;

    private final CabinetModel model;
    private final double x;
    private final double y;
    private final double pxPerMm;

    /** Fits the front of a model into an area, keeping its proportions, centred. */
    CabinetDrawing(CabinetModel model, Rectangle area) {
        this.model = model;
        this.pxPerMm = Math.min(area.width / model.widthMm(), area.height / model.heightMm());
        this.x = area.x + (area.width - model.widthMm() * pxPerMm) / 2;
        this.y = area.y + (area.height - model.heightMm() * pxPerMm) / 2;
    }

    Rectangle2D outline() {
        return new Rectangle2D.Double(x, y, model.widthMm() * pxPerMm, model.heightMm() * pxPerMm);
    }

    Rectangle2D mouthBox(DriverPosition position) {
        return new Rectangle2D.Double(
                x + (position.centreXMm() - position.widthMm() / 2) * pxPerMm,
                y + (position.centreYMm() - position.heightMm() / 2) * pxPerMm,
                position.widthMm() * pxPerMm,
                position.heightMm() * pxPerMm);
    }

    private static boolean isRound(DriverPosition position) {
        return Math.abs(position.widthMm() / position.heightMm() - 1) <= ROUND_WITHIN;
    }

    Shape mouth(DriverPosition position) {
        Rectangle2D box = mouthBox(position);
        if (isRound(position)) {
            return new Ellipse2D.Double(box.getX(), box.getY(), box.getWidth(), box.getHeight());
        }
        double round = Math.min(box.getWidth(), box.getHeight()) * 0.16;
        return new RoundRectangle2D.Double(box.getX(), box.getY(), box.getWidth(), box.getHeight(), round, round);
    }

    /** Draws box, cones and horn in the plain colours of the theme. */
    void paintFront(Graphics2D g, Sizes sizes) {
        Rectangle2D box = outline();
        double round = sizes.px(6);
        Shape body = new RoundRectangle2D.Double(box.getX(), box.getY(), box.getWidth(), box.getHeight(), round, round);
        g.setColor(Look.color("box"));
        g.fill(body);
        g.setColor(Look.color("box.edge"));
        g.setStroke(sizes.stroke(1.5));
        g.draw(body);
        for (DriverPosition position : model.positions()) {
            g.setColor(Look.color("box.driver"));
            g.fill(mouth(position));
            Rectangle2D mouth = mouthBox(position);
            if (isRound(position)) {
                ring(g, mouth, 0.86, Look.color("box.cone"));
            } else {
                throat(g, mouth);
            }
            g.setColor(Look.color("box.edge"));
            g.setStroke(sizes.stroke(1.5));
            g.draw(mouth(position));
        }
    }

    private static void ring(Graphics2D g, Rectangle2D mouth, double share, Color color) {
        double w = mouth.getWidth() * share;
        double h = mouth.getHeight() * share;
        g.setColor(color);
        g.fill(new Ellipse2D.Double(mouth.getCenterX() - w / 2, mouth.getCenterY() - h / 2, w, h));
    }

    private static void throat(Graphics2D g, Rectangle2D mouth) {
        g.setColor(Look.color("box.cone"));
        double w = mouth.getWidth() * 0.22;
        double h = mouth.getHeight() * 0.5;
        g.fill(Sign.polygon(
                mouth.getX(),
                mouth.getY(),
                mouth.getCenterX() - w / 2,
                mouth.getCenterY() - h / 2,
                mouth.getCenterX() - w / 2,
                mouth.getCenterY() + h / 2,
                mouth.getX(),
                mouth.getMaxY()));
        g.fill(Sign.polygon(
                mouth.getMaxX(),
                mouth.getY(),
                mouth.getCenterX() + w / 2,
                mouth.getCenterY() - h / 2,
                mouth.getCenterX() + w / 2,
                mouth.getCenterY() + h / 2,
                mouth.getMaxX(),
                mouth.getMaxY()));
    }

    /**
     * Draws a silhouette of the return list: hollow and dashed while it is not back, heavy outline while at hand,
     * filled when back, with the sign of what became of it.
     */
    void paintSilhouette(Graphics2D g, Sizes sizes, SlotState state) {
        Rectangle2D box = outline();
        double round = sizes.px(3);
        Shape body = new RoundRectangle2D.Double(box.getX(), box.getY(), box.getWidth(), box.getHeight(), round, round);
        Tone tone = tone(state);
        if (state == SlotState.NOT_YET) {
            g.setColor(Look.color("quiet"));
            g.setStroke(sizes.dashed(1.4, 3));
            g.draw(body);
        } else if (state == SlotState.AT_HAND) {
            g.setColor(tone.wash());
            g.fill(body);
            g.setColor(tone.ink());
            g.setStroke(sizes.stroke(2.5));
            g.draw(body);
        } else {
            g.setColor(state == SlotState.SHELF ? Look.color("silhouette") : tone.plate());
            g.fill(body);
            g.setColor(Look.color("box.edge"));
            g.setStroke(sizes.stroke(1));
            g.draw(body);
        }
        if (state == SlotState.NOT_YET || state == SlotState.AT_HAND || state == SlotState.SHELF) {
            g.setColor(state == SlotState.SHELF ? Look.color("silhouette.cone") : tone.ink());
            g.setStroke(sizes.stroke(1));
            for (DriverPosition position : model.positions()) {
                if (state == SlotState.SHELF) {
                    g.fill(mouth(position));
                } else {
                    g.draw(mouth(position));
                }
            }
        }
        paintSlotSign(g, box, state);
    }

    private static void paintSlotSign(Graphics2D g, Rectangle2D box, SlotState state) {
        Sign sign = switch (state) {
            case NOT_YET, AT_HAND, SHELF -> null;
            case WATCH -> Sign.EXCLAMATION;
            case BENCH -> Sign.CROSS;
            case HOLD -> Sign.HAND;
        };
        if (sign != null) {
            double size = Math.min(box.getWidth(), box.getHeight()) * 0.86;
            Tone tone = tone(state);
            sign.paint(g, box.getCenterX() - size / 2, box.getCenterY() - size / 2, size, tone.onPlate(), tone.plate());
        }
    }

    static Tone tone(SlotState state) {
        return switch (state) {
            case NOT_YET -> Tone.NEUTRAL;
            case AT_HAND -> Tone.ACT;
            case SHELF -> Tone.PASS;
            case WATCH, HOLD -> Tone.ATTENTION;
            case BENCH -> Tone.FAULT;
        };
    }
}
