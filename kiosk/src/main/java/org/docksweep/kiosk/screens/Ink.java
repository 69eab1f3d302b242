package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.font.FontRenderContext;
import java.awt.font.LineMetrics;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.DoubleFunction;

/**
 * Writes all text that is painted by this window. Figures are tabular: every digit takes the width of the widest, so
 * that numbers stand still when they change (the font's own figures are proportional and Java 2D cannot ask for its
 * tabular set). A text that does not fit is shortened with an ellipsis and the shortfall is recorded.
 */
final class Ink {
    /** Distance of lines in a paragraph over the font size. */
    private static final double LEADING = 1.28;

    private static final FontRenderContext CONTEXT = new FontRenderContext(null, true, true);

    /** Measuring is slow; a window uses some dozens of fonts. */
    private static final Map<Font, Double> DIGIT_WIDTHS = new ConcurrentHashMap<>();

    private final Graphics2D g;
    private final List<String> shortfalls = new ArrayList<>();
    private final List<Written> written = new ArrayList<>();

    Ink(Graphics2D g) {
        this.g = g;
    }

    /** Side of its box a line keeps to. */
    enum Align {
        LEFT,
        CENTRE,
        RIGHT
    }

    /**
     * A line that was written.
     *
     * @param text text
     * @param box where its letters stand
     */
    record Written(String text, Rectangle box) {}

    /** Texts that did not fit, each with what was needed and what was given. */
    List<String> shortfalls() {
        return shortfalls;
    }

    /** All lines written so far. */
    List<Written> written() {
        return written;
    }

    static double width(String text, Font font) {
        double width = 0;
        int from = 0;
        while (from < text.length()) {
            int to = runEnd(text, from);
            width += isDigit(text.charAt(from))
                    ? (to - from) * digitWidth(font)
                    : font.getStringBounds(text.substring(from, to), CONTEXT).getWidth();
            from = to;
        }
        return width;
    }

    static double lineHeight(Font font) {
        return font.getSize2D() * LEADING;
    }

    /** Writes one line, centred in the height of its box. */
    void line(String text, Font font, Color color, Rectangle box, Align align) {
        String shown = text;
        double width = width(text, font);
        if (width > box.width + 0.5 || font.getSize2D() > box.height + 0.5) {
            shortfalls.add("\"" + text + "\" needs " + Math.ceil(width) + " x " + Math.ceil(font.getSize2D())
                    + ", given " + box.width + " x " + box.height);
            while (!shown.isEmpty() && width(shown + "\u2026", font) > box.width) {
                shown = shown.substring(0, shown.length() - 1);
            }
            shown += "\u2026";
            width = width(shown, font);
        }
        double x = switch (align) {
            case LEFT -> box.x;
            case CENTRE -> box.x + (box.width - width) / 2;
            case RIGHT -> box.x + box.width - width;
        };
        LineMetrics metrics = font.getLineMetrics("Hg", CONTEXT);
        double capHeight = metrics.getAscent() * 0.75;
        double baseline = box.y + (box.height + capHeight) / 2;
        g.setFont(font);
        g.setColor(color);
        draw(shown, font, x, baseline);
        written.add(
                new Written(shown, new Rectangle((int) x, (int) (baseline - capHeight), (int) Math.ceil(width), (int)
                        Math.ceil(capHeight * 1.25))));
    }

    private void draw(String text, Font font, double x, double baseline) {
        double at = x;
        int from = 0;
        while (from < text.length()) {
            int to = runEnd(text, from);
            String run = text.substring(from, to);
            if (isDigit(run.charAt(0))) {
                double cell = digitWidth(font);
                for (char digit : run.toCharArray()) {
                    String one = String.valueOf(digit);
                    double inset = (cell - font.getStringBounds(one, CONTEXT).getWidth()) / 2;
                    g.drawString(one, (float) (at + inset), (float) baseline);
                    at += cell;
                }
            } else {
                g.drawString(run, (float) at, (float) baseline);
                at += font.getStringBounds(run, CONTEXT).getWidth();
            }
            from = to;
        }
    }

    /**
     * Writes a paragraph from the top of its box.
     *
     * @return height used
     */
    int paragraph(String text, Font font, Color color, Rectangle box) {
        List<String> lines = wrap(text, font, box.width);
        int lineHeight = (int) Math.ceil(lineHeight(font));
        int fitting = Math.max(1, box.height / lineHeight);
        if (lines.size() > fitting) {
            shortfalls.add("\"" + text + "\" needs " + lines.size() + " lines, given " + fitting);
            lines = new ArrayList<>(lines.subList(0, fitting));
            lines.set(fitting - 1, lines.get(fitting - 1) + "\u2026");
        }
        for (int i = 0; i < lines.size(); i++) {
            line(
                    lines.get(i),
                    font,
                    color,
                    new Rectangle(box.x, box.y + i * lineHeight, box.width, lineHeight),
                    Align.LEFT);
        }
        return lines.size() * lineHeight;
    }

    /**
     * Largest font of a row of sizes in which a paragraph fits; the smallest when none does.
     *
     * @param fonts makes a font of a size
     * @param sizes sizes, largest first
     */
    static Font fitting(String text, DoubleFunction<Font> fonts, double[] sizes, int width, int height) {
        Font font = null;
        for (double size : sizes) {
            font = fonts.apply(size);
            if (fits(text, font, width, height)) {
                return font;
            }
        }
        return font;
    }

    private static boolean fits(String text, Font font, int width, int height) {
        List<String> lines = wrap(text, font, width);
        return lines.size() * (int) Math.ceil(lineHeight(font)) <= height
                && lines.stream().allMatch(line -> width(line, font) <= width);
    }

    /** Breaks a text at spaces so that its lines keep within a width; a single word may still be too wide. */
    static List<String> wrap(String text, Font font, int width) {
        List<String> lines = new ArrayList<>();
        StringBuilder line = new StringBuilder();
        for (String word : text.split(" ")) {
            if (!line.isEmpty() && width(line + " " + word, font) > width) {
                lines.add(line.toString());
                line.setLength(0);
            }
            line.append(line.isEmpty() ? "" : " ").append(word);
        }
        lines.add(line.toString());
        return lines;
    }

    private static int runEnd(String text, int from) {
        boolean digit = isDigit(text.charAt(from));
        int to = from + 1;
        while (to < text.length() && isDigit(text.charAt(to)) == digit) {
            to++;
        }
        return to;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    private static double digitWidth(Font font) {
        return DIGIT_WIDTHS.computeIfAbsent(font, Ink::widestDigit);
    }

    private static double widestDigit(Font font) {
        double widest = 0;
        for (char digit = '0'; digit <= '9'; digit++) {
            widest = Math.max(
                    widest, font.getStringBounds(String.valueOf(digit), CONTEXT).getWidth());
        }
        return widest;
    }
}
