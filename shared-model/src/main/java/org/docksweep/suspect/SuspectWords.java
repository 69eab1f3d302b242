package org.docksweep.suspect;

import java.util.List;
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
        String what = what(hypothesis.positionCode(), hypothesis.elementId(), point.contacts());
        String key = key(hypothesis.kind(), hypothesis.positionCode(), hypothesis.elementId());
        return new Suspect(
                hypothesis.kind(),
                point.code(),
                position(hypothesis, model, point),
                hypothesis.positionCode() == null ? hypothesis.elementId() : null,
                probability,
                Reason.of("suspect-" + key, what, severity(hypothesis, fit)),
                Reason.of("next-" + key, what));
    }

    static Suspect unknown(TestPoint point, double probability) {
        return new Suspect(
                FaultKind.UNKNOWN,
                point.code(),
                null,
                null,
                probability,
                Reason.of("suspect-unknown", ""),
                Reason.of("next-unknown"));
    }

    private static String what(String position, String element, String contacts) {
        return element != null ? element : position != null ? position : contacts;
    }

    /** The plug's contact is a matter of its own. */
    private static String key(FaultKind kind, String position, String element) {
        return kind == FaultKind.CONTACT_RESISTANCE && position == null && element == null
                ? "plug-contact"
                : kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The suspect with the other members of its group and what splits them. */
    static Suspect withGroup(Suspect suspect, AmbiguityGroups.Group group) {
        List<Reason> alike = group.members().stream()
                .filter(m -> !m.is(suspect.kind(), suspect.positionCode(), suspect.elementId()))
                .map(m -> Reason.of(
                        "suspect-alike",
                        what(m.positionCode(), m.elementId(), "@word-plug"),
                        "@word-" + key(m.kind(), m.positionCode(), m.elementId())))
                .distinct()
                .toList();
        return new Suspect(
                suspect.kind(),
                suspect.testPointCode(),
                suspect.positionCode(),
                suspect.elementId(),
                suspect.probability(),
                suspect.evidence(),
                suspect.nextStep(),
                alike,
                alike.isEmpty()
                        ? null
                        : Reason.of("split-"
                                + group.split().name().toLowerCase(Locale.ROOT).replace('_', '-')),
                suspect.predicted());
    }

    /** A crossover part is looked for at the one driver it feeds; a box at its first driver. */
    static String position(Hypothesis hypothesis, CabinetModel model, TestPoint point) {
        if (hypothesis.positionCode() != null || hypothesis.elementId() == null) {
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
        if (!hypothesis.grows()) {
            return "";
        }
        double last = hypothesis.severityOf(fit.x()[fit.x().length - 1]);
        return switch (hypothesis.kind()) {
            case SHORTED_TURNS, MAGNET_WEAK -> String.format(Locale.ROOT, "%.0f %%", 100 * last);
            case CONTACT_RESISTANCE -> String.format(Locale.ROOT, "%.1f \u03a9", last);
            default -> "";
        };
    }
}
