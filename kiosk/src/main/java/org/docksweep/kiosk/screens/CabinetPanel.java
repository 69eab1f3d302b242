package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.kiosk.dock.DockState.CabinetAtHand;

/** The cabinet at hand, front on, every driver carrying its own sign, word and headline reading. */
final class CabinetPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;
    /** Two people lift from here (common practice, no source; as in {@link org.docksweep.fleet.CabinetModel}). */
    private static final double TWO_PEOPLE_KG = 25;

    private transient Optional<CabinetAtHand> cabinet = Optional.empty();

    /** What is shown, as signs with a word each, while no cabinet is at hand. */
    private final transient List<Sign> steps;

    CabinetPanel(Sizes sizes, Texts texts, List<Sign> steps) {
        super(sizes, texts);
        this.steps = steps;
    }

    void show(Optional<CabinetAtHand> next) {
        cabinet = next;
        getAccessibleContext().setAccessibleName(next.map(this::spoken).orElse(texts.say("cabinet.none")));
        repaint();
    }

    private String spoken(CabinetAtHand at) {
        return at.tag() + ", " + at.model().name() + ": "
                + at.positions().stream()
                        .map(p -> p.positionCode() + " " + texts.say(p.word())
                                + (p.headline() == null ? "" : ", " + p.headline()))
                        .collect(Collectors.joining("; "));
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        Rectangle box = inside(16);
        if (cabinet.isEmpty()) {
            empty(g, ink, box);
            return;
        }
        CabinetAtHand at = cabinet.get();
        header(g, ink, at, box);
        int top = box.y + sizes.px(72);
        int facts = sizes.px(168);
        facts(ink, at, new Rectangle(box.x, top, facts, box.y + box.height - top));
        Rectangle right = new Rectangle(
                box.x + facts + sizes.px(16), top, box.width - facts - sizes.px(16), box.y + box.height - top);
        if (at.model().widthMm() > at.model().heightMm() * 1.2) {
            wide(g, ink, at, right);
        } else {
            tall(g, ink, at, right);
        }
    }

    /** Before the first scan. */
    private void empty(Graphics2D g, Ink ink, Rectangle box) {
        ink.line(
                texts.say("cabinet.none"),
                sizes.semiBold(24),
                Look.color("quiet"),
                new Rectangle(box.x, box.y + box.height / 2 - sizes.px(120), box.width, sizes.px(40)),
                Ink.Align.CENTRE);
        int size = sizes.px(72);
        int cell = box.width / Math.max(1, steps.size());
        int y = box.y + box.height / 2 - sizes.px(40);
        for (int i = 0; i < steps.size(); i++) {
            double x = box.x + i * cell + (cell - size) / 2.0;
            steps.get(i).paint(g, x, y, size, Look.color("faint"), Look.color("quiet"));
            ink.line(
                    (i + 1) + "  " + texts.say("step." + steps.get(i).name()),
                    sizes.regular(18),
                    Look.color("quiet"),
                    new Rectangle(box.x + i * cell, y + size + sizes.px(8), cell, sizes.px(28)),
                    Ink.Align.CENTRE);
        }
    }

    private void header(Graphics2D g, Ink ink, CabinetAtHand at, Rectangle box) {
        Rectangle tagBox = new Rectangle(box.x, box.y - sizes.px(4), box.width, sizes.px(64));
        at.queuedScan().ifPresent(next -> {
            Font font = sizes.semiBold(18);
            int width = (int) Math.ceil(Ink.width(next.value(), font)) + sizes.px(24);
            Rectangle chip = new Rectangle(box.x + box.width - width, box.y, width, sizes.px(56));
            g.setColor(Tone.ACT.wash());
            g.fill(chip);
            Rectangle line = new Rectangle(chip.x, chip.y + sizes.px(4), chip.width, sizes.px(24));
            ink.line(texts.say("cabinet.queued"), sizes.regular(16), Tone.ACT.ink(), line, Ink.Align.CENTRE);
            line.y += sizes.px(24);
            ink.line(next.value(), font, Tone.ACT.ink(), line, Ink.Align.CENTRE);
            tagBox.width -= width + sizes.px(12);
        });
        String tag = at.tag().value();
        Font font = Ink.fitting(tag, sizes::bold, new double[] {60, 54, 48, 42, 36}, tagBox.width, sizes.px(80));
        ink.line(tag, font, Look.color("ink"), tagBox, Ink.Align.LEFT);
    }

    private void facts(Ink ink, CabinetAtHand at, Rectangle box) {
        int y = box.y;
        y += fact(ink, texts.say("cabinet.model"), at.model().name(), box, y);
        if (!at.shelfPlace().isBlank()) {
            y += fact(ink, texts.say("cabinet.place"), at.shelfPlace(), box, y);
        }
        String mass = texts.say("cabinet.mass", Math.round(at.model().massKg()));
        y += fact(
                ink,
                mass,
                at.model().massKg() >= TWO_PEOPLE_KG
                        ? texts.say("cabinet.two-people")
                        : texts.say("cabinet.one-person"),
                box,
                y);
        List<HistoryEvent> recent = at.recent();
        if (!recent.isEmpty()) {
            ink.line(
                    texts.say("cabinet.last"),
                    sizes.regular(15),
                    Look.color("quiet"),
                    new Rectangle(box.x, y, box.width, sizes.px(22)),
                    Ink.Align.LEFT);
            y += sizes.px(22);
            Rectangle rest = new Rectangle(box.x, y, box.width, box.y + box.height - y);
            String text = texts.say(recent.get(0).text());
            Font font = Ink.fitting(text, sizes::semiBold, new double[] {16, 15, 14, 13, 12}, rest.width, rest.height);
            ink.paragraph(text, font, Look.color("ink"), rest);
        }
    }

    private int fact(Ink ink, String label, String value, Rectangle box, int y) {
        ink.line(
                label,
                sizes.regular(15),
                Look.color("quiet"),
                new Rectangle(box.x, y, box.width, sizes.px(20)),
                Ink.Align.LEFT);
        Rectangle at = new Rectangle(box.x, y + sizes.px(20), box.width, sizes.px(42));
        double[] large = {19, 18, 17};
        Font font = Ink.fitting(value, sizes::semiBold, large, at.width, sizes.px(26));
        if (Ink.wrap(value, font, at.width).size() > 1) {
            font = Ink.fitting(value, sizes::semiBold, new double[] {16, 15, 14}, at.width, at.height);
        }
        return sizes.px(30) + ink.paragraph(value, font, Look.color("ink"), at);
    }

    /** High cabinets: drawing left, callouts in a column beside it. */
    private void tall(Graphics2D g, Ink ink, CabinetAtHand at, Rectangle box) {
        int calloutWidth = sizes.px(184);
        Rectangle area = new Rectangle(box.x, box.y, box.width - calloutWidth - sizes.px(24), box.height);
        CabinetDrawing drawing = new CabinetDrawing(at.model(), area);
        drawing.paintFront(g, sizes);
        List<DriverPosition> order = new ArrayList<>(at.model().positions());
        order.sort(Comparator.comparingDouble(DriverPosition::centreYMm));
        int height = Math.min(sizes.px(92), box.height / order.size());
        int x = box.x + box.width - calloutWidth;
        int lowestTop = box.y;
        for (int i = 0; i < order.size(); i++) {
            Rectangle2D mouth = drawing.mouthBox(order.get(i));
            int latest = box.y + box.height - (order.size() - i) * height;
            int top = Math.max(lowestTop, Math.min(latest, (int) mouth.getCenterY() - height / 2));
            lowestTop = top + height;
            g.setColor(Look.color("line"));
            g.setStroke(sizes.stroke(1.5));
            int elbow = top + sizes.px(20);
            g.draw(Sign.polyline(mouth.getMaxX(), mouth.getCenterY(), x - sizes.px(24), elbow, x - sizes.px(8), elbow));
            driver(g, ink, at, drawing, order.get(i), new Rectangle(x, top, calloutWidth, height));
        }
    }

    /** Wide cabinets: drawing on top, callouts in columns under it. */
    private void wide(Graphics2D g, Ink ink, CabinetAtHand at, Rectangle box) {
        int calloutHeight = sizes.px(92);
        Rectangle area = new Rectangle(box.x, box.y, box.width, box.height - calloutHeight - sizes.px(12));
        CabinetDrawing drawing = new CabinetDrawing(at.model(), area);
        drawing.paintFront(g, sizes);
        List<DriverPosition> order = new ArrayList<>(at.model().positions());
        order.sort(Comparator.comparingDouble(DriverPosition::centreXMm));
        int width = box.width / order.size();
        for (int i = 0; i < order.size(); i++) {
            Rectangle2D mouth = drawing.mouthBox(order.get(i));
            int x = box.x + i * width;
            int top = box.y + box.height - calloutHeight;
            g.setColor(Look.color("line"));
            g.setStroke(sizes.stroke(1.5));
            g.draw(new Line2D.Double(mouth.getCenterX(), mouth.getMaxY(), x + width / 2.0, top - sizes.px(2)));
            driver(
                    g,
                    ink,
                    at,
                    drawing,
                    order.get(i),
                    new Rectangle(x + sizes.px(8), top, width - sizes.px(16), calloutHeight));
        }
    }

    private void driver(
            Graphics2D g, Ink ink, CabinetAtHand at, CabinetDrawing drawing, DriverPosition position, Rectangle box) {
        Optional<PositionState> found = at.positions().stream()
                .filter(p -> p.positionCode().equals(position.code()))
                .findFirst();
        ReadingState state = found.map(PositionState::state).orElse(ReadingState.NOT_JUDGED);
        Tone tone = Tone.of(state);
        Rectangle2D mouth = drawing.mouthBox(position);
        if (state != ReadingState.NOT_JUDGED) {
            g.setColor(tone.plate());
            g.setStroke(sizes.stroke(state == ReadingState.OK ? 3 : 5));
            g.draw(drawing.mouth(position));
            double size = Math.min(sizes.px(state == ReadingState.OK ? 32 : 48), mouth.getHeight() * 0.8);
            Sign.of(state)
                    .paint(
                            g,
                            mouth.getCenterX() - size / 2,
                            mouth.getCenterY() - size / 2,
                            size,
                            tone.plate(),
                            tone.onPlate());
        }
        String word = position.code()
                + found.filter(p -> state != ReadingState.NOT_JUDGED)
                        .map(p -> " " + texts.say(p.word()))
                        .orElse("");
        Rectangle line = new Rectangle(box.x, box.y + sizes.px(4), box.width, sizes.px(32));
        Font font = Ink.fitting(
                word, sizes::bold, new double[] {24, 22, 20, 18, 17, 16, 15, 14, 13}, line.width, line.height);
        ink.line(word, font, state == ReadingState.NOT_JUDGED ? Look.color("quiet") : tone.ink(), line, Ink.Align.LEFT);
        found.map(PositionState::headline).ifPresent(headline -> {
            Rectangle rest = new Rectangle(box.x, box.y + sizes.px(38), box.width, box.height - sizes.px(38));
            Font small = Ink.fitting(headline, sizes::regular, new double[] {18, 17, 16, 15}, rest.width, rest.height);
            ink.paragraph(headline, small, Look.color("ink"), rest);
        });
    }
}
