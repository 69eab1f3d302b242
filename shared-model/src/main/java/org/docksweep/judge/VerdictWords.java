package org.docksweep.judge;

import java.util.List;
import java.util.Locale;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/** Makes the deciding sentence of a failed point. */
final class VerdictWords {
    /** Two suspects whose probabilities are closer than this cannot be told apart. */
    private static final double TOLD_APART = 3;

    private VerdictWords() {}

    static Reason reason(CabinetModel model, List<Suspect> suspects, CurveReadings.Deviation worst) {
        Suspect first = suspects.get(0);
        String where = worst == null
                ? ""
                : Rounding.decibel(worst.deviationDb()) + ", " + Rounding.hertz(worst.fromHz()) + " \u2013 "
                        + Rounding.hertz(worst.toHz());
        String key = first.kind().name().toLowerCase(Locale.ROOT).replace('_', '-');
        Suspect twin = twin(first, suspects);
        String place = first.positionCode() != null && first.elementId() == null
                ? first.positionCode()
                : first.elementId() != null ? first.elementId() : "";
        if (first.kind() == FaultKind.CONTACT_RESISTANCE && first.positionCode() == null) {
            return Reason.of("verdict-plug-contact", where);
        }
        if (first.kind() == FaultKind.UNKNOWN) {
            return Reason.of("verdict-unknown", where);
        }
        if (twin != null) {
            return Reason.of("verdict-twin-" + key, place, twin.positionCode());
        }
        String way =
                first.positionCode() != null && first.elementId() == null ? wayWord(model, first.positionCode()) : "";
        return Reason.of("verdict-" + key, place, way, where);
    }

    /** The way of a position as a word of the bundle. */
    static String wayWord(CabinetModel model, String positionCode) {
        return "@way-" + model.position(positionCode).way().name().toLowerCase(Locale.ROOT);
    }

    /** The same fault at another position that is as probable: the current cannot tell which. */
    static Suspect twin(Suspect first, List<Suspect> suspects) {
        return suspects.stream()
                .filter(s -> s != first
                        && s.kind() == first.kind()
                        && first.positionCode() != null
                        && first.elementId() == null
                        && s.elementId() == null
                        && s.positionCode() != null
                        && !s.positionCode().equals(first.positionCode())
                        && s.probability() * TOLD_APART > first.probability())
                .findFirst()
                .orElse(null);
    }
}
