package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigDeskState.Walk;
import org.docksweep.kiosk.rig.WalkStep;

/** A walk: its steps with what came of them, and in large what to plug now. */
final class RigWalkPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient RigDeskState state;

    RigWalkPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    void show(RigDeskState next) {
        state = next;
        next.walk()
                .ifPresent(walk -> getAccessibleContext()
                        .setAccessibleName(
                                walk.finished()
                                        ? texts.say(titleOf(walk, outcome(walk)))
                                        : title(walk) + ". " + instruction(walk)));
        repaint();
    }

    /** What a step wants in the far plug, in a word or two. */
    static String part(Texts texts, Walk walk, WalkStep step) {
        return switch (step) {
            case COMMON_MODE -> texts.say("rig.part.any", "8 \u03a9");
            case OPEN -> texts.say("rig.part.open");
            case SHORT, PLUG -> texts.say("rig.part.short");
            case LOAD -> ohm(walk.loadOhm());
            case CHECK_RESISTOR, STUDY_FIRST -> walk.checkNames().get(0);
            case CHECK_NETWORK, STUDY_SECOND -> walk.checkNames().get(1);
            case SOUND ->
                walk.checkNames().get(0).isEmpty()
                        ? texts.say("rig.part.known")
                        : walk.checkNames().get(0);
        };
    }

    private static String ohm(double value) {
        String text = Double.toString(value);
        return (text.endsWith(".0") ? text.substring(0, text.length() - 2) : text) + " \u03a9";
    }

    private String title(Walk walk) {
        WalkStep step = walk.steps().get(walk.at()).step();
        return stepName(walk, step);
    }

    /** Parts of a study have names of their own. */
    private String stepName(Walk walk, WalkStep step) {
        return WalkStep.STUDY.contains(step)
                ? texts.say("rig.step." + step.name(), part(texts, walk, step))
                : texts.say("rig.step", step);
    }

    private String instruction(Walk walk) {
        WalkStep step = walk.steps().get(walk.at()).step();
        return texts.say("rig.do." + step.name(), part(texts, walk, step), walk.contacts());
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (state == null || state.walk().isEmpty()) {
            return;
        }
        Walk walk = state.walk().get();
        Rectangle all = inside(16);
        int listWidth = sizes.px(272);
        steps(g, ink, walk, new Rectangle(all.x, all.y, listWidth, all.height));
        Rectangle right = new Rectangle(
                all.x + listWidth + sizes.px(24), all.y, all.width - listWidth - sizes.px(24), all.height);
        if (walk.finished()) {
            done(g, ink, right);
        } else {
            now(g, ink, walk, right);
        }
    }

    private void steps(Graphics2D g, Ink ink, Walk walk, Rectangle box) {
        int row = Math.min(sizes.px(60), box.height / walk.steps().size());
        for (int i = 0; i < walk.steps().size(); i++) {
            RigDeskState.Step step = walk.steps().get(i);
            Rectangle line = new Rectangle(box.x, box.y + i * row, box.width, row - sizes.px(6));
            boolean now = i == walk.at();
            if (now) {
                g.setColor(Tone.ACT.wash());
                g.fill(new RoundRectangle2D.Double(line.x, line.y, line.width, line.height, sizes.px(8), sizes.px(8)));
                g.setColor(Tone.ACT.ink());
                g.fillRect(line.x, line.y + sizes.px(6), sizes.px(5), line.height - sizes.px(12));
            }
            int sign = sizes.px(26);
            Tone tone = Tone.of(step.state());
            Sign.of(step.state())
                    .paint(
                            g,
                            line.x + sizes.px(14),
                            line.y + (line.height - sign) / 2.0,
                            sign,
                            tone.ink(),
                            now ? Tone.ACT.wash() : Look.color("card"));
            String name = (i + 1) + "  " + stepName(walk, step.step());
            Rectangle text = new Rectangle(line.x + sizes.px(52), line.y, line.width - sizes.px(58), line.height);
            Font font = Ink.fitting(
                    name,
                    now ? sizes::bold : sizes::regular,
                    new double[] {18, 17, 16, 15, 14, 13, 12},
                    text.width,
                    sizes.px(26));
            ink.line(name, font, Look.color(now ? "ink" : "quiet"), text, Ink.Align.LEFT);
        }
    }

    private void now(Graphics2D g, Ink ink, Walk walk, Rectangle box) {
        String title = title(walk);
        int titleHeight = sizes.px(64);
        Font large =
                Ink.fitting(title, sizes::bold, new double[] {48, 44, 40, 36, 32, 28, 24, 20}, box.width, titleHeight);
        ink.line(title, large, Look.color("ink"), new Rectangle(box.x, box.y, box.width, titleHeight), Ink.Align.LEFT);
        int resultHeight = sizes.px(104);
        Rectangle text = new Rectangle(
                box.x,
                box.y + titleHeight + sizes.px(8),
                box.width,
                box.height - titleHeight - resultHeight - sizes.px(24));
        String instruction = instruction(walk);
        Font font = Ink.fitting(
                instruction, sizes::regular, new double[] {26, 24, 22, 20, 18, 17, 16, 15}, text.width, text.height);
        ink.paragraph(instruction, font, Look.color("ink"), text);
        Rectangle result = new Rectangle(box.x, box.y + box.height - resultHeight, box.width, resultHeight);
        if (state.sounding()) {
            progress(g, ink, result);
        } else {
            RigDeskState.Step step = walk.steps().get(walk.at());
            if (step.words().isPresent()) {
                sentence(g, ink, step.state(), texts.say(step.words().get()), result);
            } else if (walk.at() > 0) {
                RigDeskState.Step before = walk.steps().get(walk.at() - 1);
                before.words().ifPresent(words -> sentence(g, ink, before.state(), texts.say(words), result));
            }
        }
    }

    /** A fault of any step is one of the walk; a study is poor or good. */
    private static ReadingState outcome(Walk walk) {
        boolean failed = walk.steps().stream().anyMatch(step -> step.state() == ReadingState.FAULT);
        boolean poor =
                walk.isStudy() && walk.steps().get(walk.steps().size() - 1).state() == ReadingState.WATCH;
        return failed ? ReadingState.FAULT : poor ? ReadingState.WATCH : ReadingState.OK;
    }

    private static String titleOf(Walk walk, ReadingState how) {
        if (walk.isStudy()) {
            return how == ReadingState.WATCH ? "rig.walk.study-poor" : "rig.walk.study";
        }
        if (walk.isSound()) {
            return how == ReadingState.FAULT ? "rig.walk.sound-failed" : "rig.walk.sound";
        }
        return how == ReadingState.FAULT ? "rig.walk.failed" : "rig.walk.done";
    }

    private void done(Graphics2D g, Ink ink, Rectangle box) {
        Walk walk = state.walk().orElseThrow();
        ReadingState how = outcome(walk);
        Tone tone = Tone.of(how);
        int sign = sizes.px(72);
        Sign.of(how).paint(g, box.x, box.y, sign, tone.ink(), Look.color("card"));
        String title = texts.say(titleOf(walk, how));
        Rectangle line = new Rectangle(box.x + sign + sizes.px(16), box.y, box.width - sign - sizes.px(16), sign);
        Font font =
                Ink.fitting(title, sizes::bold, new double[] {40, 36, 32, 28, 24, 20, 18}, line.width, sizes.px(56));
        ink.line(title, font, tone.ink(), line, Ink.Align.LEFT);
        int top = box.y + sign + sizes.px(16);
        // Of a study only what came of it matters.
        List<RigDeskState.Step> told = walk.isStudy()
                ? walk.steps().subList(walk.steps().size() - 1, walk.steps().size())
                : walk.steps();
        int height = (box.y + box.height - top) / told.size();
        double[] points = walk.isStudy() || walk.isSound()
                ? new double[] {24, 22, 20, 18, 17, 16, 15, 14}
                : new double[] {18, 17, 16, 15, 14, 13, 12};
        for (RigDeskState.Step step : told) {
            if (step.words().isPresent()) {
                String words = texts.say(step.words().get());
                Rectangle text = new Rectangle(box.x, top, box.width, height);
                Font small = Ink.fitting(words, sizes::regular, points, text.width, text.height);
                ink.paragraph(words, small, Look.color("ink"), text);
                top += height;
            }
        }
    }

    private void sentence(Graphics2D g, Ink ink, ReadingState how, String words, Rectangle box) {
        Tone tone = Tone.of(how);
        g.setColor(tone.wash());
        g.fill(new RoundRectangle2D.Double(box.x, box.y, box.width, box.height, sizes.px(8), sizes.px(8)));
        int sign = sizes.px(40);
        Sign.of(how).paint(g, box.x + sizes.px(16), box.y + (box.height - sign) / 2.0, sign, tone.ink(), tone.wash());
        Rectangle text = new Rectangle(
                box.x + sizes.px(72), box.y + sizes.px(8), box.width - sizes.px(84), box.height - sizes.px(16));
        Font font =
                Ink.fitting(words, sizes::semiBold, new double[] {22, 20, 18, 17, 16, 15, 14}, text.width, text.height);
        int height = Ink.wrap(words, font, text.width).size() * (int) Math.ceil(Ink.lineHeight(font));
        text.y += Math.max(0, (text.height - height) / 2);
        ink.paragraph(words, font, Look.color("ink"), text);
    }

    private void progress(Graphics2D g, Ink ink, Rectangle box) {
        int bar = sizes.px(28);
        g.setColor(Look.color("well"));
        g.fillRect(box.x, box.y + sizes.px(48), box.width, bar);
        g.setColor(Tone.ACT.ink());
        g.fillRect(box.x, box.y + sizes.px(48), (int) (box.width * state.share()), bar);
        String words = texts.say("rig.measuring");
        Font font = Ink.fitting(words, sizes::semiBold, new double[] {22, 20, 18, 16, 14}, box.width, sizes.px(40));
        ink.line(words, font, Look.color("ink"), new Rectangle(box.x, box.y, box.width, sizes.px(40)), Ink.Align.LEFT);
    }
}
