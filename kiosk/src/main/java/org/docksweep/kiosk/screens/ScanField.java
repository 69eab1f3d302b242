package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.KeyEvent;
import java.util.List;
import java.util.function.Consumer;
import javax.swing.BorderFactory;
import javax.swing.JTextField;
import javax.swing.KeyStroke;

/** Where every scan and every typed tag lands. Enter hands it over and clears it at once for the next. */
final class ScanField extends JTextField implements WritesText, TypedText {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private String hint;
    private transient Ink lastInk;

    ScanField(Sizes sizes, Texts texts, Consumer<String> scanned) {
        this.sizes = sizes;
        this.hint = texts.say("scan.hint");
        setFont(sizes.bold(36));
        int side = sizes.px(16);
        setBorder(BorderFactory.createCompoundBorder(
                BorderFactory.createLineBorder(Tone.ACT.ink(), sizes.px(3)),
                BorderFactory.createEmptyBorder(0, side, 0, side)));
        setFocusTraversalKeysEnabled(false);
        getAccessibleContext().setAccessibleName(texts.say("scan.name"));
        getAccessibleContext().setAccessibleDescription(texts.say("scan.hint"));
        // Scanners end with Enter or with Tab, as they are set.
        getInputMap().put(KeyStroke.getKeyStroke(KeyEvent.VK_TAB, 0), JTextField.notifyAction);
        addActionListener(e -> {
            String text = Look.scanFrame().strip(getText());
            setText("");
            if (!text.isBlank()) {
                scanned.accept(text);
            }
        });
    }

    /** Says what is typed here now. */
    void ask(String what) {
        hint = what;
        getAccessibleContext().setAccessibleName(what);
        getAccessibleContext().setAccessibleDescription(what);
        repaint();
    }

    @Override
    public String typedText() {
        return getText();
    }

    @Override
    public void clear() {
        setText("");
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        super.paintComponent(graphics);
        Graphics2D g = (Graphics2D) graphics.create();
        PaintedPanel.smooth(g);
        Ink ink = new Ink(g);
        if (getText().isEmpty()) {
            Rectangle box = new Rectangle(sizes.px(28), 0, getWidth() - sizes.px(44), getHeight());
            Font font = Ink.fitting(hint, sizes::regular, new double[] {20, 18, 17, 16, 15, 14}, box.width, box.height);
            int height = Ink.wrap(hint, font, box.width).size() * (int) Math.ceil(Ink.lineHeight(font));
            box.y = Math.max(0, (getHeight() - height) / 2);
            ink.paragraph(hint, font, Look.color("quiet"), box);
        }
        lastInk = ink;
        g.dispose();
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
