package org.docksweep.kiosk.screens;

import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.Optional;
import org.docksweep.fleet.TestPoint;
import org.docksweep.kiosk.dock.DockState;

/** Which contacts to plug, drawn. */
final class PlugPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient Optional<TestPoint> point = Optional.empty();

    PlugPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(DockState state) {
        point = Guide.testPoint(state);
        getAccessibleContext()
                .setAccessibleName(
                        point.map(p -> texts.say("plug.into", p.contacts())).orElse(""));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (point.isEmpty()) {
            return;
        }
        Rectangle box = inside(16);
        String contacts = point.get().contacts();
        ink.line(
                texts.say("plug.into", contacts),
                sizes.bold(26),
                Look.color("ink"),
                new Rectangle(box.x, box.y, box.width, sizes.px(36)),
                Ink.Align.CENTRE);
        int top = box.y + sizes.px(40);
        new ConnectorDrawing(sizes)
                .paint(g, ink, contacts, new Rectangle(box.x, top, box.width, box.y + box.height - top));
    }
}
