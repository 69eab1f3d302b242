package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Optional;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.ScanEcho;

/** A message beside the scan line with at most two actions. */
final class NoticePanel extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private final Message message;
    private final List<KeyButton> buttons;
    private int shown = -1;

    NoticePanel(Sizes sizes, Texts texts) {
        super(new MigLayout());
        this.sizes = sizes;
        setOpaque(false);
        message = new Message(sizes, texts);
        buttons = List.of(new KeyButton(sizes), new KeyButton(sizes));
    }

    /**
     * Shows a message, or, when there is nothing to say, the last scan in large.
     *
     * @param offers its actions
     * @param last last scan
     */
    void show(Optional<Notice> notice, List<Offer> offers, Optional<ScanEcho> last) {
        message.show(notice, last);
        for (int i = 0; i < offers.size(); i++) {
            buttons.get(i).offer(offers.get(i));
        }
        if (offers.size() != shown) {
            shown = offers.size();
            layOutButtons();
        }
    }

    /** Only when their number changes: a button taken out under a finger would never hear of its release. */
    private void layOutButtons() {
        removeAll();
        setLayout(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px 0, fill", "[grow,fill]" + "[]".repeat(shown), "[grow,fill]"));
        add(message, "wmin 0, hmin 0");
        for (int i = 0; i < shown; i++) {
            add(buttons.get(i), "hmin " + sizes.px(Sizes.TOUCH) + ", wmax " + sizes.px(240));
        }
        revalidate();
        repaint();
    }

    /** The sentence with its sign. */
    private static final class Message extends PaintedPanel {
        private static final long serialVersionUID = 1;
        private transient Optional<Notice> notice = Optional.empty();
        private transient Optional<ScanEcho> last = Optional.empty();

        Message(Sizes sizes, Texts texts) {
            super(sizes, texts);
        }

        void show(Optional<Notice> next, Optional<ScanEcho> scan) {
            notice = next;
            last = scan;
            getAccessibleContext()
                    .setAccessibleName(next.map(n -> texts.say(n.text())).orElse(texts.say("notice.none")));
            repaint();
        }

        @Override
        void paint(Graphics2D g, Ink ink) {
            if (notice.isEmpty()) {
                last.ifPresent(scan -> echo(g, ink, scan));
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
                    text, sizes::semiBold, new double[] {22, 20, 18, 17, 16, 15, 14, 13}, box.width, box.height);
            int lines = Ink.wrap(text, font, box.width).size();
            int height = lines * (int) Math.ceil(Ink.lineHeight(font));
            box.y += Math.max(0, (box.height - height) / 2);
            ink.paragraph(text, font, Look.color("ink"), box);
        }

        private void echo(Graphics2D g, Ink ink, ScanEcho scan) {
            card(g, Look.color("card"));
            int sign = sizes.px(32);
            Tone tone = Tone.of(scan.state());
            Sign.of(scan.state())
                    .paint(g, sizes.px(20), (getHeight() - sign) / 2.0, sign, tone.ink(), Look.color("card"));
            Font font = sizes.semiBold(26);
            String tag = TrailPanel.shortened(scan.text());
            int width = (int) Math.ceil(Ink.width(tag, font));
            int x = sizes.px(72);
            ink.line(tag, font, Look.color("ink"), new Rectangle(x, 0, width, getHeight()), Ink.Align.LEFT);
            x += width + sizes.px(20);
            String outcome = texts.say(scan.outcome());
            String words = outcome.equals(scan.text()) ? texts.say("scan.read", texts.clock(scan.at())) : outcome;
            Rectangle box = new Rectangle(x, sizes.px(6), getWidth() - x - sizes.px(16), getHeight() - sizes.px(12));
            Font small =
                    Ink.fitting(words, sizes::regular, new double[] {20, 18, 17, 16, 15, 14}, box.width, box.height);
            int height = Ink.wrap(words, small, box.width).size() * (int) Math.ceil(Ink.lineHeight(small));
            box.y += Math.max(0, (box.height - height) / 2);
            ink.paragraph(words, small, Look.color("quiet"), box);
        }
    }
}
