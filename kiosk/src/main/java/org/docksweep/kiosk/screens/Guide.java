package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.TagPrint;

/**
 * What one state demands of the person: the huge word with its tone and sign, and the keys that are alive. Knows no
 * widgets.
 *
 * @param tone tone of the plate
 * @param sign sign on the plate
 * @param word text key of the huge word
 * @param commands commands alive in the answer column, most important first
 */
record Guide(Tone tone, Sign sign, String word, List<Command> commands) {

    /** While a person chooses the model of an unknown cabinet. */
    static final Guide REGISTER = new Guide(Tone.ACT, Sign.LABEL, "word.REGISTER", List.of());

    static Guide of(DockState state) {
        return switch (state.phase()) {
            case READY -> ready(state);
            case LOOK -> new Guide(Tone.ACT, Sign.EYE, "word.LOOK", List.of(Command.NEXT));
            case PLUG ->
                new Guide(
                        Tone.ACT,
                        Sign.PLUG,
                        state.answer()
                                        .filter(a -> a.prompt() == Prompt.CHECK_SOCKET)
                                        .isPresent()
                                ? "word.CHECK_SOCKET"
                                : "word.PLUG_IN",
                        List.of(Command.NEXT, Command.HOLD));
            case PROBE -> new Guide(Tone.NEUTRAL, Sign.WAVE, "word.PROBE", List.of(Command.STOP));
            case SWEEP -> new Guide(Tone.NEUTRAL, Sign.WAVE, "word.SWEEP", List.of(Command.STOP));
            case JUDGE -> new Guide(Tone.NEUTRAL, Sign.WAVE, "word.JUDGE", List.of(Command.STOP));
            case ANSWER ->
                // A dock state and its answer see to it themselves that nothing is missing here and below.
                state.answer().map(Guide::of).orElseThrow();
        };
    }

    /** The large word belongs to what was scanned last, also when that is no cabinet of the house or of tonight. */
    private static Guide ready(DockState state) {
        List<NoticeAction> asked = state.notice().map(DockState.Notice::actions).orElse(List.of());
        if (asked.contains(NoticeAction.REGISTER)) {
            return new Guide(Tone.ATTENTION, Sign.LABEL, "word.UNKNOWN", List.of());
        }
        return asked.contains(NoticeAction.CHECK_IN_ANYWAY)
                ? new Guide(Tone.ATTENTION, Sign.LABEL, "word.NOT_LISTED", List.of())
                : new Guide(Tone.NEUTRAL, Sign.CODE, "word.SCAN", List.of());
    }

    private static Guide of(Answer answer) {
        List<Command> commands = new ArrayList<>(
                switch (answer.prompt()) {
                    case PLUG_IN, CHECK_SOCKET, SWEEP_AGAIN -> List.of(Command.NEXT, Command.HOLD);
                    case CHECK_LABEL -> List.of(Command.HOLD);
                    case NONE, PERSON_DECIDES -> List.<Command>of();
                });
        if (answer.tagPrint() != TagPrint.NOT_NEEDED) {
            commands.add(Command.PRINT);
        }
        return switch (answer.prompt()) {
            case PLUG_IN -> new Guide(Tone.ACT, Sign.PLUG, "word.PLUG_IN", commands);
            case CHECK_SOCKET -> new Guide(Tone.ACT, Sign.PLUG, "word.CHECK_SOCKET", commands);
            case CHECK_LABEL -> new Guide(Tone.ATTENTION, Sign.LABEL, "word.CHECK_LABEL", commands);
            case SWEEP_AGAIN -> new Guide(Tone.ATTENTION, Sign.AGAIN, "word.SWEEP_AGAIN", commands);
            case NONE, PERSON_DECIDES -> routed(answer, commands);
        };
    }

    private static Guide routed(Answer answer, List<Command> commands) {
        if (answer.route().filter(Route.SAFETY_HOLD::equals).isPresent()) {
            return new Guide(Tone.FAULT, Sign.SHIELD, "word.SAFETY_HOLD", commands);
        }
        if (answer.route().filter(Route.MANUAL_HOLD::equals).isPresent() || answer.prompt() == Prompt.PERSON_DECIDES) {
            return new Guide(Tone.ATTENTION, Sign.HAND, "word.MANUAL_HOLD", commands);
        }
        return answer.verdict()
                .map(verdict -> switch (verdict) {
                    case PASS -> new Guide(Tone.PASS, Sign.TICK, "word.PASS", commands);
                    case FAIL -> new Guide(Tone.FAULT, Sign.CROSS, "word.FAIL", commands);
                    case SWEEP_AGAIN -> new Guide(Tone.ATTENTION, Sign.AGAIN, "word.SWEEP_AGAIN", commands);
                })
                .orElseThrow();
    }

    /** Items of the visual list that apply to the cabinet at hand, in the order of their keys. */
    static List<VisualItem> visualItems(DockState state) {
        boolean powered =
                state.cabinet().map(c -> c.model().feed() == Feed.POWERED).orElse(false);
        List<VisualItem> items = new ArrayList<>(List.of(VisualItem.values()));
        if (!powered) {
            items.removeAll(List.of(VisualItem.MAINS_INLET, VisualItem.KNOBS_AND_PRESETS));
        }
        return items;
    }

    /** The test point to plug or being swept. */
    static Optional<TestPoint> testPoint(DockState state) {
        return state.cabinet()
                .flatMap(cabinet ->
                        state.progress().map(progress -> cabinet.model().testPoint(progress.testPointCode())));
    }

    /** Whether sound may be on the line, so that only stop is allowed. */
    static boolean sounding(Phase phase) {
        return phase == Phase.PROBE || phase == Phase.SWEEP || phase == Phase.JUDGE;
    }
}
