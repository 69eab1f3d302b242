package org.docksweep.kiosk.night;

import java.io.PrintWriter;
import java.util.Locale;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.RatedImpedanceRule;
import org.docksweep.suspect.Suspect;

/** Says line by line how a night goes. */
final class NightReport {
    private final PrintWriter out;

    NightReport(PrintWriter out) {
        this.out = out;
    }

    void say(String format, Object... values) {
        out.println(String.format(Locale.ROOT, format, values));
        out.flush();
    }

    /** A model rated too high is registered all the same: the rule rates the type and never fails a unit. */
    void ratings(ModelBook book) {
        for (CabinetModel model : book.cabinetModels()) {
            for (RatedImpedanceRule.Warning warning : RatedImpedanceRule.warnings(book, model)) {
                say(
                        "Note on %s, %s: lowest %.2f ohm at %.0f Hz; its rated impedance asks for %.2f ohm (IEC 60268-5)",
                        model.code(),
                        warning.testPointCode(),
                        warning.lowestOhm(),
                        warning.frequencyHz(),
                        warning.allowedOhm());
            }
        }
    }

    /** How much the house knows before the hire. */
    void known(BeforeTheHire.Known known) {
        Commissioning.Result commissioning = known.cabinets();
        say(
                "Before the hire: %d sweeps, %d references from known-good units, %d baselines",
                commissioning.sweeps(),
                commissioning.references().size(),
                commissioning.baselines().size());
    }

    /** One line per cabinet. */
    void result(int number, int of, CheckInBody body, DockHand.Outcome outcome) {
        say(
                "%2d of %d  %s  %-8s %-11s %-14s %s%s  %.2f s%s",
                number,
                of,
                body.tag(),
                body.modelCode(),
                body.verdict() == null ? "not swept" : body.verdict().name().replace('_', ' '),
                outcome.answer().place() + (body.jobCode() == null ? "" : " " + body.jobCode()),
                Reasons.text(body.reason(), Locale.ENGLISH),
                body.suspects().isEmpty() ? "" : words(body.suspects().get(0)),
                outcome.seconds(),
                outcome.prompts().isEmpty() ? "" : "  asked: " + outcome.prompts());
    }

    private static String words(Suspect suspect) {
        return String.format(
                Locale.ROOT,
                "  [%s%s %.0f %%]",
                suspect.kind().name().toLowerCase(Locale.ROOT).replace('_', ' '),
                suspect.positionCode() == null ? "" : " " + suspect.positionCode(),
                100 * suspect.probability());
    }
}
