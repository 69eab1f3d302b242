package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Line2D;
import java.awt.geom.RoundRectangle2D;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.rig.ChannelLevel;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigSetUp;
import org.docksweep.kiosk.rig.SetUpField;

/** The signal path from output to far plug as blocks, and the inputs it comes back to as live meters. */
final class RigPathPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    /** What a meter shows at its left end. */
    private static final double METER_FROM_DBFS = -80;

    /** Above this an input has too little room (docs/rig.md plans 15 dB for the lowest load). */
    private static final double HOT_DBFS = -6;

    private transient RigDeskState state;
    private transient RigSetUp setUp;

    RigPathPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(RigDeskState next, RigSetUp shown) {
        state = next;
        setUp = shown;
        StringBuilder words = new StringBuilder(texts.say("rig.path"));
        next.levels()
                .forEach(level ->
                        words.append(". ").append(name(level)).append(' ').append(db(level)));
        getAccessibleContext().setAccessibleName(words.toString());
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (state == null) {
            return;
        }
        Rectangle all = inside(12);
        int metersWidth = (int) (all.width * 0.46);
        blocks(g, ink, new Rectangle(all.x, all.y, all.width - metersWidth - sizes.px(24), all.height));
        meters(g, ink, new Rectangle(all.x + all.width - metersWidth, all.y, metersWidth, all.height));
    }

    private record Block(String name, String value) {}

    private void blocks(Graphics2D g, Ink ink, Rectangle area) {
        List<Block> blocks = new ArrayList<>();
        boolean real = state.canSetUp();
        blocks.add(new Block(texts.say("rig.block.output"), real ? setUp.value(SetUpField.OUTPUT) : "1"));
        blocks.add(new Block(
                texts.say("rig.block.amplifier"),
                real ? texts.say("rig.amplifier." + setUp.value(SetUpField.AMPLIFIER)) : texts.say("rig.practice")));
        blocks.add(new Block(
                texts.say("rig.block.sense"),
                real && !setUp.value(SetUpField.SENSE_OHM).isBlank()
                        ? setUp.value(SetUpField.SENSE_OHM) + " \u03a9"
                        : "\u2013"));
        blocks.add(new Block(texts.say("rig.block.plug"), plugged()));
        int gap = sizes.px(24);
        int width = (area.width - gap * (blocks.size() - 1)) / blocks.size();
        int height = Math.min(area.height, sizes.px(104));
        int top = area.y + (area.height - height) / 2;
        for (int i = 0; i < blocks.size(); i++) {
            Rectangle box = new Rectangle(area.x + i * (width + gap), top, width, height);
            block(g, ink, blocks.get(i), box, i == blocks.size() - 1);
            if (i + 1 < blocks.size()) {
                g.setColor(state.sounding() ? Tone.ACT.ink() : Look.color("line"));
                g.setStroke(sizes.stroke(state.sounding() ? 4 : 2));
                double y = box.getCenterY();
                g.draw(new Line2D.Double(box.getMaxX() + sizes.px(3), y, box.getMaxX() + gap - sizes.px(4), y));
                g.draw(new Line2D.Double(
                        box.getMaxX() + gap - sizes.px(10), y - sizes.px(6), box.getMaxX() + gap - sizes.px(4), y));
                g.draw(new Line2D.Double(
                        box.getMaxX() + gap - sizes.px(10), y + sizes.px(6), box.getMaxX() + gap - sizes.px(4), y));
            }
        }
    }

    /** What the step at hand wants in the far plug. */
    private String plugged() {
        return state.walk()
                .filter(walk -> !walk.finished())
                .map(walk -> RigWalkPanel.part(
                        texts, walk, walk.steps().get(walk.at()).step()))
                .orElse("1+ / 1-");
    }

    private void block(Graphics2D g, Ink ink, Block block, Rectangle box, boolean last) {
        boolean wanted = last && state.walk().filter(w -> !w.finished()).isPresent();
        RoundRectangle2D shape =
                new RoundRectangle2D.Double(box.x, box.y, box.width, box.height, sizes.px(8), sizes.px(8));
        g.setColor(wanted ? Tone.ACT.wash() : Look.color("well"));
        g.fill(shape);
        g.setColor(wanted ? Tone.ACT.ink() : Look.color("line"));
        g.setStroke(sizes.stroke(wanted ? 3 : 1.5));
        g.draw(shape);
        int pad = sizes.px(4);
        Rectangle name = new Rectangle(box.x + pad, box.y + sizes.px(8), box.width - 2 * pad, sizes.px(40));
        fill(ink, block.name(), name, false, 15, 14, 13, 12, 11);
        Rectangle value =
                new Rectangle(box.x + pad, box.y + sizes.px(52), box.width - 2 * pad, box.height - sizes.px(58));
        fill(ink, block.value(), value, true, 22, 20, 18, 17, 16, 15, 14, 13, 12, 11);
    }

    /** A text centred in a box, in the largest size that fits. */
    private void fill(Ink ink, String text, Rectangle box, boolean strong, double... from) {
        Font font = Ink.fitting(text, strong ? sizes::bold : sizes::regular, from, box.width, box.height);
        List<String> lines = Ink.wrap(text, font, box.width);
        int height = (int) Math.ceil(Ink.lineHeight(font));
        int top = box.y + Math.max(0, (box.height - height * lines.size()) / 2);
        for (int i = 0; i < lines.size(); i++) {
            ink.line(
                    lines.get(i),
                    font,
                    Look.color(strong ? "ink" : "quiet"),
                    new Rectangle(box.x, top + i * height, box.width, height),
                    Ink.Align.CENTRE);
        }
    }

    private void meters(Graphics2D g, Ink ink, Rectangle area) {
        if (state.levels().isEmpty()) {
            String none = texts.say("rig.levels.none");
            Font font = Ink.fitting(none, sizes::regular, new double[] {18, 17, 16, 15, 14}, area.width, area.height);
            int height = Ink.wrap(none, font, area.width).size() * (int) Math.ceil(Ink.lineHeight(font));
            ink.paragraph(
                    none,
                    font,
                    Look.color("quiet"),
                    new Rectangle(area.x, area.y + (area.height - height) / 2, area.width, height + sizes.px(2)));
            return;
        }
        int row = Math.min(sizes.px(36), area.height / state.levels().size());
        int top = area.y + (area.height - row * state.levels().size()) / 2;
        for (ChannelLevel level : state.levels()) {
            meter(g, ink, level, new Rectangle(area.x, top, area.width, row));
            top += row;
        }
    }

    private void meter(Graphics2D g, Ink ink, ChannelLevel level, Rectangle box) {
        int nameWidth = sizes.px(124);
        int dbWidth = sizes.px(96);
        Tone tone = level.clipped() ? Tone.FAULT : level.peakDbfs() > HOT_DBFS ? Tone.ATTENTION : Tone.PASS;
        String name = name(level);
        Font font = Ink.fitting(name, sizes::semiBold, new double[] {16, 15, 14, 13, 12, 11}, nameWidth, box.height);
        ink.line(name, font, Look.color("ink"), new Rectangle(box.x, box.y, nameWidth, box.height), Ink.Align.LEFT);
        Rectangle bar = new Rectangle(
                box.x + nameWidth + sizes.px(8),
                box.y + sizes.px(8),
                box.width - nameWidth - dbWidth - sizes.px(16),
                box.height - sizes.px(16));
        g.setColor(Look.color("well"));
        g.fill(bar);
        double share = Math.max(0, Math.min(1, 1 - level.peakDbfs() / METER_FROM_DBFS));
        g.setColor(tone.ink());
        g.fillRect(bar.x, bar.y, (int) (bar.width * share), bar.height);
        g.setColor(Look.color("line"));
        g.setStroke(sizes.stroke(1));
        g.draw(bar);
        Rectangle right = new Rectangle(box.x + box.width - dbWidth, box.y, dbWidth, box.height);
        if (level.clipped()) {
            int sign = sizes.px(20);
            Sign.CROSS.paint(g, right.x, right.y + (right.height - sign) / 2.0, sign, tone.ink(), Look.color("card"));
            right.x += sign + sizes.px(4);
            right.width -= sign + sizes.px(4);
        }
        String db = level.clipped() ? texts.say("rig.clipped") : db(level);
        Font dbFont =
                Ink.fitting(db, sizes::semiBold, new double[] {16, 15, 14, 13, 12, 11}, right.width, right.height);
        ink.line(db, dbFont, level.clipped() ? tone.ink() : Look.color("ink"), right, Ink.Align.RIGHT);
    }

    /** Name of a channel: its role, or its number with the role of the set-up. */
    private String name(ChannelLevel level) {
        return switch (level.name()) {
            case "VOLTAGE" -> texts.say("rig.role.voltage");
            case "CURRENT" -> texts.say("rig.role.current");
            case "MICROPHONE" -> texts.say("rig.role.microphone");
            case "FAR_MICROPHONE" -> texts.say("rig.role.farMicrophone");
            default -> level.name() + " " + texts.say("rig.role." + role(level.name()));
        };
    }

    private String role(String number) {
        return switch (number) {
            case "1" -> setUp.value(SetUpField.INPUT_1);
            case "2" -> setUp.value(SetUpField.INPUT_2);
            case "3" -> setUp.value(SetUpField.INPUT_3);
            case "4" -> setUp.value(SetUpField.INPUT_4);
            default -> "unused";
        };
    }

    private String db(ChannelLevel level) {
        return level.peakDbfs() <= ChannelLevel.SILENT_DBFS
                ? texts.say("rig.silent")
                : String.format(texts.locale(), "%.0f dBFS", level.peakDbfs()).replace('-', '\u2212');
    }
}
