package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.docksweep.fleet.ProcedureCard;
import org.docksweep.kiosk.bench.BenchState.CardAtHand;

/** The procedure: the step to do now in large with the numbers of this driver and its cautions, the others around it. */
final class CardPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final double[] STEP_SIZES = {26, 24, 22, 20, 18, 17, 16};

    private transient Optional<CardAtHand> card = Optional.empty();
    private int y;

    CardPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("bench-card");
    }

    void show(Optional<CardAtHand> next) {
        card = next;
        getAccessibleContext()
                .setAccessibleName(next.flatMap(CardAtHand::next)
                        .map(step -> texts.say(step.text()))
                        .orElse(texts.say("bench.card.none")));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        Rectangle box = inside(16);
        if (card.isEmpty()) {
            ink.line(texts.say("bench.card.none"), sizes.regular(18), Look.color("quiet"), box, Ink.Align.CENTRE);
            return;
        }
        CardAtHand at = card.get();
        y = box.y;
        title(ink, at, box);
        List<ProcedureCard.Step> steps = at.card().steps();
        int now = at.next().map(steps::indexOf).orElse(steps.size());
        if (now > 0) {
            other(g, ink, at, now - 1, box);
        }
        if (now < steps.size()) {
            current(g, ink, steps.get(now), now, steps.size(), box);
        } else {
            say(ink, texts.say("bench.card.done"), sizes.semiBold(22), "ink", box, sizes.px(64));
        }
        for (int i = now + 1; i < steps.size() && y + sizes.px(30) <= box.y + box.height; i++) {
            other(g, ink, at, i, box);
        }
    }

    private void title(Ink ink, CardAtHand at, Rectangle box) {
        String title = texts.say("purpose", at.card().purpose())
                + (at.positionCode() == null ? "" : " \u00b7 " + at.positionCode());
        Font font = Ink.fitting(title, sizes::bold, new double[] {26, 24, 22, 20, 18, 16}, box.width, sizes.px(36));
        ink.line(title, font, Look.color("ink"), new Rectangle(box.x, y, box.width, sizes.px(36)), Ink.Align.LEFT);
        y += sizes.px(36);
        String under = texts.say(
                at.card().driverModelCode() == null ? "bench.card.generic" : "bench.card.of-driver",
                at.number(),
                at.count(),
                at.card().effortMinutes(),
                at.card().driverModelCode());
        Font small = Ink.fitting(under, sizes::regular, new double[] {16, 15, 14, 13, 12}, box.width, sizes.px(24));
        ink.line(under, small, Look.color("quiet"), new Rectangle(box.x, y, box.width, sizes.px(24)), Ink.Align.LEFT);
        y += sizes.px(32);
    }

    private void current(Graphics2D g, Ink ink, ProcedureCard.Step step, int index, int count, Rectangle box) {
        String number = texts.say("bench.card.step", index + 1, count);
        ink.line(
                number,
                sizes.semiBold(16),
                Tone.ACT.ink(),
                new Rectangle(box.x, y, box.width, sizes.px(24)),
                Ink.Align.LEFT);
        y += sizes.px(26);
        String text = texts.say(step.text());
        say(
                ink,
                text,
                Ink.fitting(text, sizes::semiBold, STEP_SIZES, box.width, sizes.px(110)),
                "ink",
                box,
                sizes.px(110));
        if (!step.numbers().isEmpty()) {
            String numbers = step.numbers().stream().map(texts::say).collect(Collectors.joining("  \u00b7  "));
            band(g, ink, numbers, Tone.ACT, Sign.LABEL, box, new double[] {26, 24, 22, 20, 18, 17, 16, 15});
        }
        if (step.note() != null) {
            say(ink, step.note(), sizes.regular(17), "ink", box, sizes.px(70));
        }
        for (var caution : step.cautions()) {
            band(g, ink, texts.say(caution), Tone.ATTENTION, Sign.EXCLAMATION, box, new double[] {19, 18, 17, 16, 15});
        }
        y += sizes.px(6);
    }

    private void band(Graphics2D g, Ink ink, String text, Tone tone, Sign sign, Rectangle box, double[] fonts) {
        int indent = sizes.px(56);
        int room = box.y + box.height - y;
        Font font = Ink.fitting(
                text, sizes::semiBold, fonts, box.width - indent - sizes.px(8), Math.min(room, sizes.px(96)));
        int lines = Ink.wrap(text, font, box.width - indent - sizes.px(8)).size();
        int height = Math.max(sizes.px(48), lines * (int) Math.ceil(Ink.lineHeight(font)) + sizes.px(12));
        g.setColor(tone.wash());
        g.fill(new RoundRectangle2D.Double(box.x, y, box.width, height, sizes.px(8), sizes.px(8)));
        int size = sizes.px(30);
        sign.paint(g, box.x + sizes.px(12), y + (height - size) / 2.0, size, tone.ink(), tone.wash());
        ink.paragraph(
                text,
                font,
                Look.color("ink"),
                new Rectangle(box.x + indent, y + sizes.px(6), box.width - indent - sizes.px(8), height - sizes.px(6)));
        y += height + sizes.px(8);
    }

    private void say(Ink ink, String text, Font font, String color, Rectangle box, int height) {
        y += ink.paragraph(text, font, Look.color(color), new Rectangle(box.x, y, box.width, height)) + sizes.px(8);
    }

    private void other(Graphics2D g, Ink ink, CardAtHand at, int index, Rectangle box) {
        ProcedureCard.Step step = at.card().steps().get(index);
        boolean done = at.done().contains(step.code());
        int size = sizes.px(18);
        (done ? Sign.TICK : Sign.DASH)
                .paint(
                        g,
                        box.x,
                        y + sizes.px(5),
                        size,
                        done ? Tone.PASS.ink() : Look.color("quiet"),
                        Look.color("card"));
        String text = (index + 1) + "  " + texts.say(step.text());
        Font font = sizes.regular(15);
        int width = box.width - sizes.px(28);
        while (Ink.width(text, font) > width) {
            text = text.substring(0, text.length() - 2) + "\u2026";
        }
        ink.line(
                text,
                font,
                Look.color("quiet"),
                new Rectangle(box.x + sizes.px(28), y, width, sizes.px(28)),
                Ink.Align.LEFT);
        y += sizes.px(30);
    }
}
