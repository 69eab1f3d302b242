package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import javax.swing.JComponent;
import javax.swing.JPanel;
import javax.swing.SwingUtilities;
import net.miginfocom.swing.MigLayout;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.printing.PaperView;

/**
 * The dock page. Shows a state and knows which steps are alive in it; buttons and keys take the same
 * {@link Offer offers}. Lives on the event thread.
 */
final class KioskPane extends JPanel {
    private static final long serialVersionUID = 1;

    private final transient Sizes sizes;
    private final transient Texts texts;
    private final transient DockActions actions;
    private final StripPanel strip;
    private final ReturnListPanel returns;
    private final KeyButton closeList;
    private final CabinetPanel cabinet;
    private final CurvePanel curve;
    private final PlugPanel plug;
    private final LookPanel look;
    private final ModelChooser chooser;
    private final JPanel middle;
    private final PaperPanel paper;
    private final AnswerColumn answer;
    private final TrailPanel trail;
    private final ScanField scanField;
    private final NoticePanel notice;
    /** Least height for everything, in design pixels. */
    private static final int ROOMY = 768;

    private final transient Map<Command, Offer> alive = new EnumMap<>(Command.class);

    private transient DockState state;
    private transient Set<VisualItem> marked = Set.of();
    private boolean choosing;
    private boolean closing;
    private transient Optional<PaperView> viewed = Optional.empty();

    KioskPane(DockActions actions, DockState initial, List<CabinetModel> models, Sizes sizes, Texts texts) {
        super(new MigLayout("insets 0, gap 0, fill", "[grow,fill]", rows(sizes, 8, 4, 28, 4, 8)));
        this.sizes = sizes;
        this.texts = texts;
        this.actions = actions;
        strip = new StripPanel(sizes, texts);
        returns = new ReturnListPanel(sizes, texts);
        closeList = new KeyButton(sizes);
        cabinet = new CabinetPanel(sizes, texts, List.of(Sign.CODE, Sign.EYE, Sign.PLUG, Sign.WAVE));
        curve = new CurvePanel(sizes, texts);
        plug = new PlugPanel(sizes, texts);
        look = new LookPanel(sizes, texts, this::toggle);
        chooser = new ModelChooser(sizes, texts, models, this::register, this::refreshCommands);
        answer = new AnswerColumn(sizes, texts);
        trail = new TrailPanel(sizes, texts);
        scanField = new ScanField(sizes, texts, this::scanned);
        notice = new NoticePanel(sizes, texts);
        paper = new PaperPanel(sizes, texts);
        middle = new JPanel();
        middle.setOpaque(false);
        setBackground(Look.color("ground"));
        layOut();
        show(initial);
    }

    private static String rows(Sizes sizes, int above, int below, int trail, int under, int bottom) {
        return "[" + sizes.px(48) + "px!]" + sizes.px(above) + "px[grow,fill]" + sizes.px(below) + "px["
                + sizes.px(trail) + "px!]" + sizes.px(under) + "px[" + sizes.px(80) + "px!]" + sizes.px(bottom) + "px";
    }

    /** Under the band of practice, in a frame on the smallest screen, the trail of scans makes room for the answer. */
    @Override
    public void doLayout() {
        boolean low = getHeight() < sizes.px(ROOMY);
        if (low == trail.isVisible()) {
            trail.setVisible(!low);
            ((MigLayout) getLayout()).setRowConstraints(low ? rows(sizes, 6, 2, 0, 0, 4) : rows(sizes, 8, 4, 28, 4, 8));
        }
        super.doLayout();
    }

    private void layOut() {
        add(strip, "wrap, grow");
        int gap = sizes.px(8);
        JPanel body = new JPanel(new MigLayout(
                "insets 0 " + gap + "px 0 " + gap + "px, gap " + gap + "px 0, fill",
                "[" + sizes.px(296) + "px!,fill][grow,fill][" + sizes.px(376) + "px!,fill]",
                "[grow,fill]"));
        body.setOpaque(false);
        JPanel left = new JPanel(new MigLayout("insets 0, gap 0, fill, hidemode 3", "[grow,fill]", "[grow,fill][]"));
        left.setOpaque(false);
        left.add(returns, "wrap, grow, hmin 0, wmin 0");
        left.add(closeList, "growx, gaptop " + gap + "px, wmin 0, h " + sizes.px(Sizes.TOUCH) + "px!");
        body.add(left, "grow, hmin 0");
        body.add(middle, "grow, wmin 0, hmin 0");
        body.add(answer, "grow, hmin 0");
        add(body, "wrap, grow, hmin 0");
        add(trail, "wrap, grow");
        JPanel bottom = new JPanel(new MigLayout(
                "insets 0 " + gap + "px 0 " + gap + "px, gap " + gap + "px 0, fill, hidemode 3",
                "[" + sizes.px(384) + "px!,fill][grow,fill]",
                "[grow,fill]"));
        bottom.setOpaque(false);
        bottom.add(scanField, "grow");
        bottom.add(notice, "grow, wmin 0, hmin 0");
        add(bottom, "grow");
    }

    ScanField scanField() {
        return scanField;
    }

    /** Shows a state. */
    void show(DockState next) {
        boolean otherCabinet = state == null
                || !state.cabinet().map(c -> c.tag()).equals(next.cabinet().map(c -> c.tag()));
        if (otherCabinet || state.phase() != next.phase()) {
            marked = next.visualDamage();
            viewed = Optional.empty();
        }
        if (next.notice().isEmpty() || !next.notice().get().actions().contains(NoticeAction.REGISTER)) {
            choosing = false;
        }
        if (next.returns().isEmpty() || Guide.sounding(next.phase())) {
            closing = false;
            viewed = Optional.empty();
        }
        state = next;
        refresh();
    }

    private void refresh() {
        strip.show(state.strip());
        returns.show(state.returns());
        cabinet.show(state.cabinet());
        curve.show(state.curve(), Guide.sounding(state.phase()));
        plug.show(state);
        // Without a message the newest scan stands large beside the scan line already.
        trail.show(
                state.notice().isPresent()
                        ? state.scans()
                        : state.scans().stream().skip(1).toList());
        arrangeMiddle();
        refreshCommands();
    }

    /** Puts other parts into the middle, but only when they change. */
    private void arrangeMiddle() {
        if (state.phase() == Phase.LOOK) {
            look.show(Guide.visualItems(state), marked);
        }
        List<JComponent> wanted = middleParts();
        if (List.of(middle.getComponents()).equals(wanted)) {
            return;
        }
        middle.removeAll();
        String rows = wanted.size() == 1 ? "[grow,fill]" : "[grow 60,fill][grow 40,fill]";
        middle.setLayout(new MigLayout("insets 0, gap 0, fill, wrap 1", "[grow,fill]", rows));
        // No part has a preferred height: they share the height by the weights of the rows.
        middle.add(wanted.get(0), "grow, wmin 0, h 8:8:");
        if (wanted.size() > 1) {
            middle.add(wanted.get(1), "grow, gaptop " + sizes.px(8) + "px, wmin 0, h 8:8:");
        }
        middle.revalidate();
        middle.repaint();
    }

    private List<JComponent> middleParts() {
        if (choosing) {
            return List.of(chooser);
        }
        if (viewed.isPresent()) {
            return List.of(paper);
        }
        if (state.phase() == Phase.LOOK) {
            return List.of(cabinet, look);
        }
        if (asksForPlug()) {
            return List.of(cabinet, plug);
        }
        return state.cabinet().isPresent() ? List.of(cabinet, curve) : List.of(cabinet);
    }

    private boolean asksForPlug() {
        return state.phase() == Phase.PLUG
                || state.answer()
                        .filter(a -> a.prompt() == Prompt.PLUG_IN || a.prompt() == Prompt.CHECK_SOCKET)
                        .isPresent();
    }

    /** Gathers what can be done now; buttons and keys follow from it. */
    private void refreshCommands() {
        alive.clear();
        List<Offer> column = new ArrayList<>();
        Guide guide = choosing ? Guide.REGISTER : Guide.of(state);
        if (viewed.isPresent()) {
            column.addAll(paperOffers());
        } else {
            guide.commands().forEach(command -> column.add(columnOffer(command)));
        }
        List<Offer> asked = new ArrayList<>();
        state.notice().ifPresent(n -> {
            for (int i = 0; i < n.actions().size(); i++) {
                NoticeAction action = n.actions().get(i);
                Command command = i == 0 ? Command.NOTICE_1 : Command.NOTICE_2;
                asked.add(
                        new Offer(command, Offer.Kind.PLAIN, texts.say("notice", action), () -> answerNotice(action)));
            }
        });
        List<Offer> choices = choosing
                ? chooser.offers()
                : state.phase() == Phase.LOOK ? look.offers(Guide.visualItems(state)) : List.of();
        Optional<Offer> close = closeOffer();
        column.forEach(o -> alive.put(o.command(), o));
        asked.forEach(o -> alive.put(o.command(), o));
        choices.forEach(o -> alive.put(o.command(), o));
        close.ifPresent(o -> alive.put(o.command(), o));
        // Stop is never refused: the line may still sound while the page is a moment behind.
        alive.put(Command.STOP, new Offer(Command.STOP, Offer.Kind.STOP, texts.say("button.STOP"), this::stop));
        answer.show(state, guide, marked, column);
        answer.wordAndKeysOnly(viewed.isPresent());
        notice.show(state.notice(), asked, state.scans().stream().findFirst());
        close.ifPresent(closeList::offer);
        closeList.setVisible(close.isPresent());
    }

    private Offer columnOffer(Command command) {
        return switch (command) {
            case NEXT -> new Offer(command, Offer.Kind.PRIMARY, nextLabel(), this::next);
            case HOLD -> new Offer(command, Offer.Kind.PLAIN, texts.say("button.HOLD"), actions::holdForPerson);
            case PRINT -> new Offer(command, Offer.Kind.PLAIN, texts.say("button.PRINT"), this::viewTag);
            case STOP -> new Offer(command, Offer.Kind.STOP, texts.say("button.STOP"), this::stop);
            default -> throw new IllegalArgumentException("no button for " + command + " in the answer column");
        };
    }

    /** Print, or back; the sheet is printed by closing the list. */
    private List<Offer> paperOffers() {
        Offer back = new Offer(Command.NEXT, Offer.Kind.PLAIN, texts.say("paper.BACK"), this::leavePaper);
        return closing
                ? List.of(back)
                : List.of(
                        new Offer(Command.PRINT, Offer.Kind.PRIMARY, texts.say("paper.PRINT"), () -> {
                            actions.printTag();
                            leavePaper();
                        }),
                        back);
    }

    private void viewTag() {
        DockState asked = state;
        actions.viewTag(view -> SwingUtilities.invokeLater(() -> {
            boolean sameAnswer = state.phase() == Phase.ANSWER
                    && state.cabinet().map(c -> c.tag()).equals(asked.cabinet().map(c -> c.tag()));
            if (sameAnswer && !closing) {
                showPaper(view);
            }
        }));
    }

    private void viewSheet() {
        actions.viewSheet(view -> SwingUtilities.invokeLater(() -> {
            if (closing) {
                showPaper(view);
            }
        }));
    }

    /** Shows a paper before it is printed. */
    void showPaper(PaperView view) {
        viewed = Optional.of(view);
        paper.show(viewed);
        refresh();
    }

    private void leavePaper() {
        viewed = Optional.empty();
        closing = false;
        refresh();
    }

    private String nextLabel() {
        if (state.phase() == Phase.LOOK) {
            return marked.isEmpty() ? texts.say("button.ALL_FINE") : texts.say("button.GO_ON", marked.size());
        }
        return asksForPlug() ? texts.say("button.PLUGGED") : texts.say("button.SWEEP_AGAIN");
    }

    private void next() {
        if (state.phase() == Phase.LOOK) {
            actions.lookedOver(marked);
        } else if (asksForPlug()) {
            actions.plugged();
        } else {
            actions.sweepAgain();
        }
    }

    /** Closing asks once more on its own button, saying what is still missing. */
    private Optional<Offer> closeOffer() {
        return state.returns().filter(r -> !Guide.sounding(state.phase())).map(list -> {
            int missing = Math.max(0, list.due() - list.back());
            String label = closing ? texts.say("button.CLOSE_SURE", missing) : texts.say("button.CLOSE_LIST");
            return new Offer(Command.CLOSE_LIST, closing ? Offer.Kind.PRIMARY : Offer.Kind.PLAIN, label, () -> {
                if (closing) {
                    actions.closeList();
                    leavePaper();
                } else {
                    viewed = Optional.empty();
                    closing = true;
                    refresh();
                    // Before a cabinet is looked over or plugged, the middle belongs to that.
                    if (state.phase() == Phase.READY || state.phase() == Phase.ANSWER) {
                        viewSheet();
                    }
                }
            });
        });
    }

    private void stop() {
        actions.stop();
        if (choosing) {
            choosing = false;
            refresh();
        }
        if (closing || viewed.isPresent()) {
            leavePaper();
        }
        if (!Guide.sounding(state.phase())) {
            scanField.setText("");
        }
    }

    private void scanned(String text) {
        leavePaper();
        actions.scan(text);
    }

    private void toggle(VisualItem item) {
        marked = LookPanel.toggled(marked, item);
        refresh();
    }

    private void answerNotice(NoticeAction action) {
        if (action == NoticeAction.REGISTER) {
            choosing = true;
            chooser.open();
            refresh();
        } else {
            choosing = false;
            actions.notice(action);
            refresh();
        }
    }

    private void register(CabinetModel model) {
        choosing = false;
        actions.register(model.code());
        refresh();
    }

    /**
     * Does what a key stands for, if it is alive now.
     *
     * @return whether it was
     */
    boolean perform(Command command) {
        Offer offer = alive.get(command);
        if (offer != null) {
            offer.action().run();
        }
        return offer != null;
    }
}
