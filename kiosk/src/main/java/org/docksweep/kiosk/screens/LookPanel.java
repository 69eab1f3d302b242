package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.fleet.VisualItem;

/** Picture buttons of the visual list: all fine until one is tapped. */
final class LookPanel extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private final transient Texts texts;
    private final transient Consumer<VisualItem> toggle;
    private transient List<VisualItem> shownItems = List.of();
    private transient Set<VisualItem> shownMarks = Set.of();

    /**
     * Makes the panel.
     *
     * @param toggle hears which item was tapped
     */
    LookPanel(Sizes sizes, Texts texts, Consumer<VisualItem> toggle) {
        super(new MigLayout());
        this.sizes = sizes;
        this.texts = texts;
        this.toggle = toggle;
        setOpaque(false);
    }

    /** The offers of the items, for buttons and keys alike. */
    List<Offer> offers(List<VisualItem> items) {
        return items.stream()
                .map(item -> new Offer(
                        Command.choice(item.ordinal()),
                        Offer.Kind.PLAIN,
                        texts.say("item", item),
                        () -> toggle.accept(item)))
                .toList();
    }

    void show(List<VisualItem> items, Set<VisualItem> marked) {
        // A tile taken out under a finger would never hear of its release.
        if (items.equals(shownItems) && marked.equals(shownMarks)) {
            return;
        }
        shownItems = List.copyOf(items);
        shownMarks = Set.copyOf(marked);
        removeAll();
        int columns = items.size() <= 6 ? 3 : 4;
        setLayout(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px, fill, wrap " + columns,
                "[grow,fill,sizegroup]",
                "[grow,fill,sizegroup]"));
        List<Offer> offers = offers(items);
        for (int i = 0; i < items.size(); i++) {
            Tile tile = new Tile(sizes, texts, items.get(i), marked.contains(items.get(i)));
            tile.offer(offers.get(i));
            tile.describe();
            add(tile, "wmin 0, hmin " + sizes.px(Sizes.TOUCH));
        }
        revalidate();
        repaint();
    }

    static Set<VisualItem> toggled(Set<VisualItem> marked, VisualItem item) {
        EnumSet<VisualItem> next = marked.isEmpty() ? EnumSet.noneOf(VisualItem.class) : EnumSet.copyOf(marked);
        if (!next.remove(item)) {
            next.add(item);
        }
        return next;
    }

    /** One item: its drawing, its key, its name, and whether it is fine. */
    private static final class Tile extends KeyButton {
        private static final long serialVersionUID = 1;
        private final transient Texts texts;
        private final VisualItem item;
        private final boolean marked;

        Tile(Sizes sizes, Texts texts, VisualItem item, boolean marked) {
            super(sizes);
            this.texts = texts;
            this.item = item;
            this.marked = marked;
        }

        void describe() {
            getAccessibleContext().setAccessibleName(offer().label() + ": " + state());
        }

        private String state() {
            return texts.say(marked ? "item.not-fine" : "item.fine");
        }

        private Tone tone() {
            return item.forcesSafetyHold() ? Tone.FAULT : Tone.ATTENTION;
        }

        @Override
        Color fill() {
            return marked ? tone().plate() : super.fill();
        }

        @Override
        Color writing() {
            return marked ? tone().onPlate() : super.writing();
        }

        @Override
        void paintContent(Graphics2D g, Ink ink) {
            int pad = sizes.px(12);
            int cap = sizes.px(36);
            int capHeight = sizes.px(28);
            paintCap(g, ink, new Rectangle(getWidth() - pad - cap, pad, cap, capHeight));
            int textTop = getHeight() - sizes.px(56);
            double size = Math.min(textTop - pad, sizes.px(56));
            ItemPicture.paint(g, item, pad, pad, size, writing());
            Rectangle name = new Rectangle(pad, textTop, getWidth() - 2 * pad, sizes.px(24));
            Font font = Ink.fitting(
                    offer().label(),
                    sizes::semiBold,
                    new double[] {18, 17, 16, 15, 14, 13, 12},
                    name.width,
                    name.height);
            ink.line(offer().label(), font, writing(), name, Ink.Align.LEFT);
            Rectangle state = new Rectangle(pad, textTop + sizes.px(24), getWidth() - 2 * pad, sizes.px(24));
            int sign = sizes.px(18);
            Color plain = marked ? writing() : Tone.PASS.ink();
            (marked ? Sign.CROSS : Sign.TICK)
                    .paint(g, state.x, state.y + (state.height - sign) / 2.0, sign, plain, fill());
            state.x += sign + sizes.px(6);
            state.width -= sign + sizes.px(6);
            ink.line(state(), marked ? sizes.bold(16) : sizes.regular(16), plain, state, Ink.Align.LEFT);
        }
    }
}
