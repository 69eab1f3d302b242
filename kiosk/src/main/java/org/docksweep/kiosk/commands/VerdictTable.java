package org.docksweep.kiosk.commands;

import java.io.PrintWriter;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.docksweep.fleet.Reasons;
import org.docksweep.gate.Reading;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.PointJudgement;
import org.docksweep.suspect.Suspect;

/** Judgements as CSV: one line per cabinet, or one per number read. Lines end in a line feed on every system. */
final class VerdictTable {
    /** Numbers read are stored with six digits. */
    private static final int DIGITS = 6;

    private VerdictTable() {}

    /**
     * A judged cabinet.
     *
     * @param cabinet its name in the index
     * @param judgement what the gate says
     */
    record Judged(String cabinet, CabinetJudgement judgement) {}

    static void print(List<Judged> judged, PrintWriter out) {
        out.print("cabinet,verdict,prompt,watch,first_suspect,position,probability,reason\n");
        for (Judged j : judged) {
            CabinetJudgement judgement = j.judgement();
            Suspect suspect =
                    judgement.suspects().isEmpty() ? null : judgement.suspects().get(0);
            line(
                    out,
                    j.cabinet(),
                    judgement.verdict(),
                    judgement.prompt(),
                    judgement.watch(),
                    suspect == null ? null : suspect.kind(),
                    suspect == null
                            ? null
                            : suspect.positionCode() == null ? suspect.elementId() : suspect.positionCode(),
                    suspect == null ? null : Digits.decimals(suspect.probability(), 3),
                    Reasons.text(judgement.reason(), Locale.ENGLISH));
        }
        out.flush();
    }

    static void printReadings(List<Judged> judged, PrintWriter out) {
        out.print(
                "cabinet,test_point,position,kind,value,standard_uncertainty,reference,lower_limit,upper_limit,state\n");
        for (Judged j : judged) {
            for (PointJudgement point : j.judgement().points()) {
                for (Reading r : point.readings()) {
                    line(
                            out,
                            j.cabinet(),
                            r.testPointCode(),
                            r.positionCode(),
                            r.kind(),
                            number(r.value()),
                            number(r.standardUncertainty()),
                            number(r.reference()),
                            number(r.lowerLimit()),
                            number(r.upperLimit()),
                            r.state());
                }
            }
        }
        out.flush();
    }

    private static String number(Double value) {
        return value == null || !Double.isFinite(value) ? null : Digits.significant(value, DIGITS);
    }

    private static void line(PrintWriter out, Object... fields) {
        out.print(Stream.of(fields)
                .map(field -> quoted(Objects.toString(field, "")))
                .collect(Collectors.joining(",", "", "\n")));
    }

    /** As RFC 4180 has it. */
    private static String quoted(String field) {
        boolean plain = field.chars().noneMatch(c -> c == ',' || c == '"' || c == '\n' || c == '\r');
        return plain ? field : "\"" + field.replace("\"", "\"\"") + "\"";
    }
}
