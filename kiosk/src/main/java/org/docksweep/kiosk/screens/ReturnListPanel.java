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

    private static final double SMALLEST_NAME = 14;

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
        Font small = sizes.regular(15);
        String words = words(tally, box.width, small);
        int wordsWidth = (int) Math.ceil(Ink.width(words, small));
        Rectangle nameBox = new Rectangle(box.x, box.y, box.width - wordsWidth - sizes.px(8), lineHeight);
        Font nameFont = Ink.fitting(
                tally.model().name(),
                sizes::semiBold,
                new double[] {16, 15, SMALLEST_NAME},
                nameBox.width,
                nameBox.height);
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

    /** "3 of 4", and what did not reach the shelf, in words; less where the name of the model needs the room. */
    private String words(ModelTally tally, int width, Font font) {
        Map<SlotState, Integer> counts = new EnumMap<>(SlotState.class);
        tally.slots().forEach(slot -> counts.merge(slot.state(), 1, Integer::sum));
        int missing = counts.getOrDefault(SlotState.NOT_YET, 0) + counts.getOrDefault(SlotState.AT_HAND, 0);
        String back = texts.say(
                "returns.row", tally.slots().size() - missing, tally.slots().size());
        List<String> parts = new ArrayList<>();
        for (SlotState state : List.of(SlotState.WATCH, SlotState.BENCH, SlotState.HOLD)) {
            if (counts.containsKey(state)) {
                parts.add(texts.say("slot." + state.name(), counts.get(state)));
            }
        }
        String troubles = String.join(" \u00b7 ", parts);
        String all = troubles.isEmpty() ? back : back + " \u00b7 " + troubles;
        double room = width - sizes.px(12) - Ink.width(tally.model().name(), sizes.semiBold(SMALLEST_NAME));
        for (String words : List.of(all, troubles, back)) {
            if (!words.isEmpty() && Ink.width(words, font) <= room) {
                return words;
            }
        }
        return "";
    }

    /** Cells in as many lines as make them largest. */
    private void silhouettes(Graphics2D g, ModelTally tally, Rectangle area) {
        double aspect = tally.model().widthMm() / tally.model().heightMm();
        int gap = sizes.px(8);
        int count = Math.max(1, tally.slots().size());
        double best = 0;
        int perLine = count;
        for (int lines = 1; lines <= 8; lines++) {
            int inLine = (count + lines - 1) / lines;
            double byHeight = (area.height - (lines - 1.0) * gap / 2) / lines;
            double byWidth = ((area.width + gap) / (double) inLine - gap) / aspect;
            double height = Math.min(Math.min(byHeight, byWidth), sizes.px(64));
            if (height > best) {
                best = height;
                perLine = inLine;
            }
        }
        for (int i = 0; i < tally.slots().size(); i++) {
            Rectangle cell = new Rectangle(
                    (int) (area.x + (i % perLine) * (best * aspect + gap)),
                    (int) (area.y + (i / perLine) * (best + gap / 2.0)),
                    (int) (best * aspect),
                    (int) best);
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
