package org.docksweep.kiosk.screens;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.awt.geom.Rectangle2D;
import java.awt.geom.RoundRectangle2D;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.docksweep.fleet.VisualItem;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/** Under the huge word: where it goes, one sentence why, suspects, what to do next, the tag. */
final class AnswerBody extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int SUSPECTS_SHOWN = 3;
    private static final double[] SENTENCE_SIZES = {22, 20, 18, 17, 16};

    private transient DockState state;
    private transient Guide guide;
    private transient Set<VisualItem> marked = Set.of();
    private int y;

    AnswerBody(Sizes sizes, Texts texts) {
        super(sizes, texts);
    }

    /**
     * Shows a state.
     *
     * @param demand what it demands
     * @param marks items marked as not fine and not yet handed over
     */
    void show(DockState next, Guide demand, Set<VisualItem> marks) {
        state = next;
        guide = demand;
        marked = marks;
        getAccessibleContext().setAccessibleName(sentence());
        repaint();
    }

    private String sentence() {
        if (guide.equals(Guide.REGISTER)) {
            return texts.say("register.sentence");
        }
        return switch (state.phase()) {
            case READY ->
                switch (guide.word()) {
                    case "word.UNKNOWN" -> texts.say("unknown.sentence");
                    case "word.NOT_LISTED" -> texts.say("unlisted.sentence");
                    default -> texts.say("ready.sentence");
                };
            case LOOK ->
                marked.stream().anyMatch(VisualItem::forcesSafetyHold)
                        ? texts.say("look.safety")
                        : texts.say("look.sentence");
            case PLUG ->
                state.answer().map(answer -> texts.say(answer.reason())).orElseGet(() -> texts.say("plug.sentence"));
            case PROBE -> texts.say("probe.sentence");
            case SWEEP -> texts.say("sweep.sentence");
            case JUDGE -> texts.say("judge.sentence");
            case ANSWER ->
                state.answer().map(answer -> texts.say(answer.reason())).orElse("");
        };
    }

    @Override
    void paint(Graphics2D g, Ink ink) {
        card(g, Look.color("card"));
        if (state == null) {
            return;
        }
        y = sizes.px(12);
        if (guide.equals(Guide.REGISTER)) {
            say(ink, sentence(), sizes.px(160));
            return;
        }
        switch (state.phase()) {
            case READY -> say(ink, sentence(), sizes.px(120));
            case LOOK -> look(g, ink);
            case PLUG -> plug(ink);
            case PROBE, SWEEP, JUDGE -> progress(g, ink);
            case ANSWER -> state.answer().ifPresent(answer -> answer(g, ink, answer));
        }
    }

    private Rectangle row(int height) {
        int pad = sizes.px(16);
        return new Rectangle(pad, y, getWidth() - 2 * pad, height);
    }

    private void say(Ink ink, String text, int height) {
        Rectangle box = row(height);
        Font font = Ink.fitting(text, sizes::semiBold, SENTENCE_SIZES, box.width, box.height);
        y += ink.paragraph(text, font, Look.color("ink"), box) + sizes.px(10);
    }

    private void quiet(Ink ink, String text, int height) {
        Rectangle box = row(height);
        Font font = Ink.fitting(text, sizes::regular, new double[] {18, 17, 16}, box.width, box.height);
        y += ink.paragraph(text, font, Look.color("quiet"), box) + sizes.px(8);
    }

    /** As large as there is room for above the tag. */
    private void nextStep(Ink ink, String text, TagPrint print) {
        int below = switch (print) {
            case NOT_NEEDED -> 8;
            case FAILED, WAITS_AT_PRINTER, SAVED_TO_FOLDER -> 76;
            default -> 38;
        };
        Rectangle box = row(Math.max(sizes.px(40), getHeight() - sizes.px(below) - y));
        Font font = Ink.fitting(text, sizes::regular, new double[] {18, 17, 16, 15, 14, 13}, box.width, box.height);
        y += ink.paragraph(text, font, Look.color("quiet"), box) + sizes.px(8);
    }

    private void look(Graphics2D g, Ink ink) {
        say(ink, sentence(), sizes.px(140));
        if (!marked.isEmpty()) {
            String items = names(marked);
            mark(g, ink, marked.stream().anyMatch(VisualItem::forcesSafetyHold) ? Tone.FAULT : Tone.ATTENTION, items);
        }
    }

    private String names(Set<VisualItem> items) {
        return items.stream().sorted().map(i -> texts.say("item", i)).collect(Collectors.joining(", "));
    }

    /** A line with a sign on a pale band. */
    private void mark(Graphics2D g, Ink ink, Tone tone, String text) {
        Rectangle box = row(sizes.px(48));
        Font font =
                Ink.fitting(text, sizes::semiBold, new double[] {20, 18, 16}, box.width - sizes.px(56), sizes.px(72));
        List<String> lines = Ink.wrap(text, font, box.width - sizes.px(56));
        int lineHeight = (int) Math.ceil(Ink.lineHeight(font));
        box.height = Math.max(sizes.px(48), lines.size() * lineHeight + sizes.px(12));
        band(g, box, tone);
        Sign sign = tone == Tone.FAULT ? Sign.CROSS : tone == Tone.PASS ? Sign.TICK : Sign.EXCLAMATION;
        int size = sizes.px(28);
        sign.paint(g, box.x + sizes.px(10), box.y + (box.height - size) / 2.0, size, tone.ink(), tone.wash());
        ink.paragraph(
                text,
                font,
                Look.color("ink"),
                new Rectangle(
                        box.x + sizes.px(48),
                        box.y + (box.height - lines.size() * lineHeight) / 2,
                        box.width - sizes.px(56),
                        lines.size() * lineHeight));
        y += box.height + sizes.px(10);
    }

    private void band(Graphics2D g, Rectangle box, Tone tone) {
        g.setColor(tone.wash());
        g.fill(new RoundRectangle2D.Double(box.x, box.y, box.width, box.height, sizes.px(8), sizes.px(8)));
        g.setColor(tone.ink());
        g.fill(new Rectangle2D.Double(box.x, box.y + sizes.px(4), sizes.px(4), box.height - sizes.px(8)));
    }

    private void plug(Ink ink) {
        Guide.testPoint(state).ifPresent(point -> {
            ink.line(point.contacts(), sizes.bold(34), Look.color("ink"), row(sizes.px(48)), Ink.Align.LEFT);
            y += sizes.px(56);
            int index = state.cabinet().orElseThrow().model().testPoints().indexOf(point) + 1;
            int count = state.cabinet().orElseThrow().model().testPoints().size();
            quiet(ink, texts.say("plug.point", point.code(), index, count), sizes.px(48));
        });
        say(ink, sentence(), sizes.px(160));
    }

    private void progress(Graphics2D g, Ink ink) {
        state.progress().ifPresent(progress -> {
            Rectangle bar = row(sizes.px(32));
            g.setColor(Look.color("well"));
            g.fill(bar);
            g.setColor(Tone.ACT.ink());
            g.fill(new Rectangle2D.Double(bar.x, bar.y, bar.width * progress.share(), bar.height));
            g.setColor(Look.color("quiet"));
            g.setStroke(sizes.stroke(1.5));
            g.draw(bar);
            y += sizes.px(40);
            String where = texts.say("progress.where", progress.testPointCode(), progress.contacts());
            Rectangle line = row(sizes.px(28));
            ink.line(where, sizes.semiBold(18), Look.color("ink"), line, Ink.Align.LEFT);
            y += sizes.px(28);
            quiet(
                    ink,
                    texts.say("progress.share", Math.round(progress.share() * 100), progress.attempt()),
                    sizes.px(48));
        });
        say(ink, sentence(), sizes.px(110));
        if (state.phase() != DockState.Phase.JUDGE) {
            mark(g, ink, Tone.ATTENTION, texts.say("sweep.caution"));
        }
    }

    private void answer(Graphics2D g, Ink ink, Answer answer) {
        if (answer.route().isPresent()) {
            route(g, ink, answer);
        }
        if (answer.watch()) {
            String why = state.visualDamage().isEmpty()
                    ? texts.say("answer.watch")
                    : texts.say("answer.watch-damage", names(state.visualDamage()));
            mark(g, ink, Tone.ATTENTION, why);
        }
        // Trouble with the tag takes the place of the last suspect.
        boolean tagTrouble = answer.tagPrint() == TagPrint.FAILED
                || answer.tagPrint() == TagPrint.WAITS_AT_PRINTER
                || answer.tagPrint() == TagPrint.SAVED_TO_FOLDER;
        int suspects = Math.min(
                tagTrouble ? SUSPECTS_SHOWN - 1 : SUSPECTS_SHOWN,
                answer.suspects().size());
        say(ink, sentence(), sizes.px(suspects > 0 ? 112 : 200));
        for (Suspect suspect : answer.suspects().subList(0, suspects)) {
            suspect(g, ink, suspect);
        }
        if (suspects > 0) {
            nextStep(
                    ink,
                    texts.say("answer.first", texts.say(answer.suspects().get(0).nextStep())),
                    answer.tagPrint());
        } else if (answer.prompt() != org.docksweep.judge.Prompt.NONE) {
            quiet(ink, texts.say("next", answer.prompt()), sizes.px(96));
        }
        if (answer.tagPrint() != TagPrint.NOT_NEEDED) {
            tag(g, ink, answer);
        }
    }

    private void route(Graphics2D g, Ink ink, Answer answer) {
        boolean roomy = answer.suspects().isEmpty();
        Rectangle box = row(sizes.px(roomy ? 104 : 64));
        Tone tone = guide.tone();
        band(g, box, tone);
        int arrow = sizes.px(roomy ? 56 : 44);
        Sign.ARROW.paint(g, box.x + sizes.px(14), box.y + (box.height - arrow) / 2.0, arrow, tone.ink(), tone.wash());
        Rectangle place = new Rectangle(
                box.x + sizes.px(28) + arrow,
                box.y + sizes.px(2),
                box.width - sizes.px(36) - arrow,
                box.height - sizes.px(4));
        Font font = Ink.fitting(
                answer.place(),
                sizes::bold,
                new double[] {54, 50, 46, 42, 38, 34, 30, 28, 26, 24, 22, 20},
                place.width,
                place.height);
        List<String> lines = Ink.wrap(answer.place(), font, place.width);
        int lineHeight = (int) Math.ceil(Ink.lineHeight(font));
        int top = place.y + (place.height - lines.size() * lineHeight) / 2;
        for (String line : lines) {
            ink.line(
                    line,
                    font,
                    Look.color("ink"),
                    new Rectangle(place.x, top, place.width, lineHeight),
                    Ink.Align.LEFT);
            top += lineHeight;
        }
        y += box.height + sizes.px(10);
    }

    /** A short bar with the share of belief, its word and what it would be. */
    private void suspect(Graphics2D g, Ink ink, Suspect suspect) {
        // A window frame takes some height from a screen of 1280 x 800.
        Rectangle box = row(sizes.px(getHeight() < sizes.px(376) ? 39 : 44));
        String where = where(suspect);
        String what = where + " \u00b7 " + texts.say("fault", suspect.kind());
        String likelihood = texts.say("likelihood", suspect.likelihood());
        int word = (int) Math.ceil(Ink.width(likelihood, sizes.regular(16))) + sizes.px(8);
        Rectangle upper = new Rectangle(box.x, box.y, box.width - word, sizes.px(24));
        Font font = Ink.fitting(what, sizes::semiBold, new double[] {18, 17, 16, 15}, upper.width, upper.height);
        ink.line(what, font, Look.color("ink"), upper, Ink.Align.LEFT);
        ink.line(
                likelihood,
                sizes.regular(16),
                Look.color("quiet"),
                new Rectangle(box.x + box.width - word, box.y, word, sizes.px(24)),
                Ink.Align.RIGHT);
        double barTop = box.y + sizes.px(27);
        g.setColor(Look.color("faint"));
        g.fill(new Rectangle2D.Double(box.x, barTop, box.width, sizes.px(8)));
        g.setColor(Look.color("quiet"));
        g.fill(new Rectangle2D.Double(box.x, barTop, box.width * suspect.probability(), sizes.px(8)));
        y += box.height;
    }

    /** What to look for: the crossover part when it is one, else the driver position, else the contacts. */
    private static String where(Suspect suspect) {
        boolean part = suspect.kind() == FaultKind.PART_OPEN
                || suspect.kind() == FaultKind.PART_SHORTED
                || suspect.kind() == FaultKind.PART_DRIFTED;
        Stream<String> names = part
                ? Stream.of(suspect.elementId(), suspect.positionCode(), suspect.testPointCode())
                : Stream.of(suspect.positionCode(), suspect.elementId(), suspect.testPointCode());
        return names.filter(Objects::nonNull).findFirst().orElseThrow();
    }

    private void tag(Graphics2D g, Ink ink, Answer answer) {
        String code = answer.jobCode().map(Object::toString).orElse("");
        Tone tone = switch (answer.tagPrint()) {
            case FAILED -> Tone.FAULT;
            case SAVED_TO_FOLDER, WAITS_AT_PRINTER -> Tone.ATTENTION;
            default -> Tone.NEUTRAL;
        };
        String text = texts.say("tag." + answer.tagPrint().name(), code);
        if (tone == Tone.NEUTRAL) {
            Rectangle box =
                    new Rectangle(sizes.px(16), getHeight() - sizes.px(36), getWidth() - sizes.px(32), sizes.px(28));
            ink.line(text, sizes.regular(16), Look.color("quiet"), box, Ink.Align.LEFT);
        } else {
            mark(g, ink, tone, text);
        }
    }
}
