package org.docksweep.kiosk.screens;

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
final class ScanField extends JTextField implements WritesText {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private final transient Texts texts;
    private transient Ink lastInk;

    ScanField(Sizes sizes, Texts texts, Consumer<String> scanned) {
        this.sizes = sizes;
        this.texts = texts;
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

    @Override
    protected void paintComponent(Graphics graphics) {
        super.paintComponent(graphics);
        Graphics2D g = (Graphics2D) graphics.create();
        PaintedPanel.smooth(g);
        Ink ink = new Ink(g);
        if (getText().isEmpty()) {
            ink.line(
                    texts.say("scan.hint"),
                    sizes.regular(20),
                    Look.color("quiet"),
                    new Rectangle(sizes.px(28), 0, getWidth() - sizes.px(44), getHeight()),
                    Ink.Align.LEFT);
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
