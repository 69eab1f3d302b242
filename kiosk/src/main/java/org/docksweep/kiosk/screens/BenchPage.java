package org.docksweep.kiosk.screens;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.bench.BenchState;
import org.docksweep.kiosk.bench.BenchState.JobAtHand;
import org.docksweep.kiosk.bench.BenchStep;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.printing.PaperView;

/**
 * The bench page: queue at the left, evidence or procedure in the middle, the job and its keys at the right. Lives on the
 * event thread.
 */
final class BenchPage implements Page {
    private final Sizes sizes;
    private final BenchActions actions;
    private final Texts texts;
    private final JPanel whole;
    private final JPanel body;
    private final QueuePanel queue;
    private final JPanel middle = new JPanel();
    private final CabinetPanel cabinet;
    private final CurvePanel curve;
    private final CardPanel card;
    private final ChoicePanel choices;
    private final PartPanel part;
    private final BenchColumn column;
    private final ScanField scanField;
    private final NoticePanel notice;
    private final Map<Command, Offer> alive = new EnumMap<>(Command.class);
    private final PaperPanel paper;
    private BenchState state;
    private Optional<PaperView> viewed = Optional.empty();
    private List<JComponent> inMiddle = List.of();

    BenchPage(BenchActions actions, BenchState initial, List<CabinetModel> models, Sizes sizes, Texts texts) {
        this.sizes = sizes;
        this.texts = texts;
        this.actions = actions;
        queue = new QueuePanel(sizes, texts, models, actions::mark);
        cabinet = new CabinetPanel(sizes, texts, List.of());
        curve = new CurvePanel(sizes, texts);
        card = new CardPanel(sizes, texts);
        choices = new ChoicePanel(sizes, texts, actions::choose);
        part = new PartPanel(sizes, texts);
        paper = new PaperPanel(sizes, texts);
        column = new BenchColumn(sizes, texts);
        scanField = new ScanField(sizes, texts, actions::scan);
        notice = new NoticePanel(sizes, texts);
        middle.setOpaque(false);
        int gap = sizes.px(8);
        whole = new JPanel(new MigLayout(
                "insets " + gap + "px, gap 0 " + gap + "px, fill",
                "[grow,fill]",
                "[grow,fill][" + sizes.px(80) + "px!]"));
        whole.setBackground(Look.color("ground"));
        body = new JPanel(new MigLayout(
                "insets 0, gap " + gap + "px 0, fill, hidemode 3", "[fill][grow,fill][fill]", "[grow,fill]"));
        body.setOpaque(false);
        body.add(queue, "cell 0 0, growy, hmin 0, w " + sizes.px(272) + "px!");
        body.add(middle, "cell 1 0, grow, wmin 0, hmin 0");
        body.add(column, "cell 2 0, growy, hmin 0, w " + sizes.px(376) + "px!");
        whole.add(body, "wrap, grow, hmin 0");
        JPanel bottom = new JPanel(new MigLayout(
                "insets 0, gap " + gap + "px 0, fill", "[" + sizes.px(384) + "px!,fill][grow,fill]", "[grow,fill]"));
        bottom.setOpaque(false);
        bottom.add(scanField, "grow");
        bottom.add(notice, "grow, wmin 0, hmin 0");
        whole.add(bottom, "grow");
        show(initial);
    }

    @Override
    public PageName name() {
        return PageName.BENCH;
    }

    @Override
    public JComponent component() {
        return whole;
    }

    @Override
    public JComponent keyTarget() {
        return scanField;
    }

    @Override
    public void shown(boolean up) {
        if (up) {
            actions.refresh();
        }
    }

    @Override
    public boolean perform(Command command) {
        switch (command) {
            case STOP -> {
                actions.stop();
                if (viewed.isPresent()) {
                    leavePaper();
                }
            }
            case UP -> actions.mark(state.marked() - 1);
            case DOWN -> actions.mark(state.marked() + 1);
            default -> {
                Offer offer = alive.get(command);
                if (offer == null) {
                    return false;
                }
                offer.action().run();
            }
        }
        return true;
    }

    /** Shows a state. */
    void show(BenchState next) {
        boolean otherJob = state == null
                || next.activity() != state.activity()
                || !next.job().map(BenchPage::code).equals(state.job().map(BenchPage::code));
        if (otherJob) {
            viewed = Optional.empty();
        }
        state = next;
        queue.show(next);
        List<Offer> offers = viewed.isPresent() ? paperOffers() : BenchOffers.of(next, actions, this::viewCard, texts);
        alive.clear();
        offers.forEach(offer -> alive.put(offer.command(), offer));
        column.show(next, offers);
        notice.show(
                next.message().map(m -> new DockState.Notice(m.state(), m.text(), List.of())),
                List.of(),
                Optional.empty());
        cabinet.show(next.job().map(BenchPage::front).or(() -> marked(next)));
        curve.show(next.job().flatMap(JobAtHand::curve), false);
        card.show(next.job().flatMap(JobAtHand::card));
        choices.show(next.choices());
        part.show(next.part());
        layOutMiddle(parts(next));
    }

    private static Object code(JobAtHand job) {
        return job.file().job().code();
    }

    private List<Offer> paperOffers() {
        return List.of(
                new Offer(Command.PRINT, Offer.Kind.PRIMARY, texts.say("paper.PRINT"), () -> {
                    actions.step(BenchStep.PRINT_CARD);
                    leavePaper();
                }),
                new Offer(Command.HOLD, Offer.Kind.PLAIN, texts.say("paper.BACK"), this::leavePaper));
    }

    private void viewCard() {
        Object asked = state.job().map(BenchPage::code);
        actions.viewCard(view -> SwingUtilities.invokeLater(() -> {
            if (state.job().map(BenchPage::code).equals(asked)) {
                showPaper(view);
            }
        }));
    }

    /** Shows a paper before it is printed. */
    void showPaper(PaperView view) {
        viewed = Optional.of(view);
        paper.show(viewed);
        show(state);
    }

    private void leavePaper() {
        viewed = Optional.empty();
        show(state);
    }

    private List<JComponent> parts(BenchState next) {
        if (viewed.isPresent()) {
            return List.of(paper);
        }
        return switch (next.activity()) {
            case QUEUE -> List.of(cabinet);
            case FINDING -> List.of(choices);
            case PART -> List.of(part);
            case PROOF, ENDING -> List.of(cabinet, curve);
            case JOB -> {
                JobAtHand job = next.job().orElseThrow();
                boolean repairing = job.file().job().state() == BenchJobBody.State.IN_REPAIR;
                yield repairing && job.card().isPresent() ? List.of(card) : List.of(cabinet, curve);
            }
        };
    }

    private void layOutMiddle(List<JComponent> next) {
        if (next.equals(inMiddle)) {
            return;
        }
        inMiddle = next;
        // The choices need the room of the queue, which is of no use meanwhile.
        queue.setVisible(!next.equals(List.of(choices)));
        middle.removeAll();
        middle.setLayout(new MigLayout(
                "insets 0, gap 0 " + sizes.px(8) + "px, fill, wrap 1",
                "[grow,fill]",
                next.size() == 1 ? "[grow,fill]" : "[grow 60,fill][grow 40,fill]"));
        for (JComponent component : next) {
            middle.add(component, "grow, wmin 0, hmin 0");
        }
        body.revalidate();
        body.repaint();
    }

    private static DockState.CabinetAtHand front(JobAtHand job) {
        return new DockState.CabinetAtHand(
                job.file().job().tag(),
                job.model(),
                job.file().cabinet().shelfPlace(),
                job.positions(),
                List.of(),
                Optional.empty());
    }

    private Optional<DockState.CabinetAtHand> marked(BenchState next) {
        if (next.marked() < 0) {
            return Optional.empty();
        }
        BenchJobBody job = next.queue().get(next.marked());
        return queue.model(job)
                .map(model ->
                        new DockState.CabinetAtHand(job.tag(), model, "", List.of(), List.of(), Optional.empty()));
    }
}
