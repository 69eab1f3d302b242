package org.docksweep.paper;

import com.lowagie.text.pdf.BaseFont;
import com.lowagie.text.pdf.FontMapper;
import java.awt.Font;
import org.docksweep.paper.PaperFonts.Weight;

/**
 * Hands every AWT font the one embedded face.
 *
 * @param fonts fonts of the document
 */
record OneFace(PaperFonts fonts) implements FontMapper {
    @Override
    public BaseFont awtToPdf(Font font) {
        return fonts.face(Weight.REGULAR);
    }

    @Override
    public Font pdfToAwt(BaseFont font, int size) {
        return PaperFonts.graphics(size);
    }
}
