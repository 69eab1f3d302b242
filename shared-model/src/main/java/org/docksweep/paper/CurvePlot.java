package org.docksweep.paper;

import com.lowagie.text.pdf.PdfGraphics2D;
import com.lowagie.text.pdf.PdfTemplate;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Rectangle2D;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.paper.PaperFonts.Weight;
import org.jfree.chart.JFreeChart;
import org.jfree.chart.axis.NumberAxis;
import org.jfree.chart.axis.ValueAxis;
import org.jfree.chart.plot.DatasetRenderingOrder;
import org.jfree.chart.plot.IntervalMarker;
import org.jfree.chart.plot.XYPlot;
import org.jfree.chart.renderer.xy.DeviationRenderer;
import org.jfree.chart.renderer.xy.XYLineAndShapeRenderer;
import org.jfree.chart.ui.Layer;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.data.xy.XYDataset;

/**
 * The measured curve over its reference ribbon, the region that decided shaded; vectors only. Greys are chosen so that
 * line, ribbon and region stay apart on a black-and-white printer: the line is black, the ribbon has edges, the region
 * has dashed ends and a word.
 */
final class CurvePlot {
    private static final Color GRID = new Color(0xC8, 0xC8, 0xC8);
    private static final Color RIBBON = new Color(0x9C, 0x9C, 0x9C);
    private static final Color REGION = new Color(0xE2, 0xE2, 0xE2);
    private static final Color MEAN = new Color(0x50, 0x50, 0x50);

    /** Dots thicker than the measured line: where both agree it looks like beads. */
    private static final float PREDICTED_PT = 2.2f;

    private final Ink ink;
    private final PaperText text;
    private final double fontPt;

    CurvePlot(Ink ink, PaperText text, double fontPt) {
        this.ink = ink;
        this.text = text;
        this.fontPt = fontPt;
    }

    void draw(Box box, CurveChoice choice) {
        CurveSeries series = CurveSeries.of(choice);
        String point = choice.judgement().testPointCode();
        double line = Ink.lineMm(fontPt);
        String title = text.get("curve." + choice.shows().name(), point);
        ink.line(Weight.SEMIBOLD, fontPt, 5, box.x(), box.y() + Ink.ascentMm(fontPt), box.width() * 0.66, title);
        ink.textRight(Weight.REGULAR, fontPt, box.right(), box.y() + Ink.ascentMm(fontPt), text.get("curve.frequency"));
        Box plotBox = new Box(box.x(), box.y() + line, box.width(), box.height() - 2 * line);
        drawChart(plotBox, chart(choice, series));
        drawLegend(new Box(box.x(), plotBox.bottom(), box.width(), line), choice);
    }

    private JFreeChart chart(CurveChoice choice, CurveSeries series) {
        ValueAxis values;
        if (choice.shows() == DecidingCurve.IMPEDANCE) {
            values = new PlotAxis(series.lowestValue(), series.highestValue(), fontPt);
        } else {
            NumberAxis levels = new NumberAxis(null);
            levels.setAutoRangeIncludesZero(false);
            levels.setRange(series.lowestValue(), series.highestValue());
            levels.setTickLabelFont(PaperFonts.graphics(fontPt));
            levels.setTickMarksVisible(false);
            levels.setAxisLineVisible(false);
            values = levels;
        }
        PlotAxis frequency = new PlotAxis(series.lowestHz(), series.highestHz(), fontPt);
        // Room for the labels below the frame, which the library underrates for so small a face.
        frequency.setFixedDimension(fontPt * 1.9);
        XYPlot plot = new XYPlot(null, frequency, values, null);
        layer(plot, 0, series.measured(), line(Color.BLACK, 1.3f));
        layer(plot, 1, series.mean(), line(MEAN, 0.5f));
        layer(plot, 2, series.ribbon(), ribbon());
        layer(plot, 3, series.predicted(), dotted());
        plot.setDatasetRenderingOrder(DatasetRenderingOrder.REVERSE);
        choice.decided().ifPresent(finding -> {
            IntervalMarker region = new IntervalMarker(finding.fromHz(), finding.toHz(), REGION);
            region.setAlpha(1f);
            region.setOutlinePaint(Color.BLACK);
            region.setOutlineStroke(
                    new BasicStroke(0.7f, BasicStroke.CAP_BUTT, BasicStroke.JOIN_MITER, 10, new float[] {2, 2}, 0));
            plot.addDomainMarker(region, Layer.BACKGROUND);
        });
        plot.setBackgroundPaint(null);
        plot.setOutlinePaint(Color.BLACK);
        plot.setOutlineStroke(new BasicStroke(0.7f));
        plot.setInsets(new RectangleInsets(1, 0, 0, fontPt * 0.9));
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

    private static void layer(XYPlot plot, int index, XYDataset data, XYLineAndShapeRenderer renderer) {
        plot.setDataset(index, data);
        plot.setRenderer(index, renderer);
    }

    private static XYLineAndShapeRenderer line(Color colour, float thicknessPt) {
        XYLineAndShapeRenderer renderer = new XYLineAndShapeRenderer(true, false);
        renderer.setDrawSeriesLineAsPath(true);
        renderer.setSeriesPaint(0, colour);
        renderer.setSeriesStroke(0, new BasicStroke(thicknessPt, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
        return renderer;
    }

    private static XYLineAndShapeRenderer dotted() {
        XYLineAndShapeRenderer renderer = line(Color.BLACK, 1f);
        renderer.setSeriesStroke(
                0,
                new BasicStroke(
                        PREDICTED_PT, BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND, 10, new float[] {0.1f, 3.2f}, 0));
        return renderer;
    }

    private static DeviationRenderer ribbon() {
        DeviationRenderer renderer = new DeviationRenderer(false, false);
        renderer.setAlpha(1f);
        renderer.setSeriesFillPaint(0, RIBBON);
        return renderer;
    }

    private void drawChart(Box box, JFreeChart chart) {
        float width = Ink.points(box.width());
        float height = Ink.points(box.height());
        PdfTemplate template = ink.canvas().createTemplate(width, height);
        PdfGraphics2D graphics = new PdfGraphics2D(template, width, height, new OneFace(ink.fonts()), false, false, 1f);
        chart.draw(graphics, new Rectangle2D.Double(0, 0, width, height));
        graphics.dispose();
        ink.canvas().addTemplate(template, ink.x(box.x()), ink.y(box.bottom()));
    }

    private void drawLegend(Box box, CurveChoice choice) {
        String measured = text.get("curve.legend.measured");
        String reference = reference(choice);
        String decided = choice.decided().isPresent() ? text.get("curve.legend.decided") : "";
        String predicted = predicts(choice) ? text.get("curve.legend.predicted") : "";
        double swatchMm = 5;
        double gapMm = 1;
        double swatchesMm = 4 * (swatchMm + gapMm) + 3 * gapMm;
        double size = ink.fittingSize(
                Weight.REGULAR, fontPt, 4, box.width() - swatchesMm, measured + reference + decided + predicted);
        double baseline = box.y() + Ink.ascentMm(fontPt);
        double middle = baseline - size * 0.25 / Ink.POINTS_PER_MM;
        double x = box.x();
        ink.rule(x, middle, x + swatchMm, middle, 0.45);
        x = label(x + swatchMm + gapMm, baseline, size, measured) + gapMm;
        if (predicts(choice)) {
            for (double dot = 0.5; dot < swatchMm; dot += 1.1) {
                ink.fill(new Box(x + dot, middle - 0.35, 0.7, 0.7), 0);
            }
            x = label(x + swatchMm + gapMm, baseline, size, predicted) + gapMm;
        }
        if (choice.reference() != null || choice.shows() == DecidingCurve.BURSTS) {
            ink.fill(new Box(x, middle - 0.8, swatchMm, 1.6), RIBBON.getRed() / 255.0);
            x += swatchMm + gapMm;
        }
        x = label(x, baseline, size, reference) + gapMm;
        if (choice.decided().isPresent()) {
            ink.fill(new Box(x, middle - 0.8, swatchMm, 1.6), REGION.getRed() / 255.0);
            ink.dashed(x, middle - 0.8, x, middle + 0.8, 0.25);
            ink.dashed(x + swatchMm, middle - 0.8, x + swatchMm, middle + 0.8, 0.25);
            label(x + swatchMm + gapMm, baseline, size, decided);
        }
    }

    private String reference(CurveChoice choice) {
        if (choice.shows() == DecidingCurve.BURSTS) {
            return text.get("curve.legend.noise");
        }
        if (choice.reference() == null) {
            return text.get("curve.legend.no-reference");
        }
        return text.get(
                predicts(choice) ? "curve.legend.healthy" : "curve.legend.reference",
                choice.reference().unitCount());
    }

    private static boolean predicts(CurveChoice choice) {
        return choice.shows() == DecidingCurve.IMPEDANCE
                && choice.judgement().predicted().isPresent();
    }

    private double label(double xMm, double baselineMm, double sizePt, String label) {
        ink.text(Weight.REGULAR, sizePt, xMm, baselineMm, label);
        return xMm + ink.fonts().widthMm(Weight.REGULAR, sizePt, label);
    }
}
