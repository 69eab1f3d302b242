package org.docksweep.paper;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingState;

/**
 * Everything the blocks of a tag draw from.
 *
 * @param ink ink of the page
 * @param text words and numbers
 * @param content content of the tag
 * @param model cabinet model of the check-in
 */
record TagScene(Ink ink, PaperText text, RepairTagContent content, CabinetModel model) {

    CheckInBody checkIn() {
        return content.checkIn();
    }

    String jobCode() {
        return checkIn().jobCode().value();
    }

    /** Driver installed in the position at fault. */
    Optional<InstalledDriver> driverAtFault() {
        return content.cabinet().drivers().stream()
                .filter(d -> d.positionCode().equals(checkIn().faultPositionCode()))
                .findFirst();
    }

    /** Model of the driver at fault: the one fitted, else the one that belongs there. */
    Optional<DriverModel> driverModelAtFault() {
        if (checkIn().faultPositionCode() == null) {
            return Optional.empty();
        }
        String belongs = model.position(checkIn().faultPositionCode()).driverModelCode();
        return Optional.of(content.book()
                .driverModel(
                        driverAtFault().map(InstalledDriver::driverModelCode).orElse(belongs)));
    }

    Optional<CurveChoice> curve() {
        return CurveChoice.of(checkIn(), model, content.references());
    }

    /** Readings that matter most first: faults, watch marks, those of the position at fault, then as measured. */
    List<Reading> readings() {
        return CurveChoice.lastJudgements(checkIn()).stream()
                .flatMap(p -> p.readings().stream())
                .sorted(Comparator.comparing((Reading r) -> r.state() != ReadingState.FAULT)
                        .thenComparing(r -> r.state() != ReadingState.WATCH)
                        .thenComparing(r -> r.positionCode() == null
                                || !r.positionCode().equals(checkIn().faultPositionCode())))
                .toList();
    }

    Sign verdictSign() {
        return Sign.of(checkIn().verdict(), checkIn().route(), false);
    }

    String verdictWord() {
        return checkIn().verdict() == null
                ? text.get("tag.held-without-sweep")
                : text.word("verdict", checkIn().verdict());
    }

    /** Model, who scanned when, and what the eye saw, in one line. */
    String circumstances() {
        String line = checkIn().tag() + "  \u00b7  " + text.get("tag.job") + " " + jobCode() + "  \u00b7  "
                + model.code() + " " + model.name() + "  \u00b7  "
                + text.get(
                        "tag.scan", checkIn().operator(), text.moment(checkIn().startedAt()));
        if (checkIn().visualDamage().isEmpty()) {
            return line;
        }
        String damage = checkIn().visualDamage().stream()
                .sorted()
                .map(item -> text.word("damage", item))
                .collect(Collectors.joining(", "));
        return line + "  \u00b7  " + text.get("tag.damage", damage);
    }

    String foot() {
        String judged = checkIn().judgeVersion() == null
                ? ""
                : "  \u00b7  "
                        + text.get(
                                "foot.gate",
                                checkIn().judgeVersion(),
                                text.count(checkIn().limitsVersion()));
        return text.printedLine() + "  \u00b7  " + text.versionLine() + judged;
    }
}
