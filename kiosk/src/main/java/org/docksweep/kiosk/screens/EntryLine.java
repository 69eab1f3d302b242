package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.KeyAdapter;
import java.awt.event.KeyEvent;
import java.util.function.Consumer;

/** Where everything typed on the rig page lands: values, and scans that went to the wrong page. */
final class EntryLine extends PaintedPanel implements TypedText {
    private static final long serialVersionUID = 1;
    private static final int LONGEST = 80;

    private final StringBuilder typed = new StringBuilder();
    private transient String prompt = "";

    /** What arrow keys ask for. */
    interface Moves {
        /** One field up or down. */
        void field(int step);

        /** One choice back or on. */
        void choice(int step);
    }

    EntryLine(Sizes sizes, Texts texts, Consumer<String> entered, Moves moves) {
        super(sizes, texts);
        setFocusable(true);
        setFocusTraversalKeysEnabled(false);
        addKeyListener(new KeyAdapter() {
            @Override
            public void keyTyped(KeyEvent event) {
                char c = event.getKeyChar();
                if (!Character.isISOControl(c) && typed.length() < LONGEST) {
                    typed.append(c);
                    repaint();
                }
            }

            @Override
            public void keyPressed(KeyEvent event) {
                switch (event.getKeyCode()) {
                    case KeyEvent.VK_ENTER -> enter(entered);
                    case KeyEvent.VK_BACK_SPACE -> {
                        typed.setLength(Math.max(0, typed.length() - 1));
                        repaint();
                    }
                    case KeyEvent.VK_UP -> moves.field(-1);
                    case KeyEvent.VK_DOWN, KeyEvent.VK_TAB -> moves.field(1);
                    case KeyEvent.VK_LEFT -> moves.choice(-1);
                    case KeyEvent.VK_RIGHT -> moves.choice(1);
                    default -> {
                        // Typed characters come by themselves.
                    }
                }
            }
        });
    }

    private void enter(Consumer<String> entered) {
        String text = typed.toString();
        clear();
        if (!text.isBlank()) {
            entered.accept(text);
        }
    }

    @Override
    public String typedText() {
        return typed.toString();
    }

    @Override
    public void clear() {
        typed.setLength(0);
        repaint();
    }

    /** Says what is typed here now. */
    void ask(String what) {
        prompt = what;
        getAccessibleContext().setAccessibleName(what);
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        g.setColor(Look.color("well"));
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(Tone.ACT.ink());
        g.setStroke(sizes.stroke(3));
        g.drawRect(sizes.px(1.5), sizes.px(1.5), getWidth() - sizes.px(3), getHeight() - sizes.px(3));
        Rectangle box = new Rectangle(sizes.px(20), 0, getWidth() - sizes.px(40), getHeight());
        if (typed.isEmpty()) {
            Font font = Ink.fitting(
                    prompt,
                    sizes::regular,
                    new double[] {20, 18, 17, 16, 15, 14},
                    box.width,
                    box.height - sizes.px(12));
            int height = Ink.wrap(prompt, font, box.width).size() * (int) Math.ceil(Ink.lineHeight(font));
            box.y = Math.max(sizes.px(4), (getHeight() - height) / 2);
            box.height = getHeight() - box.y;
            ink.paragraph(prompt, font, Look.color("quiet"), box);
        } else {
            String text = typed.toString();
            Font font = sizes.bold(36);
            while (Ink.width(text, font) > box.width) {
                // The end is what was typed last.
                text = text.substring(1);
            }
            ink.line(text, font, Look.color("ink"), box, Ink.Align.LEFT);
        }
    }
}
