package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.swing.JComponent;
import javax.swing.JPanel;
import net.miginfocom.swing.MigLayout;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TagReading;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.rig.RigDeskActions;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigDeskState.Mode;
import org.docksweep.kiosk.rig.RigSetUp;
import org.docksweep.kiosk.rig.SetUpField;
import org.docksweep.kiosk.rig.WalkStep;

/**
 * The rig page: signal path with live levels, and under it how the rig stands, a walk, or the set-up. Buttons and keys
 * take the same {@link Offer offers}; while the rig sounds, only stop is alive. Lives on the event thread.
 */
final class RigPane extends JPanel {
    private static final long serialVersionUID = 1;

    private static final int MOST_BESIDE_A_LARGE_PLATE = 6;

    private final transient Sizes sizes;
    private final transient Texts texts;
    private final transient RigDeskActions actions;
    private final RigPathPanel path;
    private final RigWalkPanel walk;
    private final RigSetUpPanel setUpPanel;
    private final RigOverview overview;
    private final transient RigOffers choices;
    private final JPanel body;
    private final VerdictPlate plate;
    private final JPanel column;
    private final List<KeyButton> buttons = new ArrayList<>();
    private final EntryLine entry;
    private final NoticePanel notice;
    private final transient Map<Command, Offer> alive = new EnumMap<>(Command.class);
    private transient RigDeskState state;
    private transient RigSetUp draft;
    private transient List<RigSetUp.Problem> problems = List.of();
    private transient Optional<Notice> said = Optional.empty();
    private SetUpField field = SetUpField.PLAY_DEVICE;
    private int shownButtons = -1;

    RigPane(RigDeskActions actions, RigDeskState initial, Sizes sizes, Texts texts) {
        super(new MigLayout(
                "insets " + sizes.px(8) + "px, gap " + sizes.px(8) + "px " + sizes.px(8) + "px, fill",
                "[grow,fill][" + sizes.px(280) + "px!,fill]",
                "[" + sizes.px(160) + "px!,fill][grow,fill][" + sizes.px(80) + "px!,fill]"));
        this.sizes = sizes;
        this.texts = texts;
        this.actions = actions;
        setBackground(Look.color("ground"));
        path = new RigPathPanel(sizes, texts);
        walk = new RigWalkPanel(sizes, texts);
        setUpPanel = new RigSetUpPanel(sizes, texts, this::select);
        plate = new VerdictPlate(sizes, texts);
        plate.setName("rig-verdict");
        entry = new EntryLine(sizes, texts, this::entered, new ArrowKeys());
        notice = new NoticePanel(sizes, texts);
        overview = new RigOverview(sizes, texts);
        choices = new RigOffers(texts, actions, new Moves());
        body = new JPanel(new MigLayout("insets 0, fill", "[grow,fill]", "[grow,fill]"));
        body.setOpaque(false);
        column = new JPanel();
        column.setOpaque(false);
        JPanel bottom = new JPanel(new MigLayout(
                "insets 0, gap " + sizes.px(8) + "px 0, fill",
                "[" + sizes.px(384) + "px!,fill][grow,fill]",
                "[grow,fill]"));
        bottom.setOpaque(false);
        bottom.add(entry, "grow");
        bottom.add(notice, "grow, wmin 0, hmin 0");
        add(path, "grow, wmin 0, hmin 0");
        add(column, "spany 2, grow, wmin 0, hmin 0, wrap");
        add(body, "grow, wmin 0, hmin 0, wrap");
        add(bottom, "spanx 2, grow, wmin 0, hmin 0");
        draft = initial.setUp();
        show(initial);
    }

    EntryLine entry() {
        return entry;
    }

    RigDeskState state() {
        return state;
    }

    void show(RigDeskState next) {
        boolean opens = next.mode() == Mode.SET_UP && (state == null || state.mode() != Mode.SET_UP);
        if (opens || next.mode() != Mode.SET_UP) {
            draft = next.setUp();
        }
        if (state == null || !next.message().equals(state.message())) {
            said = Optional.empty();
        }
        state = next;
        refresh();
    }

    private void refresh() {
        problems = state.mode() == Mode.SET_UP ? draft.problems(state.devices()) : List.of();
        path.show(state, draft);
        JComponent wanted = switch (state.mode()) {
            case OVERVIEW -> overview;
            case WALK -> walk;
            case SET_UP -> setUpPanel;
        };
        switch (state.mode()) {
            case OVERVIEW -> overview.show(state);
            case WALK -> walk.show(state);
            case SET_UP -> setUpPanel.show(draft, problems, field);
        }
        if (body.getComponentCount() == 0 || body.getComponent(0) != wanted) {
            body.removeAll();
            body.add(wanted, "grow, wmin 0, hmin 0");
            body.revalidate();
            body.repaint();
        }
        plate.show(standing());
        entry.ask(prompt());
        notice.show(notice(), List.of(), Optional.empty());
        refreshOffers();
    }

    private Guide standing() {
        return switch (state.standingState()) {
            case OK -> new Guide(Tone.PASS, Sign.TICK, "rig.word.READY", List.of());
            case FAULT -> new Guide(Tone.FAULT, Sign.CROSS, "rig.word.CLOSED", List.of());
            case WATCH, NOT_JUDGED -> new Guide(Tone.ATTENTION, Sign.EXCLAMATION, "rig.word.LOOK", List.of());
        };
    }

    private String prompt() {
        return switch (state.mode()) {
            case OVERVIEW -> texts.say("rig.prompt.overview");
            case WALK ->
                texts.say(
                        stepAtHand() == WalkStep.LOAD
                                ? "rig.prompt.load"
                                : stepAtHand() == WalkStep.SOUND
                                        ? "rig.prompt.sound"
                                        : mayScan() ? "rig.prompt.study" : "rig.prompt.walk");
            case SET_UP ->
                texts.say(field.isNumber() ? "rig.prompt.number" : "rig.prompt.choice", texts.say("rig.field", field));
        };
    }

    private WalkStep stepAtHand() {
        return state.walk()
                .filter(w -> !w.finished())
                .map(w -> w.steps().get(w.at()).step())
                .orElse(null);
    }

    /** Whether a cabinet's label stands for a part of the study, or for the known cabinet. */
    private boolean mayScan() {
        return stepAtHand() == WalkStep.STUDY_FIRST
                || stepAtHand() == WalkStep.STUDY_SECOND
                || stepAtHand() == WalkStep.SOUND;
    }

    private Optional<Notice> notice() {
        if (said.isPresent()) {
            return said;
        }
        if (state.message().isPresent()) {
            return state.message()
                    .filter(m -> !saidByTheWalk(m.words()))
                    .map(m -> new Notice(m.state(), m.words(), List.of()));
        }
        if (state.mode() == Mode.WALK) {
            return Optional.empty();
        }
        if (state.mode() == Mode.SET_UP) {
            return problems.stream()
                    .filter(p -> p.field() == field)
                    .findFirst()
                    .map(p -> new Notice(p.blocks() ? ReadingState.FAULT : ReadingState.WATCH, p.words(), List.of()))
                    .or(this::marked);
        }
        return Optional.of(new Notice(state.standingState(), sentence(), List.of()));
    }

    /** How many fields are marked, where the one at hand is not among them. */
    private Optional<Notice> marked() {
        long wrong = problems.stream()
                .filter(RigSetUp.Problem::blocks)
                .map(RigSetUp.Problem::field)
                .distinct()
                .count();
        return wrong == 0
                ? Optional.empty()
                : Optional.of(new Notice(
                        ReadingState.FAULT, Reason.of("rigpage-fields-marked", Long.toString(wrong)), List.of()));
    }

    /** The walk shows in large what its steps said; once is enough. */
    private boolean saidByTheWalk(Reason words) {
        return state.walk().stream()
                .flatMap(w -> w.steps().stream())
                .anyMatch(step -> step.words().filter(words::equals).isPresent());
    }

    /** The standing as a sentence with what to do, where there is something to do. */
    private Reason sentence() {
        return switch (state.standing().key()) {
            case "dock-rig-not-calibrated" -> Reason.of("rigpage-calibrate");
            case "dock-rig-not-checked", "dock-rig-check-old" -> Reason.of("rigpage-check-now");
            case "dock-rig-failed" -> Reason.of("rigpage-failed-what-now");
            case "dock-rig-drifts" -> Reason.of("rigpage-drifts-what-now");
            case "dock-rig-plug-worn" -> Reason.of("rigpage-plug-worn-what-now");
            case "dock-mic-not-accepted" -> Reason.of("mic-not-accepted");
            case "dock-mic-failed" -> new Reason("mic-failed", state.standing().arguments());
            case "dock-mic-old" -> new Reason("mic-old", state.standing().arguments());
            case "dock-mic-drifts" -> Reason.of("mic-drifts-what-now");
            default -> state.standing();
        };
    }

    private void refreshOffers() {
        alive.clear();
        List<Offer> offers = choices.of(state, draft);
        offers.forEach(o -> alive.put(o.command(), o));
        while (buttons.size() < offers.size()) {
            buttons.add(new KeyButton(sizes));
        }
        for (int i = 0; i < offers.size(); i++) {
            buttons.get(i).offer(offers.get(i));
        }
        boolean pairs = state.mode() == Mode.SET_UP && !state.sounding();
        int layout = offers.size() * 2 + (pairs ? 1 : 0);
        if (layout != shownButtons) {
            shownButtons = layout;
            layOutColumn(offers, pairs);
        }
    }

    private void layOutColumn(List<Offer> offers, boolean pairs) {
        column.removeAll();
        int gap = sizes.px(8);
        // Buttons keep their size; the plate is read from afar at either.
        boolean crowded = !pairs && offers.size() > MOST_BESIDE_A_LARGE_PLATE;
        column.setLayout(
                new MigLayout("insets 0, gap " + gap + "px, fillx, wrap 2", "[grow,fill,sg][grow,fill,sg]", ""));
        column.add(plate, "spanx 2, wmin 0, h " + sizes.px(crowded ? 80 : 104) + "px!");
        for (int i = 0; i < offers.size(); i++) {
            Offer offer = offers.get(i);
            boolean half = pairs
                    && (offer.command().ordinal() >= Command.CHOICE_1.ordinal()
                            && offer.command().ordinal() <= Command.CHOICE_4.ordinal());
            int height = offer.kind() == Offer.Kind.PLAIN ? Sizes.TOUCH : 80;
            String push = offer.kind() == Offer.Kind.STOP ? ", push, aligny bottom" : "";
            column.add(
                    buttons.get(i), (half ? "" : "spanx 2, ") + "growx, wmin 0, h " + sizes.px(height) + "px!" + push);
        }
        column.revalidate();
        column.repaint();
    }

    /** Goes to the first field that must be put right, or saves. */
    private void save() {
        Optional<RigSetUp.Problem> wrong =
                problems.stream().filter(RigSetUp.Problem::blocks).findFirst();
        if (wrong.isPresent()) {
            select(wrong.get().field());
        } else {
            said = Optional.empty();
            actions.save(draft);
        }
    }

    private void move(int step) {
        select(SetUpField.values()[Math.floorMod(field.ordinal() + step, SetUpField.values().length)]);
    }

    private void select(SetUpField next) {
        field = next;
        said = Optional.empty();
        entry.clear();
        refresh();
    }

    private void choose(int step) {
        if (state.mode() == Mode.SET_UP && !field.isNumber() && !state.sounding()) {
            draft = draft.chosen(field, step, state.devices());
            said = Optional.empty();
            refresh();
        }
    }

    private void entered(String text) {
        if (TagReading.read(text) instanceof TagReading.One one) {
            if (mayScan() && !state.sounding()) {
                actions.scanned(one.tag());
            } else {
                say(Reason.of("rigpage-scan-here", one.tag().value()));
            }
        } else if (state.sounding()) {
            say(Reason.of("rig-busy"));
        } else if (state.mode() == Mode.SET_UP && field.isNumber()) {
            enterNumber(text.strip());
        } else if (stepAtHand() == WalkStep.LOAD) {
            number(text).ifPresent(actions::loadOhm);
        } else {
            say(Reason.of("rigpage-nothing-to-type", text.strip()));
        }
    }

    private void enterNumber(String text) {
        if (number(text).isPresent()) {
            draft = draft.with(field, text.replace(',', '.'));
            said = Optional.empty();
            move(1);
        }
    }

    private Optional<Double> number(String text) {
        try {
            return Optional.of(Double.parseDouble(text.strip().replace(',', '.')));
        } catch (NumberFormatException e) {
            say(Reason.of("rigpage-not-a-number", text.strip()));
            return Optional.empty();
        }
    }

    private void say(Reason words) {
        said = Optional.of(new Notice(ReadingState.FAULT, words, List.of()));
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

    private final class Moves implements RigOffers.SetUpMoves {
        @Override
        public void save() {
            RigPane.this.save();
        }

        @Override
        public void move(int step) {
            RigPane.this.move(step);
        }

        @Override
        public void choose(int step) {
            RigPane.this.choose(step);
        }
    }

    private final class ArrowKeys implements EntryLine.Moves {
        @Override
        public void field(int step) {
            if (state.mode() == Mode.SET_UP) {
                move(step);
            }
        }

        @Override
        public void choice(int step) {
            choose(step);
        }
    }
}
