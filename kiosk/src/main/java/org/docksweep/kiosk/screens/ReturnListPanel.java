package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.kiosk.dock.DockState.ModelTally;
import org.docksweep.kiosk.dock.DockState.Returns;
import org.docksweep.kiosk.dock.DockState.Slot;
import org.docksweep.kiosk.dock.DockState.SlotState;

/** Left quarter: the order at hand, and per model a tally of cabinet silhouettes that fill as they come back. */
final class ReturnListPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient Optional<Returns> returns = Optional.empty();

    ReturnListPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(Optional<Returns> next) {
        returns = next;
        getAccessibleContext()
                .setAccessibleName(next.map(r -> r.orderNumber() + ", " + r.customer() + ": " + progress(r))
                        .orElse(texts.say("returns.none")));
        repaint();
    }

    private String progress(Returns list) {
        return texts.say("returns.progress", list.back(), list.due());
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        Rectangle box = inside(16);
        if (returns.isEmpty()) {
            ink.paragraph(texts.say("returns.none"), sizes.semiBold(20), Look.color("quiet"), box);
            return;
        }
        Returns list = returns.get();
        int y = box.y;
        ink.line(
                list.orderNumber() + " \u00b7 " + list.customer(),
                Ink.fitting(
                        list.orderNumber() + " \u00b7 " + list.customer(),
                        sizes::regular,
                        new double[] {17, 16, 15, 14},
                        box.width,
                        sizes.px(24)),
                Look.color("quiet"),
                new Rectangle(box.x, y, box.width, sizes.px(24)),
                Ink.Align.LEFT);
        y += sizes.px(24);
        Font head = Ink.fitting(
                progress(list), sizes::bold, new double[] {34, 30, 28, 26, 24, 22}, box.width, sizes.px(48));
        ink.line(
                progress(list),
                head,
                Look.color("ink"),
                new Rectangle(box.x, y, box.width, sizes.px(44)),
                Ink.Align.LEFT);
        y += sizes.px(48);
        bar(g, new Rectangle(box.x, y, box.width, sizes.px(8)), list);
        y += sizes.px(16);
        int rows = list.models().size() + (list.unexpected().isEmpty() ? 0 : 1);
        int rowHeight = Math.min(sizes.px(96), (box.y + box.height - y) / Math.max(1, rows));
        for (ModelTally tally : list.models()) {
            row(g, ink, tally, new Rectangle(box.x, y, box.width, rowHeight));
            y += rowHeight;
        }
        if (!list.unexpected().isEmpty()) {
            unexpected(g, ink, list.unexpected(), new Rectangle(box.x, y, box.width, box.y + box.height - y));
        }
    }

    private void bar(Graphics2D g, Rectangle bar, Returns list) {
        g.setColor(Look.color("faint"));
        g.fill(bar);
        double each = bar.width / (double) Math.max(1, list.due());
        g.setColor(Look.color("ink"));
        g.fill(new Rectangle2D.Double(bar.x, bar.y, each * Math.min(list.back(), list.due()), bar.height));
    }

    private void row(Graphics2D g, Ink ink, ModelTally tally, Rectangle box) {
        int lineHeight = sizes.px(22);
        String words = words(tally.slots());
        Font small = sizes.regular(15);
        int wordsWidth = (int) Math.ceil(Ink.width(words, small));
        Rectangle nameBox = new Rectangle(box.x, box.y, box.width - wordsWidth - sizes.px(8), lineHeight);
        Font nameFont = Ink.fitting(
                tally.model().name(), sizes::semiBold, new double[] {16, 15, 14, 13}, nameBox.width, nameBox.height);
        ink.line(tally.model().name(), nameFont, Look.color("ink"), nameBox, Ink.Align.LEFT);
        ink.line(
                words,
                small,
                Look.color("quiet"),
                new Rectangle(box.x + box.width - wordsWidth, box.y, wordsWidth, lineHeight),
                Ink.Align.RIGHT);
        silhouettes(
                g,
                tally,
                new Rectangle(
                        box.x, box.y + lineHeight + sizes.px(2), box.width, box.height - lineHeight - sizes.px(8)));
    }

    /** "3 of 4", and what did not reach the shelf, in words. */
    private String words(List<Slot> slots) {
        Map<SlotState, Integer> counts = new EnumMap<>(SlotState.class);
        slots.forEach(slot -> counts.merge(slot.state(), 1, Integer::sum));
        int missing = counts.getOrDefault(SlotState.NOT_YET, 0) + counts.getOrDefault(SlotState.AT_HAND, 0);
        List<String> parts = new ArrayList<>();
        parts.add(texts.say("returns.row", slots.size() - missing, slots.size()));
        for (SlotState state : List.of(SlotState.WATCH, SlotState.BENCH, SlotState.HOLD)) {
            if (counts.containsKey(state)) {
                parts.add(texts.say("slot." + state.name(), counts.get(state)));
            }
        }
        return String.join(" \u00b7 ", parts);
    }

    private void silhouettes(Graphics2D g, ModelTally tally, Rectangle area) {
        double aspect = tally.model().widthMm() / tally.model().heightMm();
        int gap = sizes.px(8);
        int count = Math.max(1, tally.slots().size());
        int perLine = count;
        int lines = 1;
        double height = Math.min(area.height, sizes.px(60));
        double width = Math.min(height * aspect, sizes.px(76));
        while (lines < 8 && perLine * (width + gap) - gap > area.width) {
            lines++;
            perLine = (count + lines - 1) / lines;
            height = (area.height - (lines - 1.0) * gap / 2) / lines;
            width = Math.min(height * aspect, (area.width + gap) / (double) perLine - gap);
        }
        for (int i = 0; i < tally.slots().size(); i++) {
            Rectangle cell = new Rectangle(
                    (int) (area.x + (i % perLine) * (width + gap)),
                    (int) (area.y + (i / perLine) * (height + gap / 2.0)),
                    (int) width,
                    (int) height);
            new CabinetDrawing(tally.model(), cell)
                    .paintSilhouette(g, sizes, tally.slots().get(i).state());
        }
    }

    private void unexpected(Graphics2D g, Ink ink, List<Slot> slots, Rectangle box) {
        g.setColor(Look.color("line"));
        g.fillRect(box.x, box.y, box.width, sizes.px(2));
        Font font = sizes.semiBold(16);
        ink.line(
                texts.say("returns.unexpected", slots.size()),
                font,
                Tone.ATTENTION.ink(),
                new Rectangle(box.x, box.y + sizes.px(6), box.width, sizes.px(24)),
                Ink.Align.LEFT);
        int y = box.y + sizes.px(32);
        int shown = Math.min(slots.size(), Math.max(1, (box.height - sizes.px(32)) / sizes.px(24)));
        for (int i = 0; i < shown; i++) {
            Slot slot = slots.get(i);
            Tone tone = CabinetDrawing.tone(slot.state());
            Color color = slot.state() == SlotState.SHELF ? Look.color("ink") : tone.ink();
            ink.line(
                    slot.tag().value() + " \u00b7 " + texts.say("slot.word", slot.state()),
                    sizes.regular(16),
                    color,
                    new Rectangle(box.x, y, box.width, sizes.px(24)),
                    Ink.Align.LEFT);
            y += sizes.px(24);
        }
    }
}
