package org.docksweep.kiosk.printing;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;

/**
 * A paper before it is printed: its first page as it would come out, made from the same bytes that go to the printer.
 *
 * @param page picture of the first page; nobody changes it
 * @param pages number of pages
 * @param widthMm width of the first page, in millimetres
 * @param heightMm height of the first page, in millimetres
 * @param queue print queue it would go to; empty when papers are kept as files
 */
public record PaperView(BufferedImage page, int pages, double widthMm, double heightMm, Optional<String> queue) {
    private static final double MM_PER_POINT = 25.4 / 72;

    /** Common on screens: at 110 dots per inch an A4 page has 910 x 1286 pixels, as high as a large screen. */
    private static final float DPI = 110;

    /**
     * Draws the first page of a document. Takes some tenths of a second: not for the event thread.
     *
     * @param pdf the document
     * @param queue print queue it would go to
     * @return the view
     * @throws UncheckedIOException if the bytes are no document with a page
     */
    public static PaperView of(byte[] pdf, Optional<String> queue) {
        try (PDDocument document = Loader.loadPDF(pdf)) {
            PDRectangle box = document.getPage(0).getMediaBox();
            return new PaperView(
                    new PDFRenderer(document).renderImageWithDPI(0, DPI, ImageType.RGB),
                    document.getNumberOfPages(),
                    box.getWidth() * MM_PER_POINT,
                    box.getHeight() * MM_PER_POINT,
                    queue);
        } catch (IOException e) {
            throw new UncheckedIOException("the paper cannot be drawn: " + e.getMessage(), e);
        }
    }
}
