package org.docksweep.paper;

import com.lowagie.text.DocumentException;
import com.lowagie.text.pdf.BaseFont;
import java.awt.Font;
import java.awt.FontFormatException;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * The faces of one document: Inter, always embedded, so that paper looks the same on every machine and no letter of a
 * unit or a name silently vanishes. One instance per document: a parsed face is not safe for two threads.
 */
final class PaperFonts {
    /** Height of a capital or a figure over the size of the face, read from the Inter files. */
    static final double CAP_HEIGHT = 0.7275;
    /** Height above the baseline that a line of text may use, over the size. */
    static final double ASCENT = 0.80;
    /** Distance from baseline to baseline over the size. */
    static final double LEADING = 1.22;

    private static final String FOLDER = "/com/formdev/flatlaf/fonts/inter/";
    private static final Map<Weight, byte[]> FILES = new EnumMap<>(Weight.class);
    private static final char STAND_IN = '\u25a1';

    /** Weights used on paper. */
    enum Weight {
        REGULAR("Inter-Regular.otf"),
        SEMIBOLD("Inter-SemiBold.otf"),
        BOLD("Inter-Bold.otf");

        private final String file;

        Weight(String file) {
            this.file = file;
        }
    }

    static {
        for (Weight weight : Weight.values()) {
            FILES.put(weight, read(weight.file));
        }
    }

    private final Map<Weight, BaseFont> faces = new EnumMap<>(Weight.class);

    PaperFonts() {
        for (Weight weight : Weight.values()) {
            faces.put(weight, parse(weight));
        }
    }

    private static byte[] read(String file) {
        try (InputStream stream = PaperFonts.class.getResourceAsStream(FOLDER + file)) {
            if (stream == null) {
                throw new IllegalStateException("font file " + FOLDER + file
                        + " is not on the class path; the jar flatlaf-fonts-inter must be there");
            }
            return stream.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("cannot read font file " + FOLDER + file, e);
        }
    }

    private static BaseFont parse(Weight weight) {
        try {
            return BaseFont.createFont(
                    weight.file, BaseFont.IDENTITY_H, BaseFont.EMBEDDED, false, FILES.get(weight), null);
        } catch (IOException | DocumentException e) {
            throw new IllegalStateException("font file " + weight.file + " cannot be used in a document", e);
        }
    }

    BaseFont face(Weight weight) {
        return faces.get(weight);
    }

    com.lowagie.text.Font table(Weight weight, double sizePt) {
        return new com.lowagie.text.Font(face(weight), (float) sizePt);
    }

    /** The regular face for drawings that measure their text through the graphics library. */
    static Font graphics(double sizePt) {
        return Graphics.REGULAR.deriveFont((float) sizePt);
    }

    double widthMm(Weight weight, double sizePt, String text) {
        return face(weight).getWidthPoint(safe(text), (float) sizePt) / Ink.POINTS_PER_MM;
    }

    /**
     * Text the face can show: control characters become blanks, letters it lacks become a box, so that a reader sees
     * that something stood there.
     */
    String safe(String text) {
        BaseFont face = face(Weight.REGULAR);
        StringBuilder shown = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            if (Character.isISOControl(c)) {
                shown.append(' ');
            } else if (c <= Character.MAX_VALUE && face.charExists((char) c)) {
                shown.append((char) c);
            } else if (Character.getType(c) != Character.FORMAT) {
                shown.append(STAND_IN);
            }
        });
        return shown.toString();
    }

    /** Breaks text into lines no wider than given; a word wider than a line is broken within. */
    List<String> wrap(Weight weight, double sizePt, double widthMm, String text) {
        List<String> lines = new ArrayList<>();
        String line = "";
        for (String word : safe(text).strip().split("\\s+")) {
            String longer = line.isEmpty() ? word : line + " " + word;
            if (widthMm(weight, sizePt, longer) <= widthMm) {
                line = longer;
                continue;
            }
            if (!line.isEmpty()) {
                lines.add(line);
            }
            line = word;
            while (widthMm(weight, sizePt, line) > widthMm && line.length() > 1) {
                int fitting = fittingCharacters(weight, sizePt, widthMm, line);
                lines.add(line.substring(0, fitting));
                line = line.substring(fitting);
            }
        }
        lines.add(line);
        return lines;
    }

    /** Shortens a line to a width with an ellipsis where needed. */
    String shorten(Weight weight, double sizePt, double widthMm, String text) {
        String line = safe(text);
        if (widthMm(weight, sizePt, line) <= widthMm) {
            return line;
        }
        double ellipsisMm = widthMm(weight, sizePt, "\u2026");
        int fitting = fittingCharacters(weight, sizePt, widthMm - ellipsisMm, line);
        return line.substring(0, fitting).stripTrailing() + "\u2026";
    }

    private int fittingCharacters(Weight weight, double sizePt, double widthMm, String text) {
        int fitting = 1;
        while (fitting < text.length() && widthMm(weight, sizePt, text.substring(0, fitting + 1)) <= widthMm) {
            fitting++;
        }
        return fitting;
    }

    /** Loaded only where a curve is drawn: creating an AWT font costs a temporary file. */
    private static final class Graphics {
        private static final Font REGULAR = create();

        private static Font create() {
            try {
                return Font.createFont(Font.TRUETYPE_FONT, new ByteArrayInputStream(FILES.get(Weight.REGULAR)));
            } catch (IOException | FontFormatException e) {
                throw new IllegalStateException("font file " + Weight.REGULAR.file + " cannot be used for plots", e);
            }
        }
    }
}
