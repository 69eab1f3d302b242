package org.docksweep.kiosk.screens;

import java.awt.BorderLayout;
import java.awt.Color;
import java.awt.Dimension;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;

/**
 * The pages as big buttons at the left edge, with their keys; the one that is shown stands on a plate with a mark. Below them what
 * belongs to no page.
 */
final class PageBar extends JPanel {
    private static final long serialVersionUID = 1;

    /** Width in design pixels. */
    static final int WIDTH = 80;

    private static final int BUTTON_HEIGHT = 88;

    private final transient Map<PageName, PageButton> buttons = new EnumMap<>(PageName.class);

    PageBar(List<PageName> pages, List<Offer> others, Sizes sizes, Texts texts, Consumer<PageName> open) {
        super(new BorderLayout());
        setBackground(Look.color("card"));
        JPanel column = column(sizes);
        for (PageName page : pages) {
            PageButton button = new PageButton(sizes);
            button.offer(new Offer(page.command(), Offer.Kind.PLAIN, texts.say("page", page), () -> open.accept(page)));
            buttons.put(page, button);
            column.add(button, "h " + sizes.px(BUTTON_HEIGHT) + "px!, wmin 0");
        }
        add(column, BorderLayout.NORTH);
        JPanel below = column(sizes);
        for (Offer other : others) {
            PageButton button = new PageButton(sizes);
            button.offer(other);
            below.add(button, "h " + sizes.px(BUTTON_HEIGHT) + "px!, wmin 0");
        }
        add(below, BorderLayout.SOUTH);
        setPreferredSize(new Dimension(sizes.px(WIDTH), 0));
    }

    private static JPanel column(Sizes sizes) {
        int gap = sizes.px(4);
        JPanel column =
                new JPanel(new MigLayout("insets " + gap + "px, gap 0 " + gap + "px, wrap 1, fillx", "[grow,fill]"));
        column.setOpaque(false);
        return column;
    }

    void show(PageName page) {
        buttons.forEach((name, button) -> button.current(name == page));
    }

    /** Label over key cap. */
    private static final class PageButton extends KeyButton {
        private static final long serialVersionUID = 1;
        private boolean current;

        PageButton(Sizes sizes) {
            super(sizes);
        }

        void current(boolean now) {
            current = now;
            setSelected(now);
            repaint();
        }

        @Override
        Color fill() {
            return current && !getModel().isPressed() ? Tone.ACT.plate() : super.fill();
        }

        @Override
        Color writing() {
            return current ? Tone.ACT.onPlate() : super.writing();
        }

        @Override
        void paintContent(Graphics2D g, Ink ink) {
            int pad = sizes.px(4);
            int cap = sizes.px(28);
            int label = sizes.px(28);
            int top = (getHeight() - label - cap - sizes.px(8)) / 2;
            Rectangle box = new Rectangle(pad, top, getWidth() - 2 * pad, label);
            String text = offer().label();
            ink.line(
                    text,
                    Ink.fitting(
                            text, sizes::bold, new double[] {20, 18, 17, 16, 15, 14, 13, 12}, box.width, box.height),
                    writing(),
                    box,
                    Ink.Align.CENTRE);
            int width = sizes.px(68);
            paintCap(g, ink, new Rectangle((getWidth() - width) / 2, top + label + sizes.px(8), width, cap));
            if (current) {
                g.setColor(writing());
                g.fillRect(0, sizes.px(12), sizes.px(5), getHeight() - sizes.px(24));
            }
        }
    }
}
