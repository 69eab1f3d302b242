package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.teaching.TeachingActions;
import org.docksweep.kiosk.teaching.TeachingState;
import org.docksweep.kiosk.teaching.TeachingStep;

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
                case TEACH, BEGIN, SWEEP, FINISH -> true;
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
}
