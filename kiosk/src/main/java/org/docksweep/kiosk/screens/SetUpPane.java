package org.docksweep.kiosk.screens;

import java.awt.BorderLayout;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import javax.swing.JComponent;
import javax.swing.JPanel;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.setup.SetUpActions;
import org.docksweep.kiosk.setup.SetUpState;
import org.docksweep.kiosk.setup.SetUpState.Step;

/** The set-up walk, in the language that was chosen in it. Lives on the event thread. */
class SetUpPane extends JPanel implements KeyHome {
    private static final long serialVersionUID = 1;
    private static final int LONGEST_NAME = 28;

    private final transient Sizes sizes;
    private final transient SetUpActions actions;
    private transient Texts texts;
    private AskPane pane;
    private transient SetUpState state;

    SetUpPane(SetUpActions actions, SetUpState initial, Sizes sizes) {
        super(new BorderLayout());
        this.actions = actions;
        this.sizes = sizes;
        setBackground(Look.color("ground"));
        show(initial);
    }

    /** The words of a walk; nothing in it has a time of day. */
    Texts texts(String language) {
        return new Texts(Locale.forLanguageTag(language), ZoneOffset.UTC);
    }

    void show(SetUpState next) {
        boolean newStep = state == null || state.step() != next.step();
        if (state == null || !state.language().equals(next.language())) {
            texts = texts(next.language());
            if (pane != null) {
                remove(pane);
            }
            pane = new AskPane(sizes, texts, actions::typed);
            add(pane, BorderLayout.CENTER);
            newStep = true;
            revalidate();
        }
        state = next;
        pane.show(new Asked(
                guide(),
                texts.say("setup.sentence." + (next.step() == Step.HELLO && next.again() ? "AGAIN" : next.step())),
                Stream.concat(next.found().stream(), next.done().stream())
                        .map(l -> new Asked.Line(l.state(), texts.say(l.text()), ""))
                        .toList(),
                next.message().map(m -> new Notice(m.state(), m.text(), List.of())),
                offers(),
                texts.say(hint()),
                next.isSecret()));
        if (newStep) {
            pane.suggest(next.suggestion());
            if (isShowing()) {
                keyTarget().requestFocusInWindow();
            }
        }
    }

    private String hint() {
        return switch (state.step()) {
            case SERVICE, TOKEN, NUMBER -> "setup.hint." + state.step();
            case HELLO, RIG, PRINTER, STORE -> "setup.hint.NONE";
        };
    }

    private Guide guide() {
        if (state.busy()) {
            return new Guide(Tone.NEUTRAL, Sign.WAVE, "setup.word.CHECKING", List.of());
        }
        Sign sign = switch (state.step()) {
            case HELLO -> Sign.EYE;
            case SERVICE -> Sign.ARROW;
            case TOKEN -> Sign.SHIELD;
            case NUMBER -> Sign.LABEL;
            case RIG -> Sign.PLUG;
            case PRINTER -> Sign.LABEL;
            case STORE -> Sign.TICK;
        };
        return new Guide(Tone.ACT, sign, "setup.word." + state.step(), List.of());
    }

    private List<Offer> offers() {
        List<Offer> offers = new ArrayList<>();
        if (state.busy()) {
            return offers;
        }
        switch (state.step()) {
            case HELLO -> {
                offers.add(primary("setup.button.BEGIN"));
                choices(offers);
                offers.add(plain(Command.PRACTICE, "setup.button.PRACTISE", actions::practise));
            }
            case TOKEN -> {
                if (state.again()) {
                    offers.add(primary("setup.button.KEEP_TOKEN"));
                }
            }
            case RIG -> {
                offers.add(primary("setup.button.GO_ON"));
                offers.add(plain(Command.PRINT, "setup.button.LOOK", actions::look));
            }
            case PRINTER -> {
                offers.add(primary("setup.button.NO_PRINTER"));
                choices(offers);
                offers.add(plain(Command.PRINT, "setup.button.LOOK", actions::look));
            }
            case STORE -> offers.add(primary("setup.button.STORE"));
            case SERVICE, NUMBER -> {
                // Typed.
            }
        }
        if (state.step() != Step.HELLO) {
            offers.add(plain(Command.HOLD, "setup.button.BACK", actions::back));
        }
        if (state.leavable()) {
            offers.add(plain(Command.NOTICE_2, "setup.button.LEAVE", actions::leave));
        }
        return offers;
    }

    private void choices(List<Offer> offers) {
        for (int i = 0; i < state.choices().size(); i++) {
            int index = i;
            offers.add(new Offer(
                    Command.choice(i),
                    Offer.Kind.PLAIN,
                    shortened(state.choices().get(i)),
                    () -> actions.choose(index)));
        }
    }

    /** Names of print queues can be long; both ends say which it is. */
    private static String shortened(String name) {
        int half = LONGEST_NAME / 2;
        return name.length() <= LONGEST_NAME
                ? name
                : name.substring(0, half) + "\u2026" + name.substring(name.length() - half);
    }

    private Offer primary(String key) {
        return new Offer(Command.NEXT, Offer.Kind.PRIMARY, texts.say(key), actions::next);
    }

    private Offer plain(Command command, String key, Runnable action) {
        return new Offer(command, Offer.Kind.PLAIN, texts.say(key), action);
    }

    @Override
    public JComponent keyTarget() {
        return pane.keyTarget();
    }

    /** Escape is one step back. */
    @Override
    public boolean perform(Command command) {
        if (command == Command.STOP) {
            actions.back();
            return true;
        }
        return pane.perform(command);
    }
}
