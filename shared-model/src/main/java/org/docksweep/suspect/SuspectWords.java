package org.docksweep.suspect;

import java.util.Locale;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;

/** Says what speaks for a hypothesis and what to look at first. */
final class SuspectWords {
    private SuspectWords() {}

    static Suspect suspect(
            Hypothesis hypothesis, CabinetModel model, TestPoint point, double probability, CircuitFit.Result fit) {
        String what = hypothesis.positionCode() != null ? hypothesis.positionCode() : hypothesis.elementId();
        String key = hypothesis.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        return new Suspect(
                hypothesis.kind(),
                point.code(),
                position(hypothesis, model, point),
                hypothesis.positionCode() == null ? hypothesis.elementId() : null,
                probability,
                Reason.of("suspect-" + key, what, severity(hypothesis, fit)),
                Reason.of("next-" + key, what));
    }

    /** A crossover part is looked for at the one driver it feeds; a box at its first driver. */
    static String position(Hypothesis hypothesis, CabinetModel model, TestPoint point) {
        if (hypothesis.positionCode() != null) {
            return hypothesis.positionCode();
        }
        return model.enclosures().stream()
                .filter(e -> e.id().equals(hypothesis.elementId()))
                .filter(e -> point.positionCodes().containsAll(e.positionCodes()))
                .map(e -> e.positionCodes().get(0))
                .findFirst()
                .orElseGet(() -> Branch.positionFedBy(point, hypothesis.elementId()));
    }

    private static String severity(Hypothesis hypothesis, CircuitFit.Result fit) {
        double last = StrictMath.exp(fit.x()[fit.x().length - 1]);
        return switch (hypothesis.kind()) {
            case SHORTED_TURNS -> String.format(Locale.ROOT, "%.0f %%", 100 * last);
            case CONTACT_RESISTANCE -> String.format(Locale.ROOT, "%.1f \u03a9", last);
            default -> "";
        };
    }
}
