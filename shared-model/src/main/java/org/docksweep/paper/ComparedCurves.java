package org.docksweep.paper;

import com.lowagie.text.Rectangle;
import com.lowagie.text.pdf.PdfGraphics2D;
import com.lowagie.text.pdf.PdfPCell;
import com.lowagie.text.pdf.PdfPTable;
import com.lowagie.text.pdf.PdfTemplate;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import org.docksweep.paper.PaperFonts.Weight;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;

/**
 * Several curves of one test point in one frame, as a block of a sheet. They differ in stroke, not only in shade, so that
 * a black-and-white print keeps them apart.
 */
final class ComparedCurves {
    private static final Color GRID = new Color(0xC8, 0xC8, 0xC8);
    private static final double FONT_PT = 8;
    private static final double LARGEST_OHM = 2000;
    private static final double SMALLEST_OHM = 0.05;
    private static final double LEVEL_MARGIN_DB = 3;

    private final String title;
    private final boolean impedance;
    private final List<Line> lines;

    /** How a line is drawn. */
    enum Style {
        /** Thick and black. */
        THICK(2.0f, null, Color.BLACK),
        /** Dashed and grey. */
        DASHED(1.2f, new float[] {6, 3}, new Color(0x40, 0x40, 0x40)),
        /** Thin and black. */
        THIN(0.7f, null, Color.BLACK);

        private final float widthPt;
        private final float[] dash;
        private final Color colour;

        Style(float widthPt, float[] dash, Color colour) {
            this.widthPt = widthPt;
            this.dash = dash;
            this.colour = colour;
        }

        BasicStroke stroke() {
            return dash == null
                    ? new BasicStroke(widthPt, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND)
                    : new BasicStroke(widthPt, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 10, dash, 0);
        }
    }

    /**
     * A curve.
     *
     * @param label what it is
     * @param style how it is drawn
     * @param frequencyHz frequencies
     * @param values ohm or decibel
     */
    record Line(String label, Style style, double[] frequencyHz, double[] values) {}

    /**
     * A block.
     *
     * @param title its heading
     * @param impedance whether values are ohm rather than decibel
     * @param lines at least one, drawn in their order
     */
    ComparedCurves(String title, boolean impedance, List<Line> lines) {
        this.title = title;
        this.impedance = impedance;
        this.lines = lines;
    }

    PdfPTable draw(PaperFonts fonts, PaperText text, double heightMm) {
        PdfPTable block = new PdfPTable(1);
        block.setWidthPercentage(100);
        block.setSpacingBefore(Ink.points(5));
        block.setKeepTogether(true);
        PdfPCell head = new PdfPCell(new com.lowagie.text.Phrase(fonts.safe(title), fonts.table(Weight.BOLD, 11)));
        head.setBorder(Rectangle.NO_BORDER);
        head.setPaddingLeft(0);
        block.addCell(head);
        PdfPCell cell = new PdfPCell();
        cell.setBorder(Rectangle.NO_BORDER);
        cell.setFixedHeight(Ink.points(heightMm));
        cell.setCellEvent((c, place, canvases) -> {
            var canvas = canvases[PdfPTable.TEXTCANVAS];
            float legend = Ink.points(6);
            float width = place.getWidth();
            float height = place.getHeight() - legend;
            PdfTemplate template = canvas.createTemplate(width, height);
            PdfGraphics2D graphics = new PdfGraphics2D(template, width, height, new OneFace(fonts), false, false, 1f);
            chart().draw(graphics, new Rectangle2D.Double(0, 0, width, height));
            graphics.dispose();
            canvas.addTemplate(template, place.getLeft(), place.getBottom() + legend);
            double pageMm = place.getTop() / Ink.POINTS_PER_MM;
            legend(
                    new Ink(canvas, fonts, pageMm),
                    place.getLeft() / Ink.POINTS_PER_MM,
                    place.getHeight() / Ink.POINTS_PER_MM - 1.5,
                    text.get("curve.frequency"),
                    place.getWidth() / Ink.POINTS_PER_MM);
        });
        block.addCell(cell);
        return block;
    }

    private void legend(Ink ink, double leftMm, double baselineMm, String axis, double widthMm) {
        double x = leftMm + 4;
        double middle = baselineMm - 0.9;
        for (Line line : lines) {
            double thickness = line.style().widthPt / Ink.POINTS_PER_MM;
            if (line.style() == Style.DASHED) {
                ink.dashed(x, middle, x + 9, middle, thickness);
            } else {
                ink.rule(x, middle, x + 9, middle, thickness);
            }
            ink.text(Weight.REGULAR, FONT_PT, x + 10.5, baselineMm, line.label());
            x += 10.5 + ink.fonts().widthMm(Weight.REGULAR, FONT_PT, line.label()) + 5;
        }
        ink.textRight(Weight.REGULAR, FONT_PT, leftMm + widthMm, baselineMm, axis);
    }

    private double[] shown(Line line) {
        return impedance
                ? Arrays.stream(line.values())
                        .map(z -> Math.min(LARGEST_OHM, Math.max(SMALLEST_OHM, z)))
                        .toArray()
                : line.values();
    }

    private JFreeChart chart() {
        double lowest = Double.POSITIVE_INFINITY;
        double highest = Double.NEGATIVE_INFINITY;
        double lowestHz = Double.POSITIVE_INFINITY;
        double highestHz = 0;
        for (Line line : lines) {
            double[] values = shown(line);
            lowest = Math.min(lowest, Arrays.stream(values).min().orElseThrow());
            highest = Math.max(highest, Arrays.stream(values).max().orElseThrow());
            lowestHz = Math.min(lowestHz, line.frequencyHz()[0]);
            highestHz = Math.max(highestHz, line.frequencyHz()[line.frequencyHz().length - 1]);
        }
        PlotAxis frequency = new PlotAxis(lowestHz, highestHz, FONT_PT);
        frequency.setFixedDimension(FONT_PT * 1.9);
        XYPlot plot = new XYPlot(null, frequency, values(lowest, highest), null);
        for (int i = 0; i < lines.size(); i++) {
            plot.setDataset(i, data(lines.get(i)));
            XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
            renderer.setDrawSeriesLineAsPath(true);
            renderer.setSeriesPaint(0, lines.get(i).style().colour);
            renderer.setSeriesStroke(0, lines.get(i).style().stroke());
            plot.setRenderer(i, renderer);
        }
        plot.setBackgroundPaint(null);
        plot.setOutlinePaint(Color.BLACK);
        plot.setInsets(new RectangleInsets(1, 0, 0, FONT_PT * 0.9));
        plot.setAxisOffset(RectangleInsets.ZERO_INSETS);
        plot.setDomainGridlinePaint(GRID);
        plot.setRangeGridlinePaint(GRID);
        plot.setDomainGridlineStroke(new BasicStroke(0.4f));
        plot.setRangeGridlineStroke(new BasicStroke(0.4f));
        JFreeChart chart = new JFreeChart(null, null, plot, false);
        chart.setBackgroundPaint(null);
        chart.setPadding(RectangleInsets.ZERO_INSETS);
        return chart;
    }

    private ValueAxis values(double lowest, double highest) {
        if (impedance) {
            return new PlotAxis(lowest / 1.25, highest * 1.25, FONT_PT);
        }
        NumberAxis levels = new NumberAxis(null);
        levels.setAutoRangeIncludesZero(false);
        levels.setRange(lowest - LEVEL_MARGIN_DB, highest + LEVEL_MARGIN_DB);
        levels.setTickLabelFont(PaperFonts.graphics(FONT_PT));
        levels.setTickMarksVisible(false);
        levels.setAxisLineVisible(false);
        return levels;
    }

    private XYSeriesCollection data(Line line) {
        XYSeries series = new XYSeries(line.label(), false);
        double[] values = shown(line);
        for (int i = 0; i < values.length; i++) {
            series.add(line.frequencyHz()[i], values[i], false);
        }
        return new XYSeriesCollection(series);
    }
}
