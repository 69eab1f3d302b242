package org.docksweep.paper;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.client.j2se.BufferedImageLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.contentstream.operator.Operator;
import org.apache.pdfbox.cos.COSBase;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDResources;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.pdmodel.graphics.form.PDFormXObject;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.rendering.ImageType;
import org.apache.pdfbox.rendering.PDFRenderer;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;

/** Opens a finished document again, as a printer or a reader would, and reports what is in it. */
final class PdfEye implements AutoCloseable {
    private final PDDocument document;

    PdfEye(byte[] bytes) throws IOException {
        document = Loader.loadPDF(bytes);
    }

    int pages() {
        return document.getNumberOfPages();
    }

    /** Width and height of a page in millimetres, rounded to a tenth. */
    double[] sizeMm(int page) {
        var box = document.getPage(page).getMediaBox();
        return new double[] {Math.round(box.getWidth() * 254 / 72) / 10.0, Math.round(box.getHeight() * 254 / 72) / 10.0
        };
    }

    /** Text of the document with every run of white space as one blank. */
    String text() throws IOException {
        return new PDFTextStripper().getText(document).replaceAll("\\s+", " ");
    }

    /** Text of one page, from 0, with every run of white space as one blank. */
    String text(int page) throws IOException {
        PDFTextStripper stripper = new PDFTextStripper();
        stripper.setStartPage(page + 1);
        stripper.setEndPage(page + 1);
        return stripper.getText(document).replaceAll("\\s+", " ");
    }

    /** Every glyph of a page with its place. */
    List<TextPosition> glyphs(int page) throws IOException {
        List<TextPosition> glyphs = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition position) {
                glyphs.add(position);
            }
        };
        stripper.setStartPage(page + 1);
        stripper.setEndPage(page + 1);
        stripper.writeText(document, new StringWriter());
        return glyphs;
    }

    /** Names of fonts that are not embedded, and of all fonts as a check that there are some. */
    List<String> fonts(boolean embedded) throws IOException {
        TreeSet<String> names = new TreeSet<>();
        for (PDPage page : document.getPages()) {
            collectFonts(page.getResources(), embedded, names);
        }
        return List.copyOf(names);
    }

    private static void collectFonts(PDResources resources, boolean embedded, TreeSet<String> names)
            throws IOException {
        for (COSName name : resources.getFontNames()) {
            PDFont font = resources.getFont(name);
            if (font.isEmbedded() == embedded) {
                names.add(font.getName());
            }
        }
        for (COSName name : resources.getXObjectNames()) {
            if (resources.getXObject(name) instanceof PDFormXObject form && form.getResources() != null) {
                collectFonts(form.getResources(), embedded, names);
            }
        }
    }

    /** Number of images: as objects anywhere in the document, and inline in the pages. */
    int images() throws IOException {
        int images = 0;
        for (PDPage page : document.getPages()) {
            images += imagesIn(page.getResources());
            for (Object token : new org.apache.pdfbox.pdfparser.PDFStreamParser(page).parse()) {
                if (token instanceof Operator operator && operator.getName().equals("BI")) {
                    images++;
                }
            }
        }
        return images;
    }

    private static int imagesIn(PDResources resources) throws IOException {
        int images = 0;
        for (COSName name : resources.getXObjectNames()) {
            var object = resources.getXObject(name);
            if (object instanceof PDImageXObject) {
                images++;
            } else if (object instanceof PDFormXObject form) {
                for (Object token : new org.apache.pdfbox.pdfparser.PDFStreamParser(form).parse()) {
                    if (token instanceof Operator operator && operator.getName().equals("BI")) {
                        images++;
                    }
                }
                images += form.getResources() == null ? 0 : imagesIn(form.getResources());
            }
        }
        return images;
    }

    /** Number of drawing strokes and fills in the form objects of a page, where curves live. */
    long strokesInForms(int page) throws IOException {
        long strokes = 0;
        PDResources resources = document.getPage(page).getResources();
        for (COSName name : resources.getXObjectNames()) {
            if (resources.getXObject(name) instanceof PDFormXObject form) {
                strokes += new org.apache.pdfbox.pdfparser.PDFStreamParser(form)
                        .parse().stream()
                                .filter(t -> t instanceof Operator o
                                        && (o.getName().equals("l")
                                                || o.getName().equals("c")))
                                .count();
            }
        }
        return strokes;
    }

    BufferedImage grey(int page, float dpi) throws IOException {
        return new PDFRenderer(document).renderImageWithDPI(page, dpi, ImageType.GRAY);
    }

    /** Decodes the codes on a page as a scanner would see them on a grey print. */
    Map<BarcodeFormat, String> codes(int page, float dpi) throws IOException {
        BufferedImage image = grey(page, dpi);
        Map<BarcodeFormat, String> codes = new TreeMap<>();
        for (BarcodeFormat format : List.of(BarcodeFormat.CODE_128, BarcodeFormat.QR_CODE)) {
            try {
                codes.put(
                        format,
                        new MultiFormatReader()
                                .decode(
                                        new BinaryBitmap(new HybridBinarizer(new BufferedImageLuminanceSource(image))),
                                        Map.of(
                                                DecodeHintType.POSSIBLE_FORMATS,
                                                List.of(format),
                                                DecodeHintType.TRY_HARDER,
                                                true))
                                .getText());
            } catch (NotFoundException e) {
                codes.put(format, "not found at " + dpi + " dpi");
            }
        }
        return codes;
    }

    /** Colour operators other than grey, anywhere in a page or its forms. */
    List<String> colourfulOperators(int page) throws IOException {
        List<String> found = new ArrayList<>();
        PDPage sheet = document.getPage(page);
        collectColours(new org.apache.pdfbox.pdfparser.PDFStreamParser(sheet).parse(), found);
        for (COSName name : sheet.getResources().getXObjectNames()) {
            if (sheet.getResources().getXObject(name) instanceof PDFormXObject form) {
                collectColours(new org.apache.pdfbox.pdfparser.PDFStreamParser(form).parse(), found);
            }
        }
        return found;
    }

    private static void collectColours(List<Object> tokens, List<String> found) {
        for (int i = 0; i < tokens.size(); i++) {
            if (tokens.get(i) instanceof Operator operator
                    && operator.getName().equalsIgnoreCase("rg")
                    && i >= 3
                    && !(same(tokens.get(i - 1), tokens.get(i - 2)) && same(tokens.get(i - 2), tokens.get(i - 3)))) {
                found.add(tokens.subList(i - 3, i) + " " + operator.getName());
            }
        }
    }

    private static boolean same(Object a, Object b) {
        return a instanceof COSBase
                && ((org.apache.pdfbox.cos.COSNumber) a).floatValue()
                        == ((org.apache.pdfbox.cos.COSNumber) b).floatValue();
    }

    @Override
    public void close() throws IOException {
        document.close();
    }
}
