package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import org.docksweep.fleet.CabinetModel;

/** The front of a model large, and beside it some facts in plain words. */
final class FrontPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient CabinetModel model;
    private String title = "";
    private transient List<Fact> facts = List.of();

    FrontPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("fleet-front");
    }

    /** A label and its value. */
    record Fact(String label, String value) {}

    /** Shows a model; null for none. */
    void show(String newTitle, CabinetModel next, List<Fact> newFacts) {
        title = newTitle;
        model = next;
        facts = newFacts;
        StringBuilder spoken = new StringBuilder(newTitle);
        newFacts.forEach(f -> spoken.append(", ").append(f.label()).append(' ').append(f.value()));
        getAccessibleContext().setAccessibleName(spoken.toString());
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (model == null) {
            return;
        }
        Rectangle box = inside(16);
        Font font = Ink.fitting(
                title, sizes::bold, new double[] {44, 40, 36, 32, 28, 24, 20, 18, 16}, box.width, sizes.px(60));
        ink.line(title, font, Look.color("ink"), new Rectangle(box.x, box.y, box.width, sizes.px(60)), Ink.Align.LEFT);
        int top = box.y + sizes.px(72);
        int width = box.width / 2 - sizes.px(12);
        new CabinetDrawing(model, new Rectangle(box.x, top, width, box.y + box.height - top)).paintFront(g, sizes);
        int height = (box.y + box.height - top) / Math.max(1, facts.size());
        int x = box.x + box.width / 2 + sizes.px(12);
        for (int i = 0; i < facts.size(); i++) {
            fact(ink, facts.get(i), new Rectangle(x, top + i * height, width, height));
        }
    }

    private void fact(Ink ink, Fact fact, Rectangle box) {
        int labelHeight = sizes.px(22);
        Font small =
                Ink.fitting(fact.label(), sizes::regular, new double[] {15, 14, 13, 12, 11}, box.width, labelHeight);
        ink.line(
                fact.label(),
                small,
                Look.color("quiet"),
                new Rectangle(box.x, box.y, box.width, labelHeight),
                Ink.Align.LEFT);
        Rectangle rest = new Rectangle(box.x, box.y + labelHeight, box.width, box.height - labelHeight - sizes.px(4));
        Font font = Ink.fitting(
                fact.value(),
                sizes::semiBold,
                new double[] {26, 24, 22, 20, 18, 16, 15, 14, 13, 12},
                rest.width,
                rest.height);
        ink.paragraph(fact.value(), font, Look.color("ink"), rest);
    }
}
