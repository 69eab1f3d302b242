package org.docksweep.kiosk.screens;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.BareDriver;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.kiosk.dock.DockState.CurvePicture;

/** The measured line over the reference ribbon, the region that decided marked by hatching and a bracket. */
final class CurvePanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    /** Smallest type of the legend. */
    private static final double SMALLEST = 11;

    private transient Optional<CurvePicture> curve = Optional.empty();
    private boolean sweeping;

    CurvePanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    /**
     * Shows a curve.
     *
     * @param drawing whether the sweep still runs, so that a cursor stands at the end of the line
     */
    void show(Optional<CurvePicture> next, boolean drawing) {
        curve = next;
        sweeping = drawing;
        getAccessibleContext().setAccessibleName(next.map(c -> title(c)).orElse(texts.say("curve.none")));
        repaint();
    }

    private String title(CurvePicture picture) {
        if (picture.testPointCode().equals(BareDriver.TEST_POINT)) {
            return texts.say("curve.bare");
        }
        return texts.say("curve." + picture.shows().name(), picture.testPointCode());
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        Rectangle box = inside(16);
        if (curve.isEmpty()) {
            ink.line(texts.say("curve.none"), sizes.regular(18), Look.color("quiet"), box, Ink.Align.CENTRE);
            return;
        }
        CurvePicture picture = curve.get();
        int head = legend(g, ink, picture, new Rectangle(box.x, box.y - sizes.px(4), box.width, sizes.px(48)));
        int left = sizes.px(36);
        Rectangle plot = new Rectangle(
                box.x + left,
                box.y + head + sizes.px(4),
                box.width - left - sizes.px(8),
                box.height - head - sizes.px(28));
        CurveScale scale = CurveScale.of(picture, plot);
        g.setColor(Look.color("well"));
        g.fill(plot);
        grid(g, ink, scale, plot);
        Shape clip = g.getClip();
        g.clip(plot);
        decided(g, picture, scale, plot);
        ribbon(g, picture, scale);
        if (picture.baseline().length > 0) {
            g.setColor(Look.color("curve.baseline"));
            g.setStroke(sizes.dashed(1.5, 5));
            g.draw(line(picture.ribbonHz(), picture.baseline(), scale));
        }
        g.setColor(Look.color("curve.measured"));
        g.setStroke(sizes.stroke(2.6));
        g.draw(line(picture.frequencyHz(), picture.measured(), scale));
        if (picture.predicted().length > 0) {
            dots(g);
            g.draw(line(picture.predictedHz(), picture.predicted(), scale));
        }
        g.setClip(clip);
        if (sweeping && picture.measured().length > 0) {
            double x = scale.x(
                    picture.frequencyHz()[Math.min(picture.measured().length, picture.frequencyHz().length) - 1]);
            g.setColor(Tone.ACT.ink());
            g.setStroke(sizes.stroke(2));
            g.draw(new Line2D.Double(x, plot.y, x, plot.y + plot.height));
        }
        g.setColor(Look.color("line"));
        g.setStroke(sizes.stroke(1));
        g.draw(plot);
    }

    /** Names of the lines beside the title, or under it when there is no room. */
    private int legend(Graphics2D g, Ink ink, CurvePicture picture, Rectangle box) {
        Font bold = sizes.semiBold(16);
        String title = title(picture);
        int titleWidth = (int) Math.ceil(Ink.width(title, bold));
        int height = sizes.px(24);
        ink.line(title, bold, Look.color("ink"), new Rectangle(box.x, box.y, titleWidth, height), Ink.Align.LEFT);
        List<LegendItem> items = items(picture);
        if (legendWidth(items, sizes.regular(SMALLEST)) > box.width) {
            // The region that decided is the last; its hatching and bracket explain themselves.
            items.remove(items.size() - 1);
        }
        Font font = sizes.regular(15);
        double width = legendWidth(items, font);
        for (double smaller = 14; width > box.width && smaller >= SMALLEST; smaller--) {
            font = sizes.regular(smaller);
            width = legendWidth(items, font);
        }
        boolean under = titleWidth + width > box.width;
        int x = under ? box.x : box.x + box.width - (int) Math.ceil(width) + sizes.px(12);
        int y = under ? box.y + height : box.y;
        for (LegendItem item : items) {
            item.sample().paint(g, new Rectangle(x, y + height / 2 - sizes.px(5), sizes.px(22), sizes.px(10)));
            int textWidth = (int) Math.ceil(Ink.width(item.text(), font));
            ink.line(
                    item.text(),
                    font,
                    Look.color("quiet"),
                    new Rectangle(x + sizes.px(28), y, textWidth, height),
                    Ink.Align.LEFT);
            x += textWidth + sizes.px(40);
        }
        return under ? 2 * height : height;
    }

    private static boolean bursts(CurvePicture picture) {
        return picture.shows() == DecidingCurve.BURSTS;
    }

    private double legendWidth(List<LegendItem> items, Font font) {
        return items.stream()
                .mapToDouble(item -> Ink.width(item.text(), font) + sizes.px(40))
                .sum();
    }

    private List<LegendItem> items(CurvePicture picture) {
        List<LegendItem> items = new ArrayList<>();
        items.add(new LegendItem(texts.say("curve.measured"), (g, area) -> {
            g.setColor(Look.color("curve.measured"));
            g.setStroke(sizes.stroke(2.6));
            g.draw(new Line2D.Double(area.x, area.getCenterY(), area.getMaxX(), area.getCenterY()));
        }));
        if (picture.predicted().length > 0) {
            items.add(new LegendItem(texts.say("curve.predicted"), (g, area) -> {
                dots(g);
                g.draw(new Line2D.Double(area.x, area.getCenterY(), area.getMaxX(), area.getCenterY()));
            }));
        }
        if (picture.ribbonHz().length > 0) {
            items.add(new LegendItem(texts.say(bursts(picture) ? "curve.noise" : "curve.reference"), (g, area) -> {
                g.setColor(Look.color("curve.ribbon"));
                g.fill(area);
                g.setColor(Look.color("curve.ribbon.edge"));
                g.setStroke(sizes.stroke(1));
                g.draw(area);
            }));
        }
        if (picture.baseline().length > 0) {
            items.add(new LegendItem(texts.say("curve.baseline"), (g, area) -> {
                g.setColor(Look.color("curve.baseline"));
                g.setStroke(sizes.dashed(1.5, 5));
                g.draw(new Line2D.Double(area.x, area.getCenterY(), area.getMaxX(), area.getCenterY()));
            }));
        }
        if (picture.decidedToHz() > picture.decidedFromHz()) {
            items.add(new LegendItem(texts.say("curve.decided"), this::decidedSample));
        }
        return items;
    }

    /** Dots thicker than the measured line: where both agree it looks like beads. */
    private void dots(Graphics2D g) {
        g.setColor(Look.color("curve.predicted"));
        g.setStroke(new BasicStroke(
                (float) sizes.px(5),
                BasicStroke.CAP_ROUND,
                BasicStroke.JOIN_ROUND,
                10,
                new float[] {0.1f, sizes.px(10)},
                0));
    }

    /** Paints the sample of one kind of line. */
    private interface Sample {
        void paint(Graphics2D g, Rectangle area);
    }

    /** Name and sample of one kind of line. */
    private record LegendItem(String text, Sample sample) {}

    private void decidedSample(Graphics2D g, Rectangle area) {
        g.setColor(Look.color("curve.decided"));
        g.fill(area);
        hatch(g, area);
    }

    private void grid(Graphics2D g, Ink ink, CurveScale scale, Rectangle plot) {
        Font font = sizes.regular(14);
        int labelHeight = sizes.px(20);
        double lastRight = 0;
        for (double hz : scale.frequencyTicksHz()) {
            double x = scale.x(hz);
            g.setColor(Look.color("faint"));
            g.setStroke(sizes.stroke(1));
            g.draw(new Line2D.Double(x, plot.y, x, plot.y + plot.height));
            String label = hz >= 1000 ? Math.round(hz / 1000) + " k" : String.valueOf(Math.round(hz));
            int width = (int) Math.ceil(Ink.width(label, font));
            double left = Math.min(x - width / 2.0, plot.x + plot.width - width - sizes.px(30));
            if (left > lastRight + sizes.px(6)) {
                ink.line(
                        label,
                        font,
                        Look.color("quiet"),
                        new Rectangle((int) left, plot.y + plot.height + sizes.px(3), width, labelHeight),
                        Ink.Align.LEFT);
                lastRight = left + width;
            }
        }
        ink.line(
                "Hz",
                font,
                Look.color("quiet"),
                new Rectangle(
                        plot.x + plot.width - sizes.px(24),
                        plot.y + plot.height + sizes.px(3),
                        sizes.px(24),
                        labelHeight),
                Ink.Align.RIGHT);
        double lastTop = Double.MAX_VALUE;
        for (double value : scale.valueTicks()) {
            double y = scale.y(value);
            g.setColor(Look.color("faint"));
            g.draw(new Line2D.Double(plot.x, y, plot.x + plot.width, y));
            if (y + labelHeight / 2.0 < lastTop && y > plot.y + sizes.px(4)) {
                ink.line(
                        value < 1 && value > 0 ? texts.say("number.tenth", value) : String.valueOf(Math.round(value)),
                        font,
                        Look.color("quiet"),
                        new Rectangle(0, (int) y - labelHeight / 2, plot.x - sizes.px(6), labelHeight),
                        Ink.Align.RIGHT);
                lastTop = y - labelHeight / 2.0;
            }
        }
    }

    private void decided(Graphics2D g, CurvePicture picture, CurveScale scale, Rectangle plot) {
        if (!(picture.decidedToHz() > picture.decidedFromHz())) {
            return;
        }
        double from = scale.x(picture.decidedFromHz());
        double to = scale.x(picture.decidedToHz());
        Rectangle area = new Rectangle((int) from, plot.y, (int) Math.max(sizes.px(4), to - from), plot.height);
        decidedSample(g, area);
        g.setColor(Tone.FAULT.ink());
        g.setStroke(sizes.stroke(3));
        g.draw(Sign.polyline(
                area.x,
                plot.y + sizes.px(10),
                area.x,
                plot.y + sizes.px(2),
                area.getMaxX(),
                plot.y + sizes.px(2),
                area.getMaxX(),
                plot.y + sizes.px(10)));
    }

    private void hatch(Graphics2D g, Rectangle area) {
        Graphics2D pen = (Graphics2D) g.create();
        pen.clip(area);
        Color ink = Tone.FAULT.ink();
        pen.setColor(new Color(ink.getRed(), ink.getGreen(), ink.getBlue(), 90));
        pen.setStroke(sizes.stroke(1));
        for (int x = area.x - area.height; x < area.x + area.width; x += sizes.px(8)) {
            pen.draw(new Line2D.Double(x, area.getMaxY(), x + area.height, area.y));
        }
        pen.dispose();
    }

    private void ribbon(Graphics2D g, CurvePicture picture, CurveScale scale) {
        if (picture.ribbonHz().length == 0) {
            return;
        }
        Path2D area = line(picture.ribbonHz(), picture.ribbonHigh(), scale);
        for (int i = picture.ribbonHz().length - 1; i >= 0; i--) {
            area.lineTo(scale.x(picture.ribbonHz()[i]), scale.y(picture.ribbonLow()[i]));
        }
        area.closePath();
        g.setColor(Look.color("curve.ribbon"));
        g.fill(area);
        g.setColor(Look.color("curve.ribbon.edge"));
        g.setStroke(sizes.stroke(1));
        g.draw(area);
    }

    private static Path2D line(double[] hz, double[] values, CurveScale scale) {
        Path2D path = new Path2D.Double();
        boolean open = false;
        for (int i = 0; i < Math.min(hz.length, values.length); i++) {
            double y = scale.y(values[i]);
            if (!Double.isFinite(y)) {
                open = false;
            } else if (open) {
                path.lineTo(scale.x(hz[i]), y);
            } else {
                path.moveTo(scale.x(hz[i]), y);
                open = true;
            }
        }
        return path;
    }
}
