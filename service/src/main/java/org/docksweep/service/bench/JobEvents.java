package org.docksweep.service.bench;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import org.docksweep.contract.BenchActionBody;
import org.docksweep.contract.FindingBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.PartExchangeBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.Reason;
import org.docksweep.service.cabinets.Fleet;
import org.springframework.stereotype.Component;

/** Writes what the bench does into the history of the cabinet. Ids follow from the records, so that no retry doubles one. */
@Component
class JobEvents {
    private final Fleet fleet;
    private final UnitEvents unitEvents;

    JobEvents(Fleet fleet, UnitEvents unitEvents) {
        this.fleet = fleet;
        this.unitEvents = unitEvents;
    }

    private static UUID id(UUID record, String what) {
        return UUID.nameUUIDFromBytes(("job record " + record + " " + what).getBytes(StandardCharsets.UTF_8));
    }

    /** Words of a person pass through as they are; a leading "@" would make them a key. */
    static String words(String text) {
        return text == null ? "" : text.startsWith("@") ? " " + text : text;
    }

    void acted(BenchJob job, BenchActionBody action) {
        String code = job.getId();
        Reason text = switch (action.verb()) {
            case ACCEPT -> Reason.of("history-bench-accepted", code, words(action.bench()));
            case HAND_BACK -> Reason.of("history-bench-handed-back", code);
            case WAIT_FOR_PART -> Reason.of("history-bench-waits", code, action.partNumber());
            case START_REPAIR -> Reason.of("history-bench-repair", code);
            case START_PROOF -> Reason.of("history-bench-proof", code);
            case SIGN_OFF -> Reason.of("history-bench-signed-off", code);
            case SCRAP -> Reason.of("history-bench-scrapped", code, words(action.text()));
            case RETURN_UNREPAIRED -> Reason.of("history-bench-unrepaired", code, words(action.text()));
        };
        HistoryEvent.Kind kind = switch (action.verb()) {
            case SIGN_OFF -> HistoryEvent.Kind.SIGNED_OFF;
            case SCRAP -> HistoryEvent.Kind.SCRAPPED;
            case RETURN_UNREPAIRED -> HistoryEvent.Kind.HELD;
            case ACCEPT, HAND_BACK, WAIT_FOR_PART, START_REPAIR, START_PROOF -> HistoryEvent.Kind.AT_BENCH;
        };
        append(job, null, action.id(), "action", action.at(), action.by(), kind, text);
    }

    private void append(
            BenchJob job,
            String position,
            UUID record,
            String what,
            Instant at,
            String by,
            HistoryEvent.Kind kind,
            Reason text) {
        fleet.append(new HistoryEvent(id(record, what), job.tag(), position, at, by, kind, text));
    }

    static Reason found(FindingBody finding) {
        String cause =
                "@cause-" + finding.cause().name().toLowerCase(Locale.ROOT).replace('_', '-');
        return Reason.of("history-bench-found", cause, words(finding.causeText()));
    }

    void found(BenchJob job, FindingBody finding) {
        append(
                job,
                finding.positionCode(),
                finding.id(),
                "finding",
                finding.at(),
                finding.by(),
                HistoryEvent.Kind.FOUND,
                found(finding));
    }

    void exchanged(BenchJob job, PartExchangeBody exchange, Timeline.Stay out) {
        PartExchangeBody.Removed removed = exchange.removed();
        if (removed != null) {
            String what = out == null
                    ? exchange.elementId()
                    : removed.what() == PartExchangeBody.What.DRIVER_UNIT ? out.driverModelCode() : out.partNumber();
            append(
                    job,
                    exchange.positionCode(),
                    exchange.id(),
                    "removed",
                    exchange.at(),
                    exchange.by(),
                    HistoryEvent.Kind.REMOVED,
                    removed(what, removed.serial()));
        }
        if (exchange.fitted() != null) {
            append(
                    job,
                    exchange.positionCode(),
                    exchange.id(),
                    "fitted",
                    exchange.at(),
                    exchange.by(),
                    HistoryEvent.Kind.INSTALLED,
                    Reason.of(
                            "history-bench-fitted",
                            exchange.fitted().partNumber(),
                            serial(exchange.fitted().serial())));
        }
    }

    /** What was taken out, as far as anybody knows what it was. */
    private static Reason removed(String what, String serial) {
        if (what == null) {
            return serial == null
                    ? Reason.of("history-bench-removed-old")
                    : Reason.of("history-bench-removed-serial", words(serial));
        }
        return serial == null
                ? Reason.of("history-bench-removed-bare", what)
                : Reason.of("history-bench-removed", what, words(serial));
    }

    private static String serial(String serial) {
        return serial == null ? "-" : words(serial);
    }

    void unitTakenOut(BenchJob job, PartExchangeBody exchange, String driverModelCode, String serial, boolean kept) {
        unitEvents.append(
                driverModelCode,
                serial,
                id(exchange.id(), "unit"),
                exchange.at(),
                exchange.by(),
                kept ? HistoryEvent.Kind.REMOVED : HistoryEvent.Kind.SCRAPPED,
                kept ? Reason.of("history-spare-kept", job.tag().value()) : removed(driverModelCode, serial));
    }

    void proved(BenchJob job, ProofSweepBody sweep, boolean clean) {
        String subject =
                sweep.subject() == ProofSweepBody.Subject.CABINET ? "@proof-subject-cabinet" : "@proof-subject-bare";
        append(
                job,
                sweep.positionCode(),
                sweep.id(),
                "proof",
                sweep.at(),
                sweep.by(),
                HistoryEvent.Kind.PROVED,
                Reason.of(clean ? "history-bench-proof-clean" : "history-bench-proof-not-clean", subject));
    }
}
