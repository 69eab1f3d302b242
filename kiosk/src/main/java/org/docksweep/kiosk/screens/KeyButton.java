package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import javax.swing.JButton;

/** A button for gloves that shows its key. It never takes the focus: that stays with the scan line. */
class KeyButton extends JButton implements WritesText {
    private static final long serialVersionUID = 1;

    /** A glove often taps twice; the second tap must not hit what appears under it. */
    private static final int DOUBLE_TAP_MS = 500;

    final transient Sizes sizes;
    private transient Offer offer;
    private transient Ink lastInk;

    KeyButton(Sizes sizes) {
        this.sizes = sizes;
        setFocusable(false);
        setOpaque(false);
        setBorder(null);
        setContentAreaFilled(false);
        setMultiClickThreshhold(DOUBLE_TAP_MS);
        addActionListener(e -> offer.action().run());
    }

    /** Shows an offer. */
    void offer(Offer next) {
        offer = next;
        getAccessibleContext().setAccessibleName(next.label());
        getAccessibleContext().setAccessibleDescription(next.command().cap());
        setToolTipText(null);
        revalidate();
        repaint();
    }

    Offer offer() {
        return offer;
    }

    @Override
    public Dimension getPreferredSize() {
        double text = offer == null ? 0 : Ink.width(offer.label(), font()) + capWidth();
        return new Dimension((int) Math.ceil(text) + sizes.px(40), sizes.px(Sizes.TOUCH));
    }

    @Override
    public Dimension getMinimumSize() {
        return new Dimension(sizes.px(Sizes.TOUCH), sizes.px(Sizes.TOUCH));
    }

    Font font() {
        return offer != null && offer.kind() == Offer.Kind.PLAIN ? sizes.semiBold(18) : sizes.bold(24);
    }

    Font capFont() {
        return sizes.semiBold(16);
    }

    double capWidth() {
        return Math.max(Ink.width(offer.command().cap(), capFont()) + sizes.px(12), sizes.px(36));
    }

    Color fill() {
        Color fill = switch (offer.kind()) {
            case PRIMARY -> Tone.ACT.plate();
            case STOP -> Tone.FAULT.plate();
            case PLAIN -> Look.color("card");
        };
        return getModel().isPressed() && getModel().isArmed() ? mix(fill, Look.color("ink"), 0.25) : fill;
    }

    Color writing() {
        return switch (offer.kind()) {
            case PRIMARY -> Tone.ACT.onPlate();
            case STOP -> Tone.FAULT.onPlate();
            case PLAIN -> Look.color("ink");
        };
    }

    @Override
    protected void paintComponent(Graphics graphics) {
        Graphics2D g = (Graphics2D) graphics.create();
        PaintedPanel.smooth(g);
        Ink ink = new Ink(g);
        if (offer != null) {
            paintGround(g);
            paintContent(g, ink);
        }
        lastInk = ink;
        g.dispose();
    }

    void paintGround(Graphics2D g) {
        RoundRectangle2D body =
                new RoundRectangle2D.Double(1, 1, getWidth() - 2, getHeight() - 2, sizes.px(12), sizes.px(12));
        g.setColor(fill());
        g.fill(body);
        if (offer.kind() == Offer.Kind.PLAIN) {
            g.setColor(Look.color("quiet"));
            g.setStroke(sizes.stroke(1.5));
            g.draw(body);
        }
    }

    void paintContent(Graphics2D g, Ink ink) {
        int pad = sizes.px(12);
        int cap = (int) Math.ceil(capWidth());
        int capHeight = sizes.px(32);
        paintCap(g, ink, new Rectangle(pad, (getHeight() - capHeight) / 2, cap, capHeight));
        Rectangle box = new Rectangle(pad * 2 + cap, 0, getWidth() - pad * 3 - cap, getHeight());
        Font fitting = Ink.fitting(
                offer.label(),
                size -> font().deriveFont((float) (size * sizes.scale())),
                labelSizes(),
                box.width,
                box.height - sizes.px(8));
        List<String> lines = Ink.wrap(offer.label(), fitting, box.width);
        int lineHeight = (int) Math.ceil(Ink.lineHeight(fitting));
        int top = (getHeight() - lines.size() * lineHeight) / 2;
        for (int i = 0; i < lines.size(); i++) {
            ink.line(
                    lines.get(i),
                    fitting,
                    writing(),
                    new Rectangle(box.x, top + i * lineHeight, box.width, lineHeight),
                    Ink.Align.LEFT);
        }
    }

    private double[] labelSizes() {
        return switch (offer.kind()) {
            case STOP -> new double[] {52, 44, 38, 32, 28};
            case PRIMARY -> new double[] {30, 26, 24, 22, 20, 18};
            case PLAIN -> new double[] {18, 17, 16};
        };
    }

    void paintCap(Graphics2D g, Ink ink, Rectangle cap) {
        g.setColor(mix(fill(), writing(), 0.14));
        RoundRectangle2D key =
                new RoundRectangle2D.Double(cap.x, cap.y, cap.width, cap.height, sizes.px(6), sizes.px(6));
        g.fill(key);
        g.setColor(mix(fill(), writing(), 0.55));
        g.setStroke(sizes.stroke(1));
        g.draw(key);
        ink.line(offer.command().cap(), capFont(), writing(), cap, Ink.Align.CENTRE);
    }

    static Color mix(Color ground, Color over, double share) {
        return new Color(
                (int) (ground.getRed() + (over.getRed() - ground.getRed()) * share),
                (int) (ground.getGreen() + (over.getGreen() - ground.getGreen()) * share),
                (int) (ground.getBlue() + (over.getBlue() - ground.getBlue()) * share));
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
