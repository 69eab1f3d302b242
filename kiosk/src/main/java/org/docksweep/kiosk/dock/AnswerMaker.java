package org.docksweep.kiosk.dock;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.fleet.Route;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.paper.RepairTagContent;

/** Says a recorded check-in again: as the answer on the screen, as its curve, as the content of its tag. */
final class AnswerMaker {
    private final Locale locale;

    AnswerMaker(Locale locale) {
        this.locale = locale;
    }

    Answer of(CheckInBody body, CabinetBody cabinet, TagPrint tagPrint) {
        return new Answer(
                Optional.ofNullable(body.verdict()),
                Prompt.NONE,
                Optional.of(body.route()),
                place(body.route(), cabinet),
                body.watch(),
                body.reason(),
                body.suspects(),
                Optional.ofNullable(body.jobCode()),
                tagPrint);
    }

    /** An earlier result; from another kiosk only its one line is known. */
    Answer of(ReturnsBook.Entry earlier, Optional<CheckInBody> here, CabinetBody cabinet) {
        return here.map(b -> of(b, cabinet, TagPrint.NOT_NEEDED))
                .orElseGet(() -> new Answer(
                        Optional.ofNullable(earlier.row().verdict()),
                        Prompt.NONE,
                        Optional.of(earlier.row().route()),
                        place(earlier.row().route(), cabinet),
                        earlier.row().watch(),
                        earlier.row().reason(),
                        List.of(),
                        Optional.ofNullable(earlier.row().jobCode()),
                        TagPrint.NOT_NEEDED));
    }

    private String place(Route route, CabinetBody cabinet) {
        Reason reason = switch (route) {
            case SHELF ->
                cabinet.shelfPlace().isBlank()
                        ? Reason.of("dock-place-shelf-any")
                        : Reason.of("dock-place-shelf", cabinet.shelfPlace());
            case BENCH -> Reason.of("dock-place-bench");
            case SAFETY_HOLD -> Reason.of("dock-place-safety-hold");
            case MANUAL_HOLD -> Reason.of("dock-place-manual-hold");
        };
        return Reasons.text(reason, locale);
    }

    Optional<DockState.CurvePicture> curve(CheckInBody body, LocalFleet fleet) {
        Map<String, PointJudgement> last = new LinkedHashMap<>();
        for (MeasurementBody measurement : body.measurements()) {
            last.put(measurement.judgement().testPointCode(), measurement.judgement());
        }
        return CurvePictures.deciding(
                List.copyOf(last.values()), body.modelCode(), fleet.references(), fleet.baselinesOf(body.tag()));
    }

    RepairTagContent tag(CheckInBody body, LocalFleet fleet, LocalDate needOn) {
        CabinetBody cabinet = fleet.cabinet(body.tag())
                .orElseThrow(() -> new IllegalStateException("cabinet " + body.tag() + " is no longer in the fleet"));
        List<HistoryEvent> events = fleet.eventsOf(body.tag()).stream()
                .filter(e -> body.faultPositionCode() == null
                        || e.positionCode() == null
                        || e.positionCode().equals(body.faultPositionCode()))
                .toList();
        return new RepairTagContent(
                body,
                cabinet,
                fleet.snapshot().book(),
                fleet.references().stream()
                        .filter(r -> r.cabinetModelCode().equals(body.modelCode()))
                        .toList(),
                events,
                needOn);
    }
}
