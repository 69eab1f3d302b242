package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;

/** The one huge word, on its coloured plate with its sign. Read from three metres in one second. */
final class VerdictPlate extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final double[] WORD_SIZES = {96, 84, 72, 66, 60, 54, 50, 46, 42, 38, 34, 30, 28, 26, 24};

    private transient Guide guide = new Guide(Tone.NEUTRAL, Sign.CODE, "word.SCAN", List.of());

    VerdictPlate(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("verdict");
    }

    void show(Guide next) {
        guide = next;
        getAccessibleContext().setAccessibleName(texts.say(guide.word()));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, guide.tone().plate());
        int pad = sizes.px(16);
        int sign = sizes.px(80);
        guide.sign()
                .paint(
                        g,
                        pad,
                        (getHeight() - sign) / 2.0,
                        sign,
                        guide.tone().onPlate(),
                        guide.tone().plate());
        Rectangle box =
                new Rectangle(pad * 2 + sign, sizes.px(8), getWidth() - pad * 3 - sign, getHeight() - 2 * sizes.px(8));
        String word = texts.say(guide.word());
        Font font = Ink.fitting(word, sizes::bold, WORD_SIZES, box.width, box.height);
        List<String> lines = Ink.wrap(word, font, box.width);
        int lineHeight = (int) Math.ceil(font.getSize2D() * (lines.size() > 1 ? 1.08 : 1.28));
        int top = (getHeight() - lineHeight * lines.size()) / 2;
        for (int i = 0; i < lines.size(); i++) {
            Rectangle line = new Rectangle(box.x, top + i * lineHeight, box.width, lineHeight);
            ink.line(lines.get(i), font, guide.tone().onPlate(), line, Ink.Align.LEFT);
        }
    }
}
