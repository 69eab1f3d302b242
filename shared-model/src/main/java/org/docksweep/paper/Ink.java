package org.docksweep.paper;

import com.lowagie.text.pdf.PdfContentByte;
import java.util.List;
import org.docksweep.paper.PaperFonts.Weight;

/** Draws on one page in black, white and grey, in millimetres from its top left corner. */
final class Ink {
    static final double POINTS_PER_MM = 72 / 25.4;
    /** Thinnest line that survives a 203 dpi label printer: two dots. */
    static final double FINE_MM = 0.25;

    private final PdfContentByte canvas;
    private final PaperFonts fonts;
    private final double pageHeightMm;

    Ink(PdfContentByte canvas, PaperFonts fonts, double pageHeightMm) {
        this.canvas = canvas;
        this.fonts = fonts;
        this.pageHeightMm = pageHeightMm;
    }

    PdfContentByte canvas() {
        return canvas;
    }

    PaperFonts fonts() {
        return fonts;
    }

    float x(double mm) {
        return (float) (mm * POINTS_PER_MM);
    }

    float y(double mm) {
        return (float) ((pageHeightMm - mm) * POINTS_PER_MM);
    }

    static float points(double mm) {
        return (float) (mm * POINTS_PER_MM);
    }

    /** Height of one line of text in millimetres. */
    static double lineMm(double sizePt) {
        return sizePt * PaperFonts.LEADING / POINTS_PER_MM;
    }

    /** Depth of the first baseline under the top of a text in millimetres. */
    static double ascentMm(double sizePt) {
        return sizePt * PaperFonts.ASCENT / POINTS_PER_MM;
    }

    void text(Weight weight, double sizePt, double xMm, double baselineMm, String text) {
        show(weight, sizePt, PdfContentByte.ALIGN_LEFT, xMm, baselineMm, text);
    }

    void textRight(Weight weight, double sizePt, double xMm, double baselineMm, String text) {
        show(weight, sizePt, PdfContentByte.ALIGN_RIGHT, xMm, baselineMm, text);
    }

    void textCentre(Weight weight, double sizePt, double xMm, double baselineMm, String text) {
        show(weight, sizePt, PdfContentByte.ALIGN_CENTER, xMm, baselineMm, text);
    }

    private void show(Weight weight, double sizePt, int align, double xMm, double baselineMm, String text) {
        canvas.beginText();
        canvas.setFontAndSize(fonts.face(weight), (float) sizePt);
        canvas.showTextAligned(align, fonts.safe(text), x(xMm), y(baselineMm), 0);
        canvas.endText();
    }

    /**
     * Writes wrapped text into a box, in the largest of the sizes from {@code sizePt} down to {@code leastPt} (half
     * point steps) at which it fits; if even the least does not, the last line that fits ends with an ellipsis.
     *
     * @return depth used in millimetres, never more than the height of the box unless not even one line fits
     */
    double paragraph(Weight weight, double sizePt, double leastPt, Box box, String text) {
        double size = sizePt;
        List<String> lines = fonts.wrap(weight, size, box.width(), text);
        while (lines.size() * lineMm(size) > box.height() + 1e-6 && size - 0.5 >= leastPt) {
            size -= 0.5;
            lines = fonts.wrap(weight, size, box.width(), text);
        }
        int fitting = Math.max(1, (int) (box.height() / lineMm(size) + 1e-6));
        if (lines.size() > fitting) {
            String rest = String.join(" ", lines.subList(fitting - 1, lines.size()));
            lines = new java.util.ArrayList<>(lines.subList(0, fitting - 1));
            lines.add(fonts.shorten(weight, size, box.width(), rest));
        }
        for (int i = 0; i < lines.size(); i++) {
            text(weight, size, box.x(), box.y() + ascentMm(size) + i * lineMm(size), lines.get(i));
        }
        return lines.size() * lineMm(size);
    }

    /**
     * Writes several paragraphs under each other in one common size, the largest of the sizes from {@code sizePt} down to
     * {@code leastPt} at which all of them fit; if even the least does not, each gets an equal share of the height.
     *
     * @return depth used in millimetres
     */
    double paragraphs(Weight weight, double sizePt, double leastPt, Box box, List<String> texts) {
        double size = sizePt;
        while (size - 0.5 >= leastPt && heightMm(weight, size, box.width(), texts) > box.height()) {
            size -= 0.5;
        }
        boolean fit = heightMm(weight, size, box.width(), texts) <= box.height();
        double y = box.y();
        for (int i = 0; i < texts.size(); i++) {
            double room = box.bottom() - y;
            double share = fit ? room : room / (texts.size() - i);
            y += paragraph(weight, size, size, new Box(box.x(), y, box.width(), share), texts.get(i));
        }
        return y - box.y();
    }

    private double heightMm(Weight weight, double sizePt, double widthMm, List<String> texts) {
        return texts.stream()
                        .mapToInt(t -> fonts.wrap(weight, sizePt, widthMm, t).size())
                        .sum()
                * lineMm(sizePt);
    }

    /** One line, shrunk in half point steps to the width, then cut with an ellipsis. */
    void line(
            Weight weight, double sizePt, double leastPt, double xMm, double baselineMm, double widthMm, String text) {
        double size = fittingSize(weight, sizePt, leastPt, widthMm, text);
        text(weight, size, xMm, baselineMm, fonts.shorten(weight, size, widthMm, text));
    }

    double fittingSize(Weight weight, double sizePt, double leastPt, double widthMm, String text) {
        double size = sizePt;
        while (fonts.widthMm(weight, size, text) > widthMm && size - 0.5 >= leastPt) {
            size -= 0.5;
        }
        return size;
    }

    /** White ink for text on black. */
    void white(Runnable drawing) {
        canvas.saveState();
        canvas.setGrayFill(1);
        canvas.setGrayStroke(1);
        drawing.run();
        canvas.restoreState();
    }

    void rule(double x1Mm, double y1Mm, double x2Mm, double y2Mm, double thicknessMm) {
        canvas.setLineWidth(points(thicknessMm));
        canvas.moveTo(x(x1Mm), y(y1Mm));
        canvas.lineTo(x(x2Mm), y(y2Mm));
        canvas.stroke();
    }

    void dashed(double x1Mm, double y1Mm, double x2Mm, double y2Mm, double thicknessMm) {
        canvas.saveState();
        canvas.setLineDash(points(1.5), points(1.2), 0);
        rule(x1Mm, y1Mm, x2Mm, y2Mm, thicknessMm);
        canvas.restoreState();
    }

    void frame(Box box, double thicknessMm) {
        canvas.setLineWidth(points(thicknessMm));
        rectangle(box);
        canvas.stroke();
    }

    /** Fills a box; 0 is black, 1 is white. */
    void fill(Box box, double grey) {
        canvas.saveState();
        canvas.setGrayFill((float) grey);
        rectangle(box);
        canvas.fill();
        canvas.restoreState();
    }

    private void rectangle(Box box) {
        canvas.rectangle(x(box.x()), y(box.bottom()), points(box.width()), points(box.height()));
    }

    void ellipse(Box box, double thicknessMm) {
        canvas.setLineWidth(points(thicknessMm));
        canvas.ellipse(x(box.x()), y(box.bottom()), x(box.right()), y(box.y()));
        canvas.stroke();
    }
}
