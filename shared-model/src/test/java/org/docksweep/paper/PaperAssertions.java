package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.text.TextPosition;

/** What must hold for every paper of the house. */
final class PaperAssertions {
    /** Printers of the house leave at least 1 mm of margin. */
    private static final double MARGIN_PT = 1 * 72 / 25.4;
    /**
     * Shares of the type size above and below the baseline that are compared: a little less than capitals and
     * descenders, because lines set without space between them may touch.
     */
    private static final double ABOVE = 0.68;

    private static final double BELOW = 0.12;

    private PaperAssertions() {}

    static void isPrintableAnywhere(PdfEye eye) throws IOException {
        assertThat(eye.fonts(false)).as("fonts that are not embedded").isEmpty();
        assertThat(eye.fonts(true)).as("embedded fonts").isNotEmpty().allMatch(name -> name.contains("Inter"));
        assertThat(eye.images()).as("bitmaps").isZero();
        for (int page = 0; page < eye.pages(); page++) {
            assertThat(eye.colourfulOperators(page))
                    .as("colours on page %d", page + 1)
                    .isEmpty();
            staysOnThePage(eye, page);
            linesDoNotOverlap(eye, page);
        }
    }

    private static void staysOnThePage(PdfEye eye, int page) throws IOException {
        double widthPt = eye.sizeMm(page)[0] * 72 / 25.4;
        double heightPt = eye.sizeMm(page)[1] * 72 / 25.4;
        assertThat(upright(eye, page))
                .as("letters outside page %d", page + 1)
                .isNotEmpty()
                .allMatch(glyph -> glyph.getXDirAdj() >= MARGIN_PT
                        && glyph.getXDirAdj() + glyph.getWidthDirAdj() <= widthPt - MARGIN_PT
                        && glyph.getYDirAdj() - ABOVE * glyph.getFontSizeInPt() >= MARGIN_PT
                        && glyph.getYDirAdj() + BELOW * glyph.getFontSizeInPt() <= heightPt - MARGIN_PT);
    }

    /** Without the mark for practice, which lies on a slant in outline under the content. */
    private static List<TextPosition> upright(PdfEye eye, int page) throws IOException {
        return eye.glyphs(page).stream()
                .filter(g -> g.getTextMatrix().getShearY() == 0)
                .toList();
    }

    private static void linesDoNotOverlap(PdfEye eye, int page) throws IOException {
        List<TextPosition> glyphs = upright(eye, page).stream()
                .filter(g -> !g.getUnicode().isBlank())
                .toList();
        List<String> clashes = new ArrayList<>();
        for (int i = 0; i < glyphs.size(); i++) {
            for (int j = i + 1; j < glyphs.size(); j++) {
                if (clash(glyphs.get(i), glyphs.get(j))) {
                    clashes.add(describe(glyphs, i) + " / " + describe(glyphs, j));
                }
            }
        }
        assertThat(clashes).as("letters on other letters on page %d", page + 1).isEmpty();
    }

    private static boolean clash(TextPosition a, TextPosition b) {
        double sideways = Math.min(a.getXDirAdj() + a.getWidthDirAdj(), b.getXDirAdj() + b.getWidthDirAdj())
                - Math.max(a.getXDirAdj(), b.getXDirAdj());
        double upright = Math.min(bottom(a), bottom(b)) - Math.max(top(a), top(b));
        // Kerning and rounding let neighbours of one word touch by a few hundredths of a point.
        return sideways > 0.15 * Math.min(a.getWidthDirAdj(), b.getWidthDirAdj()) && upright > 0.1;
    }

    private static double top(TextPosition glyph) {
        return glyph.getYDirAdj() - ABOVE * glyph.getFontSizeInPt();
    }

    private static double bottom(TextPosition glyph) {
        return glyph.getYDirAdj() + BELOW * glyph.getFontSizeInPt();
    }

    private static String describe(List<TextPosition> glyphs, int index) {
        StringBuilder words = new StringBuilder();
        for (int i = Math.max(0, index - 8); i < Math.min(glyphs.size(), index + 9); i++) {
            words.append(
                    i == index
                            ? "[" + glyphs.get(i).getUnicode() + "]"
                            : glyphs.get(i).getUnicode());
        }
        return words.toString();
    }
}
