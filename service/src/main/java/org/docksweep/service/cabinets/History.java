package org.docksweep.service.cabinets;

import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.Page;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The history of a cabinet: read newest first, extended, never changed. */
@Service
@Transactional
class History {
    private final Cabinets cabinets;
    private final Events events;

    History(Cabinets cabinets, Events events) {
        this.cabinets = cabinets;
        this.events = events;
    }

    @Transactional(readOnly = true)
    Page<HistoryEvent> page(AssetTag tag, String after, int limit) {
        Limit most = Limit.of(Paging.checked(limit) + 1);
        requireKnown(tag);
        List<EventRow> rows;
        if (after.isEmpty()) {
            rows = events.newest(tag.value(), most);
        } else {
            String[] parts = after.split("~", 2);
            try {
                rows = events.newestAfter(
                        tag.value(), Instant.parse(parts[0]), UUID.fromString(parts.length == 2 ? parts[1] : ""), most);
            } catch (DateTimeParseException | IllegalArgumentException e) {
                throw Refusal.badField(
                        "after", "after must be \"next\" of the page before", "Leave it out for the first page.");
            }
        }
        return Paging.page(rows, limit, EventRow::event, EventRow::key);
    }

    private void requireKnown(AssetTag tag) {
        if (!cabinets.existsById(tag.value())) {
            throw Fleet.unknown(tag);
        }
    }

    /** Takes over past events; an event that is there already must say the same. */
    ImportReceipt append(AssetTag tag, List<HistoryEvent> past) {
        requireKnown(tag);
        Check check = new Check();
        for (int i = 0; i < past.size(); i++) {
            HistoryEvent event = past.get(i);
            String at = "[" + i + "]";
            check.present(event, at);
            if (event != null) {
                check.present(event.id(), at + ".id")
                        .present(event.at(), at + ".at")
                        .present(event.kind(), at + ".kind")
                        .present(event.text(), at + ".text")
                        .text(event.by(), 120, at + ".by")
                        .optionalText(event.positionCode(), 40, at + ".positionCode")
                        .that(tag.equals(event.tag()), at + ".tag", "must be " + tag + " as in the address");
            }
        }
        check.refuseIfWrong();
        int stored = 0;
        for (HistoryEvent event : past) {
            HistoryEvent cut = new HistoryEvent(
                    event.id(),
                    tag,
                    event.positionCode(),
                    StoredJson.cut(event.at()),
                    event.by(),
                    event.kind(),
                    event.text());
            var before = events.findById(event.id());
            if (before.isEmpty()) {
                events.save(new EventRow(cut));
                stored++;
            } else if (!before.get().event().equals(cut)) {
                throw Refusal.idReused(
                        "event " + event.id() + " is in the history already and says something else",
                        "Histories are never changed: append another event under a new id.");
            }
        }
        return new ImportReceipt(past.size(), stored, past.size() - stored);
    }
}
