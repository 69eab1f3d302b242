package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Path2D;
import java.util.Optional;
import java.util.stream.Collectors;
import org.docksweep.kiosk.practice.PracticeTruck;

/** Across the top of every screen of practice: that nothing here is real, and what stands on the truck next. */
final class PracticeBand extends PaintedPanel {
    private static final long serialVersionUID = 1;

    /** Height in design pixels. */
    static final int HEIGHT = 40;

    private transient Optional<PracticeTruck.Cabinet> next = Optional.empty();

    PracticeBand(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("practice");
        setPreferredSize(new java.awt.Dimension(0, sizes.px(HEIGHT)));
        show(next);
    }

    void show(Optional<PracticeTruck.Cabinet> cabinet) {
        next = cabinet;
        getAccessibleContext().setAccessibleName(texts.say("practice.word") + ". " + truck());
        repaint();
    }

    private String truck() {
        return next.map(c -> c.damage().isEmpty()
                        ? texts.say("practice.next", c.label().value(), Command.PRACTICE_SCAN.cap())
                        : texts.say(
                                "practice.next-damaged",
                                c.label().value(),
                                Command.PRACTICE_SCAN.cap(),
                                c.damage().stream()
                                        .sorted()
                                        .map(item -> texts.say("item", item))
                                        .collect(Collectors.joining(", "))))
                .orElseGet(() -> texts.say("practice.empty", Command.CLOSE_LIST.cap()));
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        g.setColor(Tone.ATTENTION.plate());
        g.fillRect(0, 0, getWidth(), getHeight());
        int pad = sizes.px(16);
        Font bold = sizes.bold(20);
        String word = texts.say("practice.word");
        int width = (int) Math.ceil(Ink.width(word, bold));
        hatch(g, 0, pad * 4);
        ink.line(word, bold, Tone.ATTENTION.onPlate(), new Rectangle(pad * 5, 0, width, getHeight()), Ink.Align.LEFT);
        int x = pad * 7 + width;
        Rectangle box = new Rectangle(x, 0, getWidth() - x - pad, getHeight());
        String said = truck();
        Font font = Ink.fitting(
                said, sizes::semiBold, new double[] {18, 17, 16, 15, 14, 13, 12, 11, 10}, box.width, box.height / 2);
        if (Ink.width(said, font) > box.width) {
            font = Ink.fitting(said, sizes::semiBold, new double[] {14, 13, 12, 11, 10}, box.width, box.height);
        }
        int height = Ink.wrap(said, font, box.width).size() * (int) Math.ceil(Ink.lineHeight(font));
        box.y = Math.max(0, (getHeight() - height) / 2);
        ink.paragraph(said, font, Tone.ATTENTION.onPlate(), box);
    }

    /** Slanted bars, so that practice is told from three metres and without colour. */
    private void hatch(Graphics2D g, int from, int to) {
        g.setColor(Tone.ATTENTION.onPlate());
        int bar = sizes.px(10);
        for (int x = from; x + 2 * bar <= to; x += 2 * bar) {
            Path2D shape = Sign.polygon(x + bar, 0, x + 2 * bar, 0, x + bar, getHeight(), x, getHeight());
            g.fill(shape);
        }
    }
}
