package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Optional;
import org.docksweep.kiosk.teaching.TeachingState.LessonAtHand;
import org.docksweep.kiosk.teaching.TeachingState.Missed;
import org.docksweep.kiosk.teaching.TeachingState.Progress;
import org.docksweep.kiosk.teaching.TeachingState.UnitLine;

/** A lesson: its units, each kept or left out with the reason, and beside them what a gate taught so far would miss. */
final class LessonPanel extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int ROW = 44;
    private static final int HEAD = 72;

    private transient Optional<LessonAtHand> lesson = Optional.empty();

    LessonPanel(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("fleet-lesson");
    }

    void show(Optional<LessonAtHand> next) {
        lesson = next;
        getAccessibleContext()
                .setAccessibleName(
                        next.map(l -> texts.say("fleet.lesson.title", l.model().name()))
                                .orElse(""));
        repaint();
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (lesson.isEmpty()) {
            return;
        }
        LessonAtHand at = lesson.get();
        Rectangle box = inside(16);
        String title = texts.say("fleet.lesson.title", at.model().name());
        Font font =
                Ink.fitting(title, sizes::bold, new double[] {28, 26, 24, 22, 20, 18, 16, 14}, box.width, sizes.px(40));
        ink.line(title, font, Look.color("ink"), new Rectangle(box.x, box.y, box.width, sizes.px(40)), Ink.Align.LEFT);
        int width = (box.width - sizes.px(24)) / 2;
        Rectangle left = new Rectangle(box.x, box.y + sizes.px(HEAD), width, box.height - sizes.px(HEAD));
        Rectangle right = new Rectangle(box.x + width + sizes.px(24), left.y, width, left.height);
        heading(ink, texts.say("fleet.lesson.units", at.units().size()), left);
        units(g, ink, at.units(), left);
        at.progress().ifPresent(p -> {
            heading(ink, texts.say("fleet.lesson.missed", p.missed().size(), p.faults()), right);
            missed(g, ink, p, right);
        });
    }

    private void heading(Ink ink, String text, Rectangle column) {
        Rectangle line = new Rectangle(column.x, column.y - sizes.px(28), column.width, sizes.px(24));
        Font font =
                Ink.fitting(text, sizes::semiBold, new double[] {16, 15, 14, 13, 12, 11, 10}, line.width, line.height);
        ink.line(text, font, Look.color("quiet"), line, Ink.Align.LEFT);
    }

    /** The newest at the top; as many as there is room for. */
    private void units(Graphics2D g, Ink ink, List<UnitLine> units, Rectangle box) {
        int rows = box.height / sizes.px(ROW);
        for (int i = 0; i < Math.min(rows, units.size()); i++) {
            UnitLine unit = units.get(units.size() - 1 - i);
            int top = box.y + i * sizes.px(ROW);
            int sign = sizes.px(24);
            Sign.of(unit.state())
                    .paint(
                            g,
                            box.x,
                            top + sizes.px(8),
                            sign,
                            Tone.of(unit.state()).ink(),
                            Look.color("card"));
            int x = box.x + sign + sizes.px(10);
            int width = box.width - sign - sizes.px(10);
            Rectangle name = new Rectangle(x, top, width, sizes.px(unit.words().isPresent() ? 22 : 40));
            ink.line(unit.tag().value(), sizes.semiBold(17), Look.color("ink"), name, Ink.Align.LEFT);
            unit.words().ifPresent(words -> {
                String said = texts.say(words);
                Rectangle line = new Rectangle(x, top + sizes.px(22), width, sizes.px(20));
                Font font = Ink.fitting(
                        said, sizes::regular, new double[] {14, 13, 12, 11, 10, 9, 8}, line.width, line.height);
                ink.line(said, font, Look.color("ink"), line, Ink.Align.LEFT);
            });
        }
    }

    private void missed(Graphics2D g, Ink ink, Progress progress, Rectangle box) {
        int row = sizes.px(30);
        int rows = box.height / row;
        List<Missed> missed = progress.missed();
        if (missed.isEmpty()) {
            String said = texts.say(progress.soundOnly() ? "fleet.note.sound-only" : "fleet.lesson.none-missed");
            Rectangle rest = new Rectangle(box.x, box.y, box.width, box.height);
            Font font = Ink.fitting(said, sizes::regular, new double[] {17, 16, 15, 14, 13}, rest.width, rest.height);
            ink.paragraph(said, font, Look.color("ink"), rest);
            return;
        }
        boolean more = missed.size() > rows;
        int shown = more ? rows - 1 : missed.size();
        for (int i = 0; i < shown; i++) {
            Missed m = missed.get(i);
            int top = box.y + i * row;
            int bar = sizes.px(56);
            g.setColor(Look.color("well"));
            g.fillRect(box.x, top + sizes.px(8), bar, sizes.px(12));
            g.setColor(Tone.ATTENTION.ink());
            double full = org.docksweep.suspect.TeachingProgress.SURE;
            g.fillRect(box.x, top + sizes.px(8), (int) (bar * Math.min(1, m.deviations() / full)), sizes.px(12));
            line(
                    ink,
                    (m.where().isEmpty() ? "" : m.where() + ": ") + texts.say("fault", m.kind()),
                    new Rectangle(box.x + bar + sizes.px(10), top, box.width - bar - sizes.px(10), row));
        }
        if (more) {
            line(
                    ink,
                    texts.say("fleet.lesson.more", missed.size() - shown),
                    new Rectangle(box.x, box.y + shown * row, box.width, row));
        }
    }

    private void line(Ink ink, String text, Rectangle box) {
        Font font = Ink.fitting(text, sizes::regular, new double[] {16, 15, 14, 13, 12, 11, 10}, box.width, box.height);
        ink.line(text, font, Look.color("ink"), box, Ink.Align.LEFT);
    }
}
