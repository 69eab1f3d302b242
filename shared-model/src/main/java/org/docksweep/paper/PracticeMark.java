package org.docksweep.paper;

import com.lowagie.text.Document;
import com.lowagie.text.pdf.PdfContentByte;
import com.lowagie.text.pdf.PdfPageEventHelper;
import com.lowagie.text.pdf.PdfWriter;
import org.docksweep.paper.PaperFonts.Weight;

/**
 * The word for practice across every page of a paper whose content is invented: in outline, under the content, so that both can be
 * read, on a label printer too.
 */
final class PracticeMark extends PdfPageEventHelper {
    /** Share of the page's diagonal that the word takes. */
    private static final double SHARE = 0.72;

    private static final float PROBE_PT = 100;

    private final PaperFonts fonts;
    private final PaperText text;

    private PracticeMark(PaperFonts fonts, PaperText text) {
        this.fonts = fonts;
        this.text = text;
    }

    /** Marks the pages of a document where its context asks for it. */
    static void on(PdfWriter writer, PaperFonts fonts, PaperText text) {
        if (text.isPractice()) {
            writer.setPageEvent(new PracticeMark(fonts, text));
        }
    }

    @Override
    public void onEndPage(PdfWriter writer, Document document) {
        float width = document.getPageSize().getWidth();
        float height = document.getPageSize().getHeight();
        String word = text.get("practice.mark");
        double diagonal = Math.hypot(width, height);
        float size =
                (float) (PROBE_PT * SHARE * diagonal / fonts.face(Weight.BOLD).getWidthPoint(word, PROBE_PT));
        float degrees = (float) Math.toDegrees(Math.atan2(height, width));
        PdfContentByte under = writer.getDirectContentUnder();
        under.saveState();
        under.setLineWidth(Ink.points(Ink.FINE_MM));
        under.setTextRenderingMode(PdfContentByte.TEXT_RENDER_MODE_STROKE);
        under.beginText();
        under.setFontAndSize(fonts.face(Weight.BOLD), size);
        // The middle of the capitals comes to lie in the middle of the page.
        double down = size * 0.36;
        double angle = Math.toRadians(degrees);
        under.showTextAligned(
                PdfContentByte.ALIGN_CENTER,
                word,
                (float) (width / 2 + down * Math.sin(angle)),
                (float) (height / 2 - down * Math.cos(angle)),
                degrees);
        under.endText();
        under.restoreState();
    }
}
