package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.kiosk.bench.BenchActions;
import org.docksweep.kiosk.bench.BenchState;
import org.docksweep.kiosk.bench.BenchStep;

/** The steps of the bench as buttons with their keys: the expected one on F1, the rest in order. */
final class BenchOffers {
    private BenchOffers() {}

    static List<Offer> of(BenchState state, BenchActions actions, Runnable viewCard, Texts texts) {
        if (state.sweepShare().isPresent()) {
            return List.of(new Offer(Command.STOP, Offer.Kind.STOP, texts.say("button.STOP"), actions::stop));
        }
        List<Offer> offers = new ArrayList<>();
        int plain = 0;
        for (BenchStep step : state.steps()) {
            boolean first = offers.isEmpty() && step != BenchStep.BACK;
            Command key = switch (step) {
                case BACK -> Command.HOLD;
                case PRINT_CARD -> Command.PRINT;
                default -> first ? Command.NEXT : Command.choice(plain++);
            };
            offers.add(new Offer(
                    key,
                    first ? Offer.Kind.PRIMARY : Offer.Kind.PLAIN,
                    texts.say("bench.step", step),
                    step == BenchStep.PRINT_CARD ? viewCard : () -> actions.step(step)));
        }
        return offers;
    }
}
