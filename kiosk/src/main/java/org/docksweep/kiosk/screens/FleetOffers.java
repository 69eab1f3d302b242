package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.teaching.TeachingActions;
import org.docksweep.kiosk.teaching.TeachingState;
import org.docksweep.kiosk.teaching.TeachingStep;
import org.docksweep.suspect.TeachingProgress.Grade;

/** The steps of the fleet page as buttons with their keys: the expected one on F1, the rest in order. */
final class FleetOffers {
    private FleetOffers() {}

    static List<Offer> of(TeachingState state, TeachingActions actions, Texts texts) {
        if (state.sweepShare().isPresent()) {
            return List.of(new Offer(Command.STOP, Offer.Kind.STOP, texts.say("button.STOP"), actions::stop));
        }
        List<Offer> offers = new ArrayList<>();
        int plain = 0;
        for (TeachingStep step : state.steps()) {
            boolean first = switch (step) {
                case TEACH, BEGIN, SWEEP -> true;
                case FINISH -> good(state);
                default -> false;
            };
            Command key = step == TeachingStep.BACK ? Command.HOLD : first ? Command.NEXT : Command.choice(plain++);
            offers.add(new Offer(
                    key,
                    first ? Offer.Kind.PRIMARY : Offer.Kind.PLAIN,
                    texts.say("fleet.step", step),
                    () -> actions.step(step)));
        }
        return offers;
    }

    /** Before that, the next unit is what is expected, and storing is only possible. */
    private static boolean good(TeachingState state) {
        return state.lesson()
                .flatMap(TeachingState.LessonAtHand::progress)
                .filter(p -> p.grade() == Grade.GOOD)
                .isPresent();
    }
}
