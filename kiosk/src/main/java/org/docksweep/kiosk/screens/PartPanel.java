package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.Optional;
import org.docksweep.kiosk.bench.BenchState.PartAtHand;

/** The part about to be put in: what it is, whether it fits here, whether it is in stock. */
final class PartPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient Optional<PartAtHand> part = Optional.empty();
    private int y;

    PartPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("bench-part");
    }

    void show(Optional<PartAtHand> next) {
        part = next;
        getAccessibleContext()
                .setAccessibleName(next.map(p -> p.stock().part().name() + ": "
                                + texts.say(p.fit().reason()))
                        .orElse(""));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (part.isEmpty()) {
            return;
        }
        PartAtHand at = part.get();
        Rectangle box = inside(20);
        y = box.y;
        large(ink, at.stock().part().name(), box, new double[] {34, 30, 28, 26, 24, 22, 20});
        fact(ink, "bench.part.number", at.stock().part().number(), box);
        fact(ink, "bench.part.source", texts.say("source", at.stock().part().source()), box);
        fact(ink, "bench.part.stock", Integer.toString(at.stock().inStock()), box);
        String place = at.positionCode() != null
                ? at.positionCode()
                : at.elementId() != null ? at.elementId() : texts.say("bench.part.cabinet");
        fact(ink, "bench.part.place", place, box);
        if (at.stock().part().serialised()) {
            fact(ink, "bench.part.serial", at.serial() == null ? texts.say("bench.part.no-serial") : at.serial(), box);
        }
        fact(ink, "bench.part.old", texts.say("fate", at.fate()), box);
        fit(g, ink, at, box);
    }

    private void large(Ink ink, String text, Rectangle box, double[] fonts) {
        Font font = Ink.fitting(text, sizes::bold, fonts, box.width, sizes.px(84));
        y += ink.paragraph(text, font, Look.color("ink"), new Rectangle(box.x, y, box.width, sizes.px(84)))
                + sizes.px(10);
    }

    private void fact(Ink ink, String label, String value, Rectangle box) {
        int half = sizes.px(180);
        ink.line(
                texts.say(label),
                Ink.fitting(texts.say(label), sizes::regular, new double[] {18, 17, 16, 15, 14}, half, sizes.px(36)),
                Look.color("quiet"),
                new Rectangle(box.x, y, half, sizes.px(36)),
                Ink.Align.LEFT);
        Rectangle at = new Rectangle(box.x + half + sizes.px(8), y, box.width - half - sizes.px(8), sizes.px(36));
        Font font = Ink.fitting(value, sizes::semiBold, new double[] {22, 20, 18, 17, 16, 15}, at.width, at.height);
        ink.line(value, font, Look.color("ink"), at, Ink.Align.LEFT);
        y += sizes.px(40);
    }

    private void fit(Graphics2D g, Ink ink, PartAtHand at, Rectangle box) {
        Tone tone = at.fit().fits() ? Tone.PASS : Tone.FAULT;
        int height = Math.min(sizes.px(120), box.y + box.height - y);
        g.setColor(tone.wash());
        g.fill(new RoundRectangle2D.Double(box.x, y, box.width, height, sizes.px(8), sizes.px(8)));
        int size = sizes.px(48);
        Sign sign = at.fit().fits() ? Sign.TICK : Sign.CROSS;
        sign.paint(g, box.x + sizes.px(14), y + (height - size) / 2.0, size, tone.ink(), tone.wash());
        Rectangle text =
                new Rectangle(box.x + sizes.px(76), y + sizes.px(6), box.width - sizes.px(88), height - sizes.px(12));
        String words = texts.say(at.fit().reason());
        Font font = Ink.fitting(
                words, sizes::semiBold, new double[] {24, 22, 20, 18, 17, 16, 15, 14}, text.width, text.height);
        ink.paragraph(words, font, Look.color("ink"), text);
        y += height;
    }
}
