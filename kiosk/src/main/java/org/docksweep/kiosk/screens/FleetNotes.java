package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import org.docksweep.kiosk.teaching.ModelStanding;
import org.docksweep.kiosk.teaching.TeachingState;
import org.docksweep.kiosk.teaching.TeachingState.Activity;

/** What is asked now; under it who taught the marked model, or how far the lesson has come. */
final class FleetNotes extends PaintedPanel {
    private static final long serialVersionUID = 1;

    private transient TeachingState state;
    private int y;

    FleetNotes(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("fleet-notes");
    }

    void show(TeachingState next) {
        state = next;
        getAccessibleContext().setAccessibleName(texts.say(next.prompt()));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (state == null) {
            return;
        }
        y = sizes.px(12);
        state.sweepShare().ifPresent(share -> {
            Rectangle bar = new Rectangle(sizes.px(16), y, getWidth() - sizes.px(32), sizes.px(24));
            g.setColor(Look.color("well"));
            g.fill(bar);
            g.setColor(Tone.ACT.ink());
            g.fill(new Rectangle(bar.x, bar.y, (int) (bar.width * share), bar.height));
            y += sizes.px(32);
        });
        String prompt = texts.say(state.prompt());
        Rectangle box = rest(sizes.px(124));
        Font font =
                Ink.fitting(prompt, sizes::semiBold, new double[] {22, 20, 18, 17, 16, 15, 14}, box.width, box.height);
        y += ink.paragraph(prompt, font, Look.color("ink"), box) + sizes.px(10);
        if (state.activity() == Activity.MODELS && state.marked() >= 0) {
            state.models().get(state.marked()).points().forEach(p -> point(ink, p));
        }
        state.lesson().flatMap(TeachingState.LessonAtHand::progress).ifPresent(p -> progress(ink, p));
    }

    private void point(Ink ink, ModelStanding.Point point) {
        String label = texts.say("fleet.note.point", point.code());
        if (point.units() == 0) {
            fact(ink, label, texts.say("fleet.note.untaught"));
        } else if (point.taught().isEmpty()) {
            fact(ink, label, texts.say("fleet.note.units", point.units()));
        } else {
            String by = point.taught().get().taughtBy();
            fact(
                    ink,
                    label,
                    texts.say("fleet.note.units", point.units()) + ", "
                            + texts.dayAndClock(point.taught().get().taughtAt()) + (by == null ? "" : ", " + by));
        }
    }

    private void progress(Ink ink, TeachingState.Progress progress) {
        fact(ink, texts.say("fleet.note.kept"), texts.say("fleet.note.units", progress.kept()));
        if (progress.soundOnly()) {
            fact(ink, texts.say("fleet.note.sound"), texts.say("fleet.note.sound-only"));
            return;
        }
        fact(
                ink,
                texts.say("fleet.note.fit"),
                texts.say("fleet.note.fits", progress.unfitted() * 100, progress.unexplained() * 100));
        fact(
                ink,
                texts.say("fleet.note.alike"),
                texts.say("fleet.note.alike-count", progress.alike(), progress.faults()));
    }

    /** A label over a value, when there is room for both. */
    private void fact(Ink ink, String label, String value) {
        Rectangle line = rest(sizes.px(20));
        Font font = Ink.fitting(value, sizes::semiBold, new double[] {18, 17, 16, 15, 14}, line.width, sizes.px(24));
        int height = Ink.wrap(value, font, line.width).size() * (int) Math.ceil(Ink.lineHeight(font));
        if (y + sizes.px(20) + height > getHeight() - sizes.px(8)) {
            return;
        }
        Font small = Ink.fitting(label, sizes::regular, new double[] {15, 14, 13, 12, 11}, line.width, sizes.px(20));
        ink.line(label, small, Look.color("quiet"), line, Ink.Align.LEFT);
        y += sizes.px(20);
        ink.paragraph(value, font, Look.color("ink"), rest(height));
        y += height + sizes.px(8);
    }

    private Rectangle rest(int height) {
        int pad = sizes.px(16);
        return new Rectangle(
                pad, y, getWidth() - 2 * pad, Math.max(1, Math.min(height, getHeight() - y - sizes.px(8))));
    }
}
