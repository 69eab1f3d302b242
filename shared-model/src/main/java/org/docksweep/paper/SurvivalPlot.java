package org.docksweep.paper;

import java.util.List;
import org.docksweep.contract.ReliabilityReport.Group;
import org.docksweep.contract.ReliabilityReport.Point;
import org.docksweep.paper.PaperFonts.Weight;

/**
 * Share of parts that still work by age, with limits, as steps; vectors only. Up to two groups: the first as a full line
 * over a grey band, the second dashed between thin dashed limits, so that nothing relies on colour. Under the axis the
 * number at risk, because a curve over three parts is worth less than it looks.
 */
final class SurvivalPlot {
    private static final double FONT_PT = 7.5;
    private static final double LEFT_MM = 19;
    private static final double BAND = 0.82;
    private static final double GRID = 0.8;
    private static final double CURVE_MM = 0.5;
    private static final double LIMIT_MM = 0.25;
    private static final double GRID_MM = 0.15;
    private static final int LEAST_TICKS = 4;

    private final Ink ink;
    private final PaperText text;
    private final List<Series> series;
    private final double widestWeeks;
    private final double tickWeeks;

    /**
     * A curve with its name.
     *
     * @param name name in words
     * @param group its figures
     */
    record Series(String name, Group group) {
        double lastWeeks() {
            List<Point> curve = group.curve();
            return curve.isEmpty() ? 0 : curve.get(curve.size() - 1).weeks();
        }

        int atRisk(double weeks) {
            for (Point point : group.curve()) {
                if (point.weeks() >= weeks) {
                    return point.atRisk();
                }
            }
            return 0;
        }
    }

    SurvivalPlot(Ink ink, PaperText text, List<Series> series) {
        this.ink = ink;
        this.text = text;
        this.series = series;
        double last = series.stream().mapToDouble(Series::lastWeeks).max().orElse(1);
        this.tickWeeks = tick(last);
        this.widestWeeks = tickWeeks * Math.max(1, Math.ceil(last / tickWeeks));
    }

    /** Distance of ticks: 1, 2, 4, 13, 26, 52 ... weeks, so that years and quarters fall on lines. */
    private static double tick(double last) {
        for (double tick : new double[] {1, 2, 4, 13, 26, 52, 104}) {
            if (last / tick <= 2 * LEAST_TICKS) {
                return tick;
            }
        }
        return 208;
    }

    /** Height of everything under the plot for a number of groups. */
    static double footMm(int groups) {
        return Ink.lineMm(FONT_PT) * (groups + 2.2);
    }

    void draw(Box box) {
        double line = Ink.lineMm(FONT_PT);
        Box plot = new Box(
                box.x() + LEFT_MM,
                box.y() + line * 1.4,
                box.width() - LEFT_MM - 2,
                box.height() - line * 1.4 - footMm(series.size()));
        ink.text(Weight.SEMIBOLD, FONT_PT, box.x(), box.y() + Ink.ascentMm(FONT_PT), text.get("reliability.plot"));
        legend(box, line);
        for (int i = 0; i < series.size(); i++) {
            limits(plot, series.get(i).group().curve(), i == 0);
        }
        grid(plot);
        for (int i = 0; i < series.size(); i++) {
            curve(plot, series.get(i).group().curve(), i == 0);
        }
        ink.frame(plot, Ink.FINE_MM);
        foot(box, plot, line);
    }

    private void legend(Box box, double line) {
        double x = box.right() - 2;
        double baseline = box.y() + Ink.ascentMm(FONT_PT);
        for (int i = series.size() - 1; i >= 0; i--) {
            String name = series.get(i).name();
            x -= ink.fonts().widthMm(Weight.REGULAR, FONT_PT, name);
            ink.text(Weight.REGULAR, FONT_PT, x, baseline, name);
            double middle = baseline - line * 0.25;
            if (i == 0) {
                ink.fill(new Box(x - 8, middle - 1, 7, 2), BAND);
                ink.rule(x - 8, middle, x - 1, middle, CURVE_MM);
            } else {
                ink.dashed(x - 8, middle, x - 1, middle, CURVE_MM);
            }
            x -= 12;
        }
    }

    private double x(Box plot, double weeks) {
        return plot.x() + plot.width() * Math.min(1, weeks / widestWeeks);
    }

    private static double y(Box plot, double share) {
        return plot.bottom() - plot.height() * share;
    }

    private void grid(Box plot) {
        ink.canvas().saveState();
        ink.canvas().setGrayStroke((float) GRID);
        for (int percent = 25; percent < 100; percent += 25) {
            double y = y(plot, percent / 100.0);
            ink.rule(plot.x(), y, plot.right(), y, GRID_MM);
        }
        for (double weeks = tickWeeks; weeks < widestWeeks; weeks += tickWeeks) {
            ink.rule(x(plot, weeks), plot.y(), x(plot, weeks), plot.bottom(), GRID_MM);
        }
        ink.canvas().restoreState();
    }

    /** Between two steps the limits stay as they were after the first. */
    private void limits(Box plot, List<Point> curve, boolean first) {
        double upperBefore = 1;
        double lowerBefore = 1;
        for (int i = 0; i < curve.size(); i++) {
            Point point = curve.get(i);
            double from = x(plot, point.weeks());
            double to = i + 1 < curve.size() ? x(plot, curve.get(i + 1).weeks()) : from;
            if (first) {
                ink.fill(
                        new Box(
                                from,
                                y(plot, point.upper()),
                                to - from,
                                plot.height() * (point.upper() - point.lower())),
                        BAND);
            } else {
                step(plot, from, to, upperBefore, point.upper());
                step(plot, from, to, lowerBefore, point.lower());
            }
            upperBefore = point.upper();
            lowerBefore = point.lower();
        }
    }

    private void step(Box plot, double from, double to, double before, double after) {
        ink.dashed(from, y(plot, before), from, y(plot, after), LIMIT_MM);
        ink.dashed(from, y(plot, after), to, y(plot, after), LIMIT_MM);
    }

    private void curve(Box plot, List<Point> curve, boolean full) {
        double x = plot.x();
        double y = plot.y();
        for (Point point : curve) {
            double nextX = x(plot, point.weeks());
            double nextY = y(plot, point.survival());
            stroke(x, y, nextX, y, full);
            stroke(nextX, y, nextX, nextY, full);
            x = nextX;
            y = nextY;
        }
    }

    private void stroke(double x1, double y1, double x2, double y2, boolean full) {
        if (full) {
            ink.rule(x1, y1, x2, y2, CURVE_MM);
        } else {
            ink.dashed(x1, y1, x2, y2, CURVE_MM);
        }
    }

    private void foot(Box box, Box plot, double line) {
        for (int percent = 0; percent <= 100; percent += 25) {
            double baseline = y(plot, percent / 100.0) + Ink.ascentMm(FONT_PT) / 2;
            ink.textRight(Weight.REGULAR, FONT_PT, plot.x() - 1, baseline, text.percent(percent / 100.0));
        }
        double baseline = plot.bottom() + Ink.ascentMm(FONT_PT) + 0.8;
        for (double weeks = 0; weeks <= widestWeeks + 1e-9; weeks += tickWeeks) {
            ink.textCentre(Weight.REGULAR, FONT_PT, x(plot, weeks), baseline, text.count(Math.round(weeks)));
        }
        ink.line(
                Weight.REGULAR,
                FONT_PT,
                5,
                plot.x(),
                baseline + line,
                plot.width(),
                text.get("reliability.plot.weeks"));
        for (int i = 0; i < series.size(); i++) {
            double row = baseline + line * (2 + i);
            ink.line(
                    Weight.REGULAR,
                    FONT_PT,
                    4,
                    box.x(),
                    row,
                    LEFT_MM - 4,
                    series.get(i).name());
            for (double weeks = 0; weeks <= widestWeeks + 1e-9; weeks += tickWeeks) {
                int atRisk = series.get(i).atRisk(weeks);
                ink.textCentre(Weight.REGULAR, FONT_PT, x(plot, weeks), row, text.count(atRisk));
            }
        }
    }
}
