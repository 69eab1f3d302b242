package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Strip;

/** Top strip: house, rig, what waits to be sent, operator, clock. Coloured only where a person must act. */
final class StripPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient Strip strip;

    StripPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(Strip next) {
        if (!next.equals(strip)) {
            strip = next;
            getAccessibleContext()
                    .setAccessibleName(
                            next.siteName() + ". " + texts.say(next.rig()) + ". " + sending() + ". " + next.operator());
            repaint();
        }
    }

    private String sending() {
        if (strip.trouble().isPresent()) {
            return texts.say("strip.trouble", strip.trouble().get()) + texts.say("strip.kept", strip.waitingToSend());
        }
        if (strip.refused() > 0) {
            return texts.say("strip.refused", strip.refused(), strip.waitingToSend() - strip.refused());
        }
        return strip.waitingToSend() == 0
                ? texts.say("strip.all-sent")
                : texts.say("strip.waiting", strip.waitingToSend());
    }

    private ReadingState sendingState() {
        return strip.trouble().isPresent() || strip.refused() > 0 ? ReadingState.WATCH : ReadingState.OK;
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        g.setColor(Look.color("card"));
        g.fillRect(0, 0, getWidth(), getHeight());
        g.setColor(Look.color("line"));
        g.fillRect(0, getHeight() - sizes.px(1), getWidth(), sizes.px(1));
        if (strip == null) {
            return;
        }
        int gap = sizes.px(24);
        int x = sizes.px(16);
        x += word(g, ink, x, strip.siteName(), sizes.bold(18), Look.color("ink")) + gap;
        x += cell(g, ink, x, strip.rigState(), texts.say(strip.rig())) + gap;
        cell(g, ink, x, sendingState(), sending());
        String clock = texts.clock(strip.now());
        Font clockFont = sizes.bold(24);
        int right = getWidth() - sizes.px(16) - (int) Math.ceil(Ink.width(clock, clockFont));
        word(g, ink, right, clock, clockFont, Look.color("ink"));
        right -= gap + (int) Math.ceil(Ink.width(strip.operator(), sizes.regular(18)));
        word(g, ink, right, strip.operator(), sizes.regular(18), Look.color("quiet"));
    }

    private int word(Graphics2D g, Ink ink, int x, String text, Font font, Color color) {
        int width = (int) Math.ceil(Ink.width(text, font));
        ink.line(text, font, color, new Rectangle(x, 0, width, getHeight()), Ink.Align.LEFT);
        return width;
    }

    /** A state with its sign; on a coloured ground only when somebody must act. */
    private int cell(Graphics2D g, Ink ink, int x, ReadingState state, String text) {
        boolean act = state == ReadingState.WATCH || state == ReadingState.FAULT;
        Tone tone = Tone.of(state);
        Font font = act ? sizes.semiBold(18) : sizes.regular(18);
        int textWidth = (int) Math.ceil(Ink.width(text, font));
        int sign = sizes.px(20);
        int width = sizes.px(12) * 2 + sign + sizes.px(8) + textWidth;
        Color ink1 = act ? tone.onPlate() : Look.color("quiet");
        if (act) {
            g.setColor(tone.plate());
            g.fillRect(x, 0, width, getHeight());
        }
        int top = (getHeight() - sign) / 2;
        Sign.of(state).paint(g, x + sizes.px(12), top, sign, ink1, act ? tone.plate() : Look.color("card"));
        ink.line(
                text,
                font,
                ink1,
                new Rectangle(x + sizes.px(12) + sign + sizes.px(8), 0, textWidth, getHeight()),
                Ink.Align.LEFT);
        return width;
    }
}
