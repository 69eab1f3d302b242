package org.docksweep.kiosk.screens;

import java.awt.Color;
import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.Rectangle;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.BenchJobFile;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.kiosk.bench.BenchState;
import org.docksweep.kiosk.bench.BenchState.Activity;
import org.docksweep.suspect.Suspect;

/** What is asked now, and what is known of the job: suspects, findings, parts, proof. Newest knowledge first. */
final class BenchNotes extends PaintedPanel {
    private static final long serialVersionUID = 1;
    private static final int SUSPECTS_SHOWN = 3;

    private transient BenchState state;
    private int y;

    BenchNotes(Sizes sizes, Texts texts) {
        super(sizes, texts);
        setName("bench-notes");
    }

    void show(BenchState next) {
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
        progress(g);
        String prompt = texts.say(state.prompt());
        Rectangle box = rest(sizes.px(124));
        Font font =
                Ink.fitting(prompt, sizes::semiBold, new double[] {22, 20, 18, 17, 16, 15, 14}, box.width, box.height);
        y += ink.paragraph(prompt, font, Look.color("ink"), box) + sizes.px(10);
        state.job().ifPresent(job -> known(ink, job.file()));
        if (state.activity() == Activity.QUEUE && state.marked() >= 0) {
            suspects(ink, state.queue().get(state.marked()));
        }
    }

    private void progress(Graphics2D g) {
        state.sweepShare().ifPresent(share -> {
            Rectangle bar = new Rectangle(sizes.px(16), y, getWidth() - sizes.px(32), sizes.px(24));
            g.setColor(Look.color("well"));
            g.fill(bar);
            g.setColor(Tone.ACT.ink());
            g.fill(new Rectangle(bar.x, bar.y, (int) (bar.width * share), bar.height));
            y += sizes.px(32);
        });
    }

    private void known(Ink ink, BenchJobFile file) {
        boolean repaired = !file.exchanges().isEmpty();
        if (!file.proofs().isEmpty() || file.job().state() == BenchJobBody.State.PROVING) {
            fact(
                    ink,
                    texts.say("bench.note.proof"),
                    texts.say("bench.note.clean-sweeps", file.proof().cleanCabinetSweeps()));
            file.proof()
                    .cleanDriverSweeps()
                    .forEach((position, clean) -> fact(
                            ink, texts.say("bench.note.bare", position), texts.say("bench.note.clean-sweeps", clean)));
        }
        latest(file.exchanges())
                .filter(e -> e.fitted() != null)
                .ifPresent(e -> fact(ink, texts.say("bench.note.part"), fitted(e)));
        latest(file.findings()).ifPresent(f -> fact(ink, texts.say("bench.note.finding"), finding(f)));
        if (!repaired) {
            suspects(ink, file.job());
        }
    }

    private static <T> Optional<T> latest(List<T> list) {
        return list.isEmpty() ? Optional.empty() : Optional.of(list.get(list.size() - 1));
    }

    private static String fitted(PartExchangeBody exchange) {
        String serial = exchange.fitted().serial();
        return exchange.fitted().partNumber() + (serial == null ? "" : " \u00b7 " + serial);
    }

    private String finding(FindingBody finding) {
        return (finding.positionCode() == null ? "" : finding.positionCode() + ": ")
                + texts.say("cause", finding.cause())
                + (finding.causeText() == null ? "" : ", " + finding.causeText());
    }

    private void suspects(Ink ink, BenchJobBody job) {
        for (Suspect suspect : job.suspects()
                .subList(0, Math.min(SUSPECTS_SHOWN, job.suspects().size()))) {
            String where = suspect.positionCode() != null ? suspect.positionCode() : suspect.elementId();
            fact(
                    ink,
                    texts.say("likelihood", suspect.likelihood()) + " \u00b7 " + Math.round(suspect.probability() * 100)
                            + " %",
                    (where == null ? "" : where + ": ") + texts.say("fault", suspect.kind()));
        }
        job.suspects().stream()
                .map(Suspect::split)
                .filter(Objects::nonNull)
                .findFirst()
                .ifPresent(split -> fact(ink, texts.say("bench.note.split"), texts.say(split)));
    }

    /** A label over a value, when there is room for both. */
    private void fact(Ink ink, String label, String value) {
        Rectangle line = rest(sizes.px(20));
        Font font = Ink.fitting(value, sizes::semiBold, new double[] {18, 17, 16, 15, 14}, line.width, sizes.px(24));
        int lines = Ink.wrap(value, font, line.width).size();
        int height = lines * (int) Math.ceil(Ink.lineHeight(font));
        if (y + sizes.px(20) + height > getHeight() - sizes.px(8)) {
            return;
        }
        line(ink, label, sizes.regular(15), Look.color("quiet"), line);
        y += sizes.px(20);
        ink.paragraph(value, font, Look.color("ink"), rest(height));
        y += height + sizes.px(8);
    }

    private static void line(Ink ink, String text, Font font, Color color, Rectangle box) {
        ink.line(text, font, color, box, Ink.Align.LEFT);
    }

    private Rectangle rest(int height) {
        int pad = sizes.px(16);
        return new Rectangle(
                pad, y, getWidth() - 2 * pad, Math.max(1, Math.min(height, getHeight() - y - sizes.px(8))));
    }
}
