package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.JButton;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.kiosk.bench.BenchState.Choice;

/** The choices of a finding as tiles: tap one, or type its code and Enter. */
final class ChoicePanel extends JPanel {
    private static final long serialVersionUID = 1;
    private static final int COLUMNS = 5;

    private final transient Sizes sizes;
    private final transient Texts texts;
    private final transient Consumer<String> choose;
    private final List<Tile> tiles = new ArrayList<>();

    ChoicePanel(Sizes sizes, Texts texts, Consumer<String> choose) {
        super(new MigLayout(
                "insets " + sizes.px(4) + "px, gap " + sizes.px(6) + "px " + sizes.px(6) + "px, fill, wrap " + COLUMNS,
                "[grow,fill,sg]".repeat(COLUMNS),
                "[grow,fill,sg]"));
        this.sizes = sizes;
        this.texts = texts;
        this.choose = choose;
        setBackground(Look.color("ground"));
    }

    void show(List<Choice> choices) {
        if (tiles.size() != choices.size()) {
            removeAll();
            tiles.clear();
            for (Choice ignored : choices) {
                Tile tile = new Tile();
                tiles.add(tile);
                add(tile, "grow, wmin 0, hmin " + sizes.px(Sizes.TOUCH) + "px");
            }
            revalidate();
        }
        for (int i = 0; i < choices.size(); i++) {
            tiles.get(i).choice(choices.get(i));
        }
    }

    private String words(Choice choice) {
        String prefix = choice.value() instanceof ConfirmedCause
                ? "cause"
                : choice.value() instanceof ChargeClass ? "charge" : "seen";
        return texts.say(prefix, choice.value());
    }

    /** One choice: its code, its words, and a tick when it is taken. */
    private final class Tile extends JButton implements WritesText {
        private static final long serialVersionUID = 1;
        private transient Choice choice;
        private transient Ink lastInk;

        Tile() {
            setFocusable(false);
            setBorder(null);
            setContentAreaFilled(false);
            setOpaque(false);
            addActionListener(e -> choose.accept(choice.code()));
        }

        void choice(Choice next) {
            choice = next;
            setSelected(next.taken());
            getAccessibleContext().setAccessibleName(words(next));
            getAccessibleContext().setAccessibleDescription(next.code());
            repaint();
        }

        @Override
        protected void paintComponent(Graphics graphics) {
            Graphics2D g = (Graphics2D) graphics.create();
            PaintedPanel.smooth(g);
            Ink ink = new Ink(g);
            Color ground = choice.taken() ? Tone.ACT.plate() : Look.color("card");
            Color writing = choice.taken() ? Tone.ACT.onPlate() : Look.color("ink");
            RoundRectangle2D body =
                    new RoundRectangle2D.Double(1, 1, getWidth() - 2, getHeight() - 2, sizes.px(8), sizes.px(8));
            g.setColor(ground);
            g.fill(body);
            g.setColor(choice.taken() ? writing : kind());
            g.setStroke(sizes.stroke(choice.taken() ? 3 : 1.5));
            g.draw(body);
            int code = sizes.px(36);
            ink.line(
                    choice.code(),
                    sizes.semiBold(14),
                    choice.taken() ? writing : Look.color("quiet"),
                    new Rectangle(sizes.px(6), 0, code, getHeight()),
                    Ink.Align.LEFT);
            int tick = choice.taken() ? sizes.px(24) : 0;
            if (choice.taken()) {
                Sign.TICK.paint(g, getWidth() - tick - sizes.px(4), (getHeight() - tick) / 2.0, tick, writing, ground);
            }
            Rectangle box = new Rectangle(code + sizes.px(6), 0, getWidth() - code - sizes.px(12) - tick, getHeight());
            String words = words(choice);
            Font font = Ink.fitting(
                    words, sizes::semiBold, new double[] {16, 15, 14, 13, 12, 11}, box.width, box.height - sizes.px(6));
            int lineHeight = (int) Math.ceil(Ink.lineHeight(font));
            int height = Ink.wrap(words, font, box.width).size() * lineHeight;
            ink.paragraph(words, font, writing, new Rectangle(box.x, (getHeight() - height) / 2, box.width, height));
            lastInk = ink;
            g.dispose();
        }

        private Color kind() {
            return choice.value() instanceof ConfirmedCause
                    ? Tone.FAULT.ink()
                    : choice.value() instanceof ChargeClass ? Tone.ATTENTION.ink() : Look.color("quiet");
        }

        @Override
        public List<String> shortfalls() {
            return lastInk == null ? List.of() : lastInk.shortfalls();
        }

        @Override
        public List<Ink.Written> written() {
            return lastInk == null ? List.of() : lastInk.written();
        }
    }
}
