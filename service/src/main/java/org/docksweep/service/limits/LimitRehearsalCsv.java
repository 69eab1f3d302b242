package org.docksweep.service.limits;

import java.util.Locale;
import org.docksweep.contract.LimitRehearsal;

/** A rehearsal as a table: changes first, then what could not be judged with the reason. Numbers never follow a locale. */
final class LimitRehearsalCsv {
    private static final String HEAD = "checkIn,tag,model,finishedAt,before,watchBefore,after,watchAfter,testPoint,"
            + "faultProbability,misfit,notJudged\r\n";

    private LimitRehearsalCsv() {}

    static String of(LimitRehearsal rehearsal) {
        StringBuilder csv = new StringBuilder(HEAD);
        for (LimitRehearsal.Change c : rehearsal.changes()) {
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%s,%s,%s,%s,%b,%s,%b,%s,%.4f,%.3f,\r\n",
                    c.checkInId(),
                    c.tag(),
                    cell(c.modelCode()),
                    c.finishedAt(),
                    c.before(),
                    c.watchBefore(),
                    c.after(),
                    c.watchAfter(),
                    cell(c.testPointCode()),
                    c.faultProbability(),
                    c.misfit()));
        }
        for (LimitRehearsal.NotJudged n : rehearsal.notJudged()) {
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%s,,%s,%s,,,,,,,%s\r\n",
                    n.checkInId(),
                    n.tag(),
                    n.finishedAt(),
                    n.verdict() == null ? "" : n.verdict(),
                    cell(n.why() + ": " + n.words())));
        }
        return csv.toString();
    }

    /** Text as a cell: quoted, and never read as a formula. */
    private static String cell(String text) {
        String safe = text.matches("(?s)[=+\\-@\\t\\r].*") ? "'" + text : text;
        return '"' + safe.replace("\"", "\"\"") + '"';
    }
}
