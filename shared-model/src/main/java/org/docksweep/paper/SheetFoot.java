package org.docksweep.paper;

import com.lowagie.text.Document;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfTemplate;
import com.lowagie.text.pdf.PdfWriter;
import org.docksweep.paper.PaperFonts.Weight;

/** Foot of every page of a sheet. The number of pages is known only at the end and is filled in then. */
final class SheetFoot extends PdfPageEventHelper {
    private static final double FONT_PT = 7.5;
    private static final double BASELINE_MM = 9;
    private static final double TOTAL_MM = 9;

    private final PaperFonts fonts;
    private final PaperText text;
    private final double sideMm;
    private PdfTemplate total;

    SheetFoot(PaperFonts fonts, PaperText text, double sideMm) {
        this.fonts = fonts;
        this.text = text;
        this.sideMm = sideMm;
    }

    @Override
    public void onOpenDocument(PdfWriter writer, Document document) {
        total = writer.getDirectContent().createTemplate(Ink.points(TOTAL_MM), Ink.points(4));
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        double heightMm = document.getPageSize().getHeight() / Ink.POINTS_PER_MM;
        double rightMm = document.getPageSize().getWidth() / Ink.POINTS_PER_MM - sideMm;
        Ink ink = new Ink(writer.getDirectContent(), fonts, heightMm);
        double baseline = heightMm - BASELINE_MM;
        ink.rule(sideMm, baseline - 4, rightMm, baseline - 4, Ink.FINE_MM);
        String page = text.get("foot.page", text.count(writer.getPageNumber())) + " ";
        double totalX = rightMm - TOTAL_MM;
        ink.textRight(Weight.REGULAR, FONT_PT, totalX, baseline, page);
        ink.canvas().addTemplate(total, ink.x(totalX), ink.y(baseline) - Ink.points(1));
        double pageMm = fonts.widthMm(Weight.REGULAR, FONT_PT, page);
        ink.line(
                Weight.REGULAR,
                FONT_PT,
                5,
                sideMm,
                baseline,
                totalX - pageMm - sideMm - 4,
                text.printedLine() + "  \u00b7  " + text.versionLine());
    }

    @Override
    public void onCloseDocument(PdfWriter writer, Document document) {
        // The writer has already begun the page after the last.
        String pages = text.count(writer.getPageNumber() - 1);
        total.beginText();
        total.setFontAndSize(fonts.face(Weight.REGULAR), (float) FONT_PT);
        total.showTextAligned(PdfContentByte.ALIGN_LEFT, pages, 0, Ink.points(1), 0);
        total.endText();
    }
}
