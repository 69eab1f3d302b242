package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.kiosk.dock.DockState.Notice;

/** A message beside the scan line with at most two actions. */
final class NoticePanel extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private final Message message;
    private final List<KeyButton> buttons;

    NoticePanel(Sizes sizes, Texts texts) {
        super(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px 0, fill, hidemode 3", "[grow,fill][][]", "[grow,fill]"));
        this.sizes = sizes;
        setOpaque(false);
        message = new Message(sizes, texts);
        buttons = List.of(new KeyButton(sizes), new KeyButton(sizes));
        add(message, "wmin 0");
        buttons.forEach(this::add);
    }

    void show(Optional<Notice> notice, List<Offer> offers) {
        message.show(notice);
        removeAll();
        add(message, "wmin 0, hmin 0");
        for (int i = 0; i < offers.size(); i++) {
            buttons.get(i).offer(offers.get(i));
            add(buttons.get(i), "hmin " + sizes.px(Sizes.TOUCH) + ", wmax " + sizes.px(240));
        }
        setVisible(notice.isPresent());
        revalidate();
        repaint();
    }

    /** The sentence with its sign. */
    private static final class Message extends PaintedPanel {
        private static final long serialVersionUID = 1;
        private transient Optional<Notice> notice = Optional.empty();

        Message(Sizes sizes, Texts texts) {
            super(sizes, texts);
        }

        void show(Optional<Notice> next) {
            notice = next;
            getAccessibleContext()
                    .setAccessibleName(next.map(n -> texts.say(n.text())).orElse(texts.say("notice.none")));
            repaint();
        }

        @Override
        void paint(Graphics2D g, Ink ink) {
            if (notice.isEmpty()) {
                return;
            }
            Tone tone = Tone.of(notice.get().state());
            card(g, tone.wash());
            int sign = sizes.px(40);
            Sign.of(notice.get().state())
                    .paint(g, sizes.px(16), (getHeight() - sign) / 2.0, sign, tone.ink(), tone.wash());
            String text = texts.say(notice.get().text());
            Rectangle box =
                    new Rectangle(sizes.px(72), sizes.px(6), getWidth() - sizes.px(84), getHeight() - sizes.px(12));
            Font font = Ink.fitting(
                    text, sizes::semiBold, new double[] {22, 20, 18, 17, 16, 15, 14}, box.width, box.height);
            int lines = Ink.wrap(text, font, box.width).size();
            int height = lines * (int) Math.ceil(Ink.lineHeight(font));
            box.y += Math.max(0, (box.height - height) / 2);
            ink.paragraph(text, font, Look.color("ink"), box);
        }
    }
}
