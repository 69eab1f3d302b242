package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.CheckChart;
import org.docksweep.kiosk.rig.ContactTrend;
import org.docksweep.kiosk.rig.PlugTrend;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.RigSound;

/** One small chart of the rig: readings in the order of time, limits, moving average, and one sentence of what it says. */
final class RigChartPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    /** Readings shown; older ones are in the book. */
    private static final int SHOWN = 40;

    private final int sentenceHeight;
    private transient Optional<Content> content = Optional.empty();

    /** What is drawn, whatever it is of. */
    private record Content(
            String title,
            ReadingState state,
            String sentence,
            List<Double> values,
            List<Double> averages,
            List<Boolean> outside,
            double[] limits,
            double[] averageLimits,
            double centre,
            double spanFrom,
            double spanTo,
            String unit) {}

    /** Room for the sentence under the chart, in pixels at 100 %. */
    RigChartPanel(Sizes sizes, Texts texts, int sentencePx) {
        super(sizes, texts);
        this.sentenceHeight = sizes.px(sentencePx);
    }

    /** Shows the control chart of a check standard; values in per cent. */
    void show(CheckChart chart) {
        show(
                chart,
                texts.say("rig.chart.standard", chart.standardName()),
                "rig.chart.",
                100,
                "%",
                RigDay.CHECK_LIMIT_SHARE);
    }

    /** Shows a control chart of the microphone; decibels, and centimetres of way. */
    void showSound(CheckChart chart) {
        boolean way = chart.standardName().equals(RigSound.WAY);
        double limit = switch (chart.standardName()) {
            case RigSound.GAIN -> MicrophoneCheck.GAIN_LIMIT_DB;
            case RigSound.WAY -> MicrophoneCheck.MOVED_LIMIT_M;
            default -> MicrophoneCheck.SHAPE_LIMIT_DB;
        };
        String title = texts.say("rig.chart.sound-" + chart.standardName());
        show(chart, title, "rig.chart.sound-", way ? 100 : 1, way ? "cm" : "dB", limit);
    }

    private void show(CheckChart chart, String title, String sentences, double factor, String unit, double fixedLimit) {
        int from = Math.max(0, chart.shares().size() - SHOWN);
        List<Double> values =
                times(factor, chart.shares().subList(from, chart.shares().size()));
        List<Double> averages = chart.averages().isEmpty()
                ? List.of()
                : times(factor, chart.averages().subList(from, chart.averages().size()));
        List<Boolean> outside = java.util.stream.IntStream.range(
                        from, chart.shares().size())
                .mapToObj(i -> chart.jumps(i) || chart.drifts(i))
                .toList();
        int newest = chart.shares().size() - 1;
        boolean jumps = newest >= 0 && chart.jumps(newest);
        boolean drifts = newest >= 0 && chart.drifts(newest);
        String sentence = jumps
                ? texts.say(sentences + "jumps")
                : drifts
                        ? texts.say(sentences + "drifts")
                        : chart.limits().isPresent()
                                ? texts.say("rig.chart.steady")
                                : texts.say(sentences + "few", chart.shares().size());
        double[] limits = chart.limits()
                .map(l -> new double[] {factor * l.lower(), factor * l.upper()})
                .orElse(new double[] {-factor * fixedLimit, factor * fixedLimit});
        double centre = chart.limits().map(l -> factor * l.centre()).orElse(0.0);
        content = Optional.of(spanned(
                title,
                jumps || drifts ? ReadingState.WATCH : ReadingState.OK,
                sentence,
                values,
                averages,
                outside,
                limits,
                chart.limits()
                        .map(l -> new double[] {factor * l.averageLower(), factor * l.averageUpper()})
                        .orElse(new double[0]),
                centre,
                unit));
        described();
    }

    /** Shows the contact of a plug; values in milliohm. */
    void show(ContactTrend trend) {
        int from = Math.max(0, trend.ohms().size() - SHOWN);
        List<Double> values = trend.ohms().subList(from, trend.ohms().size()).stream()
                .map(ohm -> 1000 * ohm)
                .toList();
        content = Optional.of(spanned(
                texts.say("rig.chart.contact", trend.contacts()),
                trend.worn() ? ReadingState.WATCH : ReadingState.OK,
                texts.say(trend.words()),
                values,
                List.of(),
                values.stream().map(v -> false).toList(),
                new double[] {-20, 20},
                new double[0],
                0,
                "m\u03a9"));
        described();
    }

    /** Shows the contact of a plug by the curves of cabinets; values in milliohm around their median. */
    void show(PlugTrend trend) {
        int from = Math.max(0, trend.plugIns().size() - SHOWN);
        List<Double> values = trend.plugIns().subList(from, trend.plugIns().size()).stream()
                .map(plugIn -> 1000 * plugIn.ohm())
                .toList();
        content = Optional.of(spanned(
                texts.say("rig.chart.cabinets-at", trend.contacts()),
                trend.worn() ? ReadingState.WATCH : ReadingState.OK,
                texts.say(trend.words()),
                values,
                List.of(),
                values.stream().map(v -> false).toList(),
                new double[0],
                new double[0],
                60,
                "m\u03a9"));
        described();
    }

    /** Shows that there is nothing yet. */
    void showNothing(String title, String sentence) {
        content = Optional.of(new Content(
                title,
                ReadingState.NOT_JUDGED,
                sentence,
                List.of(),
                List.of(),
                List.of(),
                new double[0],
                new double[0],
                0,
                -1,
                1,
                ""));
        described();
    }

    private static Content spanned(
            String title,
            ReadingState state,
            String sentence,
            List<Double> values,
            List<Double> averages,
            List<Boolean> outside,
            double[] limits,
            double[] averageLimits,
            double centre,
            String unit) {
        double reach = 0;
        for (double limit : limits) {
            reach = Math.max(reach, Math.abs(limit - centre));
        }
        for (double value : values) {
            reach = Math.max(reach, Math.abs(value - centre));
        }
        double span = Math.max(reach, 1e-3) * 1.25;
        return new Content(
                title,
                state,
                sentence,
                values,
                averages,
                outside,
                limits,
                averageLimits,
                centre,
                centre - span,
                centre + span,
                unit);
    }

    private void described() {
        content.ifPresent(c -> getAccessibleContext().setAccessibleName(c.title() + ". " + c.sentence()));
        repaint();
    }

    private static List<Double> times(double factor, List<Double> values) {
        return values.stream().map(value -> factor * value).toList();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (content.isEmpty()) {
            return;
        }
        Content c = content.get();
        Rectangle all = inside(12);
        String newest =
                c.values().isEmpty() ? "" : number(c.values().get(c.values().size() - 1), c) + " " + c.unit();
        Font strong = sizes.bold(18);
        int newestWidth = (int) Math.ceil(Ink.width(newest, strong));
        int titleHeight = sizes.px(26);
        Rectangle title = new Rectangle(all.x, all.y, all.width - newestWidth - sizes.px(8), titleHeight);
        Font titleFont = Ink.fitting(
                c.title(), sizes::semiBold, new double[] {18, 17, 16, 15, 14, 13, 12, 11}, title.width, titleHeight);
        ink.line(c.title(), titleFont, Look.color("ink"), title, Ink.Align.LEFT);
        if (!newest.isEmpty()) {
            ink.line(
                    newest,
                    strong,
                    Look.color("ink"),
                    new Rectangle(all.x + all.width - newestWidth, all.y, newestWidth, titleHeight),
                    Ink.Align.LEFT);
        }
        sentence(g, ink, c, new Rectangle(all.x, all.y + all.height - sentenceHeight, all.width, sentenceHeight));
        Rectangle plot = new Rectangle(
                all.x + sizes.px(64),
                all.y + titleHeight + sizes.px(8),
                all.width - sizes.px(64),
                all.height - titleHeight - sentenceHeight - sizes.px(16));
        if (!c.values().isEmpty() && plot.height > sizes.px(30)) {
            plot(g, ink, c, plot);
        }
    }

    private void sentence(Graphics2D g, Ink ink, Content c, Rectangle box) {
        int sign = sizes.px(22);
        Tone tone = Tone.of(c.state());
        Sign.of(c.state()).paint(g, box.x, box.y + (box.height - sign) / 2.0, sign, tone.ink(), Look.color("card"));
        Rectangle text = new Rectangle(box.x + sizes.px(32), box.y, box.width - sizes.px(32), box.height);
        Font font = Ink.fitting(
                c.sentence(), sizes::regular, new double[] {17, 16, 15, 14, 13, 12, 11}, text.width, text.height);
        int height = Ink.wrap(c.sentence(), font, text.width).size() * (int) Math.ceil(Ink.lineHeight(font));
        text.y += Math.max(0, (text.height - height) / 2);
        ink.paragraph(c.sentence(), font, Look.color("ink"), text);
    }

    private void plot(Graphics2D g, Ink ink, Content c, Rectangle plot) {
        g.setColor(Look.color("well"));
        g.fill(plot);
        List<Double> labelled = new ArrayList<>();
        for (double limit : c.limits()) {
            level(g, ink, c, plot, limit, Tone.ATTENTION.ink(), true, labelled);
        }
        level(g, ink, c, plot, c.centre(), Look.color("line"), false, labelled);
        for (double limit : c.averageLimits()) {
            g.setColor(Tone.ACT.ink());
            g.setStroke(sizes.dashed(1, 3));
            double y = y(c, plot, limit);
            g.draw(new Line2D.Double(plot.x, y, plot.getMaxX(), y));
        }
        if (!c.averages().isEmpty()) {
            Path2D line = new Path2D.Double();
            for (int i = 0; i < c.averages().size(); i++) {
                double x = x(c, plot, i);
                double y = y(c, plot, c.averages().get(i));
                if (i == 0) {
                    line.moveTo(x, y);
                } else {
                    line.lineTo(x, y);
                }
            }
            g.setColor(Tone.ACT.ink());
            g.setStroke(sizes.stroke(2.5));
            g.draw(line);
        }
        for (int i = 0; i < c.values().size(); i++) {
            double x = x(c, plot, i);
            double y = y(c, plot, c.values().get(i));
            double r = sizes.px(4);
            if (c.outside().get(i)) {
                // Another shape as well as another colour.
                g.setColor(Tone.ATTENTION.ink());
                g.setStroke(sizes.stroke(2.5));
                g.draw(new Line2D.Double(x - r * 1.5, y - r * 1.5, x + r * 1.5, y + r * 1.5));
                g.draw(new Line2D.Double(x - r * 1.5, y + r * 1.5, x + r * 1.5, y - r * 1.5));
            } else {
                g.setColor(Look.color("curve.measured"));
                g.fill(new Ellipse2D.Double(x - r, y - r, 2 * r, 2 * r));
            }
        }
    }

    private void level(
            Graphics2D g,
            Ink ink,
            Content c,
            Rectangle plot,
            double value,
            Color color,
            boolean dashed,
            List<Double> labelled) {
        double y = y(c, plot, value);
        g.setColor(color);
        g.setStroke(dashed ? sizes.dashed(1.5, 6) : sizes.stroke(1.5));
        g.draw(new Line2D.Double(plot.x, y, plot.getMaxX(), y));
        int height = sizes.px(16);
        // Limits that lie close together have one number; the line is drawn all the same.
        if (labelled.stream().anyMatch(other -> Math.abs(other - y) < height + sizes.px(2))) {
            return;
        }
        labelled.add(y);
        Rectangle label = new Rectangle(plot.x - sizes.px(64), (int) y - height / 2, sizes.px(58), height);
        String text = number(value, c);
        Font font = Ink.fitting(text, sizes::regular, new double[] {13, 12, 11, 10}, label.width, sizes.px(18));
        ink.line(text, font, Look.color("quiet"), label, Ink.Align.RIGHT);
    }

    private String number(double value, Content c) {
        String format = switch (c.unit()) {
            case "%" -> "%+.3f";
            case "dB" -> "%+.2f";
            case "cm" -> "%+.1f";
            default -> "%+.0f";
        };
        String text = String.format(texts.locale(), format, value);
        return text.replace('-', '\u2212');
    }

    private static double x(Content c, Rectangle plot, int index) {
        return plot.x + plot.width * (index + 0.5) / Math.max(8, c.values().size());
    }

    private static double y(Content c, Rectangle plot, double value) {
        return plot.getMaxY() - plot.height * (value - c.spanFrom()) / (c.spanTo() - c.spanFrom());
    }
}
