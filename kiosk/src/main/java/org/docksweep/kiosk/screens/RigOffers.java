package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.rig.RigDeskActions;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigSetUp;
import org.docksweep.kiosk.rig.WalkStep;

/** What a person can do at the rig page, state by state; while the rig sounds, only stop. */
final class RigOffers {
    private final Texts texts;
    private final RigDeskActions actions;
    private final SetUpMoves moves;

    /** What the page itself does while the rig is set up. */
    interface SetUpMoves {
        void save();

        void move(int step);

        void choose(int step);
    }

    RigOffers(Texts texts, RigDeskActions actions, SetUpMoves moves) {
        this.texts = texts;
        this.actions = actions;
        this.moves = moves;
    }

    List<Offer> of(RigDeskState state, RigSetUp draft) {
        List<Offer> offers = new ArrayList<>();
        if (!state.sounding()) {
            switch (state.mode()) {
                case OVERVIEW -> overview(state, draft, offers);
                case WALK -> walk(state.walk().orElseThrow(), offers);
                case SET_UP -> setUp(draft, offers);
            }
        }
        offers.add(new Offer(Command.STOP, Offer.Kind.STOP, texts.say("button.STOP"), actions::stop));
        return offers;
    }

    private Offer plain(Command command, String key, Runnable action) {
        return new Offer(command, Offer.Kind.PLAIN, texts.say(key), action);
    }

    private Offer primary(String key, Runnable action) {
        return new Offer(Command.NEXT, Offer.Kind.PRIMARY, texts.say(key), action);
    }

    private void overview(RigDeskState state, RigSetUp draft, List<Offer> offers) {
        boolean calibrated = state.calibrated().isPresent();
        offers.add(
                calibrated
                        ? primary("rig.button.CHECK", actions::check)
                        : primary("rig.button.CALIBRATE", actions::calibrate));
        if (calibrated) {
            offers.add(plain(Command.CHOICE_1, "rig.button.CALIBRATE_AGAIN", actions::calibrate));
        }
        if (state.canSetUp()) {
            offers.add(plain(Command.CHOICE_2, "rig.button.SET_UP", actions::openSetUp));
        }
        offers.add(plain(Command.CHOICE_3, "rig.button.LEVELS", () -> actions.listen(draft, false)));
        if (calibrated) {
            offers.add(plain(Command.CHOICE_4, "rig.button.SOUND", actions::sound));
            offers.add(plain(Command.CHOICE_5, "rig.button.STUDY", actions::study));
        }
    }

    private void walk(RigDeskState.Walk at, List<Offer> offers) {
        if (at.finished()) {
            offers.add(primary("rig.button.DONE", actions::leave));
        } else {
            offers.add(primary("rig.button.MEASURE", actions::measure));
            WalkStep step = at.steps().get(at.at()).step();
            if (step == WalkStep.COMMON_MODE || step == WalkStep.PLUG) {
                offers.add(plain(Command.CHOICE_1, "rig.button.SKIP", actions::skip));
            }
            if (step == WalkStep.SOUND) {
                offers.add(plain(Command.CHOICE_1, "rig.button.ACCEPT_ANEW", actions::acceptAnew));
            }
            if (step == WalkStep.PLUG) {
                offers.add(plain(Command.CHOICE_3, "rig.button.CONTACTS", actions::otherContacts));
            }
        }
        boolean kept = at.finished() && (at.isStudy() || at.isSound());
        if (at.at() > 0 && !kept) {
            offers.add(plain(Command.CHOICE_2, "rig.button.BACK", actions::back));
        }
        if (!at.finished()) {
            offers.add(plain(Command.CHOICE_4, "rig.button.LEAVE", actions::leave));
        }
    }

    private void setUp(RigSetUp draft, List<Offer> offers) {
        offers.add(primary("rig.button.SAVE", moves::save));
        offers.add(plain(Command.CHOICE_1, "rig.button.UP", () -> moves.move(-1)));
        offers.add(plain(Command.CHOICE_2, "rig.button.DOWN", () -> moves.move(1)));
        offers.add(plain(Command.CHOICE_3, "rig.button.LESS", () -> moves.choose(-1)));
        offers.add(plain(Command.CHOICE_4, "rig.button.MORE", () -> moves.choose(1)));
        offers.add(plain(Command.CHOICE_5, "rig.button.TONE", () -> actions.listen(draft, true)));
        offers.add(plain(Command.CHOICE_6, "rig.button.LEAVE", actions::leave));
    }
}
