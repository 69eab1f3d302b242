package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.RenderingHints;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.accessibility.Accessible;
import javax.accessibility.AccessibleContext;
import javax.accessibility.AccessibleRole;
import javax.swing.JComponent;

/** A part of the page that paints itself, with all its text through {@link Ink}. Lives on the event thread. */
abstract class PaintedPanel extends JComponent implements Accessible, WritesText {
    private static final long serialVersionUID = 1;

    final transient Sizes sizes;
    final transient Texts texts;
    private transient Ink lastInk;

    PaintedPanel(Sizes sizes, Texts texts) {
        this.sizes = sizes;
        this.texts = texts;
        setFocusable(false);
    }

    /** Paints the content. */
    abstract void paint(Graphics2D g, Ink ink);

    @Override
    protected final void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        smooth(g);
        Ink ink = new Ink(g);
        paint(g, ink);
        lastInk = ink;
        g.dispose();
    }

    static void smooth(Graphics2D g) {
        g.setRenderingHint(RenderingHints.KEY_ANTIALIASING, RenderingHints.VALUE_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_TEXT_ANTIALIASING, RenderingHints.VALUE_TEXT_ANTIALIAS_ON);
        g.setRenderingHint(RenderingHints.KEY_FRACTIONALMETRICS, RenderingHints.VALUE_FRACTIONALMETRICS_ON);
        g.setRenderingHint(RenderingHints.KEY_STROKE_CONTROL, RenderingHints.VALUE_STROKE_PURE);
    }

    /** Fills the panel as a card. */
    void card(Graphics2D g, Color fill) {
        g.setColor(fill);
        g.fill(new RoundRectangle2D.Double(0, 0, getWidth(), getHeight(), sizes.px(8), sizes.px(8)));
    }

    /** Area inside a padding. */
    Rectangle inside(int designPixels) {
        int p = sizes.px(designPixels);
        return new Rectangle(p, p, getWidth() - 2 * p, getHeight() - 2 * p);
    }

    @Override
    public List<String> shortfalls() {
        return lastInk == null ? List.of() : lastInk.shortfalls();
    }

    @Override
    public List<Ink.Written> written() {
        return lastInk == null ? List.of() : lastInk.written();
    }

    @Override
    public AccessibleContext getAccessibleContext() {
        if (accessibleContext == null) {
            accessibleContext = new AccessibleJComponent() {
                private static final long serialVersionUID = 1;

                @Override
                public AccessibleRole getAccessibleRole() {
                    return AccessibleRole.PANEL;
                }
            };
        }
        return accessibleContext;
    }
}
