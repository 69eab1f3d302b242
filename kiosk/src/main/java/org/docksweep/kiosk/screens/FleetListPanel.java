package org.docksweep.kiosk.screens;

import java.awt.Dimension;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.event.MouseAdapter;
import java.awt.event.MouseEvent;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.function.IntConsumer;
import org.docksweep.kiosk.teaching.ModelStanding;
import org.docksweep.kiosk.teaching.TeachingState;

/** The models of the house: front, name, whether the gate judges it and from how many units, where its cabinets are. */
final class FleetListPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int ROW = 92;
    private static final int HEAD = 40;

    private transient List<ModelStanding> models = List.of();
    private int marked = -1;
    private int first;

    FleetListPanel(Sizes sizes, Texts texts, IntConsumer mark) {
        super(sizes, texts);
        setName("fleet-models");
        addMouseListener(new MouseAdapter() {
            @Override
            public void mousePressed(MouseEvent event) {
                int row = (event.getY() - sizes.px(HEAD)) / sizes.px(ROW);
                if (event.getY() >= sizes.px(HEAD) && row < rows()) {
                    mark.accept(first + row);
                }
            }
        });
    }

    void show(TeachingState state) {
        models = state.models();
        marked = state.marked();
        getAccessibleContext()
                .setAccessibleName(
                        marked < 0
                                ? texts.say("fleet.models", 0)
                                : models.get(marked).model().name() + ", " + standing(models.get(marked)));
        repaint();
    }

    private int rows() {
        return Math.max(1, (getHeight() - sizes.px(HEAD + 8)) / sizes.px(ROW));
    }

    @Override
    public Dimension getPreferredSize() {
        return new Dimension(sizes.px(296), sizes.px(HEAD + ROW));
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        ink.line(
                texts.say("fleet.models", models.size()),
                sizes.semiBold(18),
                Look.color("ink"),
                new Rectangle(sizes.px(12), sizes.px(6), getWidth() - sizes.px(24), sizes.px(30)),
                Ink.Align.LEFT);
        int rows = rows();
        first = Math.max(0, Math.min(first, models.size() - rows));
        if (marked >= 0) {
            first = Math.max(Math.min(first, marked), marked - rows + 1);
        }
        for (int i = 0; i < rows && first + i < models.size(); i++) {
            Rectangle box = new Rectangle(
                    sizes.px(4), sizes.px(HEAD) + i * sizes.px(ROW), getWidth() - sizes.px(8), sizes.px(ROW - 4));
            row(g, ink, models.get(first + i), first + i == marked, box);
        }
    }

    private void row(Graphics2D g, Ink ink, ModelStanding standing, boolean current, Rectangle box) {
        if (current) {
            g.setColor(Tone.ACT.wash());
            g.fill(new RoundRectangle2D.Double(box.x, box.y, box.width, box.height, sizes.px(8), sizes.px(8)));
            g.setColor(Tone.ACT.ink());
            g.fillRect(box.x, box.y + sizes.px(6), sizes.px(5), box.height - sizes.px(12));
        }
        Rectangle picture =
                new Rectangle(box.x + sizes.px(10), box.y + sizes.px(6), sizes.px(60), box.height - sizes.px(12));
        new CabinetDrawing(standing.model(), picture).paintFront(g, sizes);
        int x = picture.x + picture.width + sizes.px(10);
        int width = box.x + box.width - x - sizes.px(6);
        String name = standing.model().name();
        Font bold = Ink.fitting(name, sizes::bold, new double[] {19, 18, 17, 16, 15, 14, 13}, width, sizes.px(26));
        Rectangle line = new Rectangle(x, box.y + sizes.px(4), width, sizes.px(26));
        ink.line(name, bold, Look.color("ink"), line, Ink.Align.LEFT);
        int sign = sizes.px(18);
        Tone tone = standing.taught() ? Tone.PASS : Tone.ATTENTION;
        (standing.taught() ? Sign.TICK : Sign.HAND)
                .paint(g, x, box.y + sizes.px(34), sign, tone.ink(), current ? Tone.ACT.wash() : Look.color("card"));
        small(
                ink,
                standing(standing),
                new Rectangle(x + sign + sizes.px(6), box.y + sizes.px(32), width - sign - sizes.px(6), sizes.px(22)),
                true);
        small(
                ink,
                texts.say("fleet.counts", standing.ready(), standing.out(), standing.bench(), standing.held()),
                new Rectangle(x, box.y + sizes.px(58), width, sizes.px(22)),
                false);
    }

    private String standing(ModelStanding standing) {
        return standing.taught() ? texts.say("fleet.taught", standing.fewestUnits()) : texts.say("fleet.untaught");
    }

    private void small(Ink ink, String text, Rectangle box, boolean strong) {
        Font font = Ink.fitting(
                text,
                strong ? sizes::semiBold : sizes::regular,
                new double[] {15, 14, 13, 12, 11, 10},
                box.width,
                box.height);
        ink.line(text, font, Look.color(strong ? "ink" : "quiet"), box, Ink.Align.LEFT);
    }
}
