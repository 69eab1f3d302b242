package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import javax.swing.JComponent;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.people.SignOnActions;
import org.docksweep.kiosk.people.SignOnState;
import org.docksweep.kiosk.people.SignOnState.Stage;

/** Stands before the pages while the kiosk is locked or asks who works here. Lives on the event thread. */
final class SignOnPage {
    /** Names that have a key. */
    private static final int NAMES = 7;

    private final SignOnActions actions;
    private final Runnable stop;
    private final Texts texts;
    private final AskPane pane;
    private SignOnState state;
    private boolean sounding;

    SignOnPage(SignOnActions actions, SignOnState initial, Runnable stop, Sizes sizes, Texts texts) {
        this.actions = actions;
        this.stop = stop;
        this.texts = texts;
        pane = new AskPane(sizes, texts, actions::typed);
        show(initial);
    }

    JComponent component() {
        return pane;
    }

    JComponent keyTarget() {
        return pane.keyTarget();
    }

    /** Whether it stands before the pages. */
    boolean isUp() {
        return state.stage() != Stage.WORK;
    }

    void show(SignOnState next) {
        state = next;
        refresh();
    }

    /** Whether a sweep runs behind this. */
    void sounding(boolean now) {
        if (now != sounding) {
            sounding = now;
            refresh();
        }
    }

    private void refresh() {
        pane.show(new Asked(
                guide(),
                sentence(),
                lines(),
                state.message().map(m -> new Notice(m.state(), m.text(), List.of())),
                offers(),
                texts.say(state.stage() == Stage.PIN ? "people.hint.PIN" : "people.hint.WHO"),
                state.stage() == Stage.PIN));
    }

    private Guide guide() {
        if (state.busy()) {
            return new Guide(Tone.NEUTRAL, Sign.WAVE, "people.word.ASKING", List.of());
        }
        if (state.stage() == Stage.PIN) {
            return new Guide(Tone.ACT, Sign.HAND, "people.word.PIN", List.of());
        }
        return state.locked()
                ? new Guide(Tone.ACT, Sign.SHIELD, "people.word.LOCKED", List.of())
                : new Guide(Tone.ACT, Sign.CODE, "people.word.WHO", List.of());
    }

    private String sentence() {
        if (state.stage() == Stage.PIN) {
            return texts.say("people.sentence.PIN", state.asked().orElseThrow());
        }
        if (state.person().isEmpty()) {
            return texts.say("people.sentence.NOBODY");
        }
        return texts.say(
                state.locked() ? "people.sentence.LOCKED" : "people.sentence.WHO",
                state.person().get());
    }

    private List<Asked.Line> lines() {
        List<Asked.Line> lines = new ArrayList<>();
        if (sounding) {
            lines.add(new Asked.Line(ReadingState.WATCH, texts.say("people.line.sweep"), ""));
        }
        for (String scan : state.held()) {
            lines.add(new Asked.Line(ReadingState.WATCH, scan, texts.say("people.line.held")));
        }
        return lines;
    }

    private List<Offer> offers() {
        List<Offer> offers = new ArrayList<>();
        if (sounding) {
            offers.add(new Offer(Command.STOP, Offer.Kind.STOP, texts.say("button.STOP"), stop));
        }
        if (state.busy()) {
            return offers;
        }
        if (state.stage() == Stage.WHO) {
            for (int i = 0; i < Math.min(NAMES, state.known().size()); i++) {
                int index = i;
                offers.add(new Offer(
                        Command.choice(i), Offer.Kind.PLAIN, state.known().get(i), () -> actions.choose(index)));
            }
        }
        if (state.stage() == Stage.PIN || state.mayGoBack()) {
            offers.add(plain(Command.HOLD, "people.button.BACK", actions::back));
        }
        if (state.stage() == Stage.WHO && !state.locked()) {
            offers.add(plain(Command.NOTICE_1, "people.button.LOCK", actions::lock));
        }
        if (state.stage() == Stage.WHO && state.person().isPresent()) {
            offers.add(plain(Command.NOTICE_2, "people.button.SIGN_OFF", actions::signOff));
        }
        return offers;
    }

    private Offer plain(Command command, String key, Runnable action) {
        return new Offer(command, Offer.Kind.PLAIN, texts.say(key), action);
    }

    /** Stop has silenced the line already; with nothing sounding it is one step back. */
    boolean perform(Command command) {
        if (command == Command.STOP) {
            if (!sounding) {
                actions.back();
            }
            return true;
        }
        return pane.perform(command);
    }
}
