package org.docksweep.kiosk.screens;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.docksweep.kiosk.printing.PaperView;

/** A paper of the size of a tag, with a black bar down its left third. */
final class SamplePaper {
    private SamplePaper() {}

    static PaperView tag() {
        return PaperView.of(pdf(1), Optional.of("DOCK-LABELS"));
    }

    static PaperView sheet() {
        return PaperView.of(pdf(2), Optional.empty());
    }

    static byte[] pdf(int pages) {
        try (PDDocument document = new PDDocument()) {
            PDRectangle a5 = new PDRectangle(PDRectangle.A5.getHeight(), PDRectangle.A5.getWidth());
            for (int i = 0; i < pages; i++) {
                PDPage page = new PDPage(a5);
                document.addPage(page);
                try (PDPageContentStream content = new PDPageContentStream(document, page)) {
                    content.addRect(0, 0, a5.getWidth() / 3, a5.getHeight());
                    content.fill();
                }
            }
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            document.save(bytes);
            return bytes.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException("the sample paper cannot be made", e);
        }
    }
}
