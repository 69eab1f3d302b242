package org.docksweep.service.cabinets;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;
import tools.jackson.core.type.TypeReference;

/** An event of a cabinet's history, never changed. */
@Entity
@Table(name = "history_event")
class EventRow extends Stored<UUID> {
    static final String INSERT =
            "insert into history_event (id, tag, position_code, happened_at, done_by, kind, text_key,"
                    + " text_arguments_json) values (?, ?, ?, ?, ?, ?, ?, ?)";

    @Id
    private UUID id;

    private String tag;
    private String positionCode;
    private Instant happenedAt;
    private String doneBy;

    @Enumerated(EnumType.STRING)
    private HistoryEvent.Kind kind;

    private String textKey;

    @Column(length = 4_000)
    private String textArgumentsJson;

    protected EventRow() {}

    EventRow(HistoryEvent event) {
        this.id = event.id();
        this.tag = event.tag().value();
        this.positionCode = event.positionCode();
        this.happenedAt = StoredJson.cut(event.at());
        this.doneBy = event.by();
        this.kind = event.kind();
        this.textKey = event.text().key();
        this.textArgumentsJson = StoredJson.write(event.text().arguments());
    }

    /** The same in the order of {@link #INSERT}. */
    static Object[] values(HistoryEvent event) {
        return new Object[] {
            event.id(),
            event.tag().value(),
            event.positionCode(),
            event.at(),
            event.by(),
            event.kind(),
            event.text().key(),
            StoredJson.write(event.text().arguments())
        };
    }

    HistoryEvent event() {
        Reason text = new Reason(textKey, StoredJson.read(textArgumentsJson, new TypeReference<List<String>>() {}));
        return new HistoryEvent(id, new AssetTag(tag), positionCode, happenedAt, doneBy, kind, text);
    }

    /** Key to go on reading after this event. */
    String key() {
        return happenedAt + "~" + id;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
