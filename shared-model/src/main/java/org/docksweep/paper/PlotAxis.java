package org.docksweep.paper;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.jfree.chart.axis.AxisState;
import org.jfree.chart.axis.LogAxis;
import org.jfree.chart.axis.NumberTick;
import org.jfree.chart.axis.TickType;
import org.jfree.chart.ui.RectangleEdge;
import org.jfree.chart.ui.RectangleInsets;
import org.jfree.chart.ui.TextAnchor;

/**
 * Logarithmic axis with lines at 1, 2 ... 9 of every decade and labels at 1, 2, 5; only at 1 when more than three
 * decades are shown on a value axis.
 */
final class PlotAxis extends LogAxis {
    private static final long serialVersionUID = 1L;

    PlotAxis(double lowest, double highest, double fontPt) {
        super(null);
        setRange(lowest, highest);
        setTickLabelFont(PaperFonts.graphics(fontPt));
        setTickLabelInsets(new RectangleInsets(0, 2, 0, 2));
        setTickMarksVisible(false);
        setTickMarkOutsideLength(0);
        setAxisLineVisible(false);
    }

    @Override
    public List<NumberTick> refreshTicks(Graphics2D g2, AxisState state, Rectangle2D area, RectangleEdge edge) {
        boolean vertical = RectangleEdge.isLeftOrRight(edge);
        boolean crowded = vertical && getUpperBound() / getLowerBound() > 1500;
        List<NumberTick> ticks = new ArrayList<>();
        int first = (int) Math.floor(Math.log10(getLowerBound()));
        int last = (int) Math.ceil(Math.log10(getUpperBound()));
        for (int decade = first; decade <= last; decade++) {
            for (int digit = 1; digit <= 9; digit++) {
                double value = digit * Math.pow(10, decade);
                if (value >= getLowerBound() * 0.9999 && value <= getUpperBound() * 1.0001) {
                    boolean labelled = digit == 1 || !crowded && (digit == 2 || digit == 5);
                    ticks.add(new NumberTick(
                            labelled ? TickType.MAJOR : TickType.MINOR,
                            value,
                            labelled ? label(value) : "",
                            vertical ? TextAnchor.CENTER_RIGHT : TextAnchor.TOP_CENTER,
                            TextAnchor.CENTER,
                            0));
                }
            }
        }
        return ticks;
    }

    /** 0.5, 20, 2k: the same in every language, as on the instruments of the trade. */
    static String label(double value) {
        if (value >= 999.5) {
            return Math.round(value / 1000) + "k";
        }
        return value >= 0.95
                ? String.valueOf(Math.round(value))
                : java.math.BigDecimal.valueOf(value)
                        .round(new java.math.MathContext(1))
                        .stripTrailingZeros()
                        .toPlainString();
    }
}
