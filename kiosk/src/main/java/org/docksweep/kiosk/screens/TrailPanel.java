package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import org.docksweep.kiosk.dock.DockState.ScanEcho;

/** The last scans, newest first, as many as there is room for; each with its sign, time and outcome. */
final class TrailPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient List<ScanEcho> scans = List.of();

    TrailPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(List<ScanEcho> next) {
        scans = next;
        getAccessibleContext()
                .setAccessibleName(
                        next.isEmpty()
                                ? texts.say("trail.name")
                                : next.get(0).text() + ": "
                                        + texts.say(next.get(0).outcome()));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        int x = sizes.px(16);
        int sign = sizes.px(18);
        Font tagFont = sizes.semiBold(16);
        Font font = sizes.regular(16);
        for (ScanEcho scan : scans) {
            String tag = shortened(scan.text());
            String outcome = texts.say(scan.outcome());
            // A plain reading says no more than the tag itself.
            String rest = texts.clock(scan.at()) + (outcome.equals(scan.text()) ? "" : "  " + outcome);
            int tagWidth = (int) Math.ceil(Ink.width(tag, tagFont));
            int restWidth = (int) Math.ceil(Ink.width(rest, font));
            int width = sign + sizes.px(8) + tagWidth + sizes.px(8) + restWidth;
            if (x + width > getWidth() - sizes.px(16)) {
                break;
            }
            Tone tone = Tone.of(scan.state());
            Sign.of(scan.state()).paint(g, x, (getHeight() - sign) / 2.0, sign, tone.ink(), Look.color("ground"));
            ink.line(
                    tag,
                    tagFont,
                    Look.color("ink"),
                    new Rectangle(x + sign + sizes.px(8), 0, tagWidth, getHeight()),
                    Ink.Align.LEFT);
            ink.line(
                    rest,
                    font,
                    Look.color("quiet"),
                    new Rectangle(x + width - restWidth, 0, restWidth, getHeight()),
                    Ink.Align.LEFT);
            x += width + sizes.px(32);
        }
    }

    /** A scan may carry anything a scanner read; the trail shows the first of it. */
    static String shortened(String text) {
        return text.length() > 16 ? text.substring(0, 16) + "\u2026" : text;
    }
}
