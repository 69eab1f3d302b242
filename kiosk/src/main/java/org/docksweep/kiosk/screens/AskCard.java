package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;

/** The sentence of a question and the facts under it; of facts there is no room for, the last line says how many. */
final class AskCard extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int ROW = 48;

    private transient Asked asked;

    AskCard(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("ask-card");
    }

    void show(Asked next) {
        asked = next;
        StringBuilder name = new StringBuilder(next.sentence());
        next.lines().forEach(l -> name.append(" ").append(l.label()).append(" ").append(l.value()));
        getAccessibleContext().setAccessibleName(name.toString().strip());
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (asked == null) {
            return;
        }
        Rectangle box = inside(20);
        int most = asked.lines().isEmpty() ? box.height : Math.min(box.height, sizes.px(150));
        Font font = Ink.fitting(
                asked.sentence(),
                sizes::semiBold,
                new double[] {30, 28, 26, 24, 22, 20, 18, 17, 16, 15},
                box.width,
                most);
        int used =
                ink.paragraph(asked.sentence(), font, Look.color("ink"), new Rectangle(box.x, box.y, box.width, most));
        int top = box.y + used + sizes.px(16);
        int rows = Math.max(0, (box.y + box.height - top) / sizes.px(ROW));
        List<Asked.Line> lines = asked.lines();
        int shown = lines.size() <= rows ? lines.size() : Math.max(0, rows - 1);
        for (int i = 0; i < shown; i++) {
            line(g, ink, lines.get(i), new Rectangle(box.x, top + i * sizes.px(ROW), box.width, sizes.px(ROW)));
        }
        if (shown < lines.size() && rows > 0) {
            Rectangle rest = new Rectangle(box.x, top + shown * sizes.px(ROW), box.width, sizes.px(ROW));
            ink.line(
                    texts.say("ask.more", lines.size() - shown),
                    sizes.regular(18),
                    Look.color("quiet"),
                    rest,
                    Ink.Align.LEFT);
        }
    }

    private void line(Graphics2D g, Ink ink, Asked.Line line, Rectangle row) {
        int sign = sizes.px(24);
        Sign.of(line.state())
                .paint(
                        g,
                        row.x,
                        row.y + (row.height - sign) / 2.0,
                        sign,
                        Tone.of(line.state()).ink(),
                        Look.color("card"));
        int x = row.x + sign + sizes.px(12);
        int width = row.x + row.width - x;
        boolean alone = line.value().isEmpty();
        int labelWidth = alone ? width : width * 2 / 5;
        Rectangle left = new Rectangle(x, row.y, labelWidth - (alone ? 0 : sizes.px(12)), row.height);
        paragraph(ink, line.label(), left, alone);
        if (!alone) {
            paragraph(ink, line.value(), new Rectangle(x + labelWidth, row.y, width - labelWidth, row.height), true);
        }
    }

    /** In the middle of the height of its box. */
    private void paragraph(Ink ink, String text, Rectangle box, boolean strong) {
        Font font = Ink.fitting(
                text,
                strong ? sizes::semiBold : sizes::regular,
                new double[] {20, 18, 17, 16, 15, 14, 13, 12},
                box.width,
                box.height);
        int height = Ink.wrap(text, font, box.width).size() * (int) Math.ceil(Ink.lineHeight(font));
        Rectangle middle = new Rectangle(
                box.x, box.y + Math.max(0, (box.height - height) / 2), box.width, Math.max(height, box.height));
        ink.paragraph(text, font, Look.color(strong ? "ink" : "quiet"), middle);
    }
}
