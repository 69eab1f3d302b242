package org.docksweep.service.bench;

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
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.Reason;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;
import tools.jackson.core.type.TypeReference;

/** Something that happened to a driver unit while it sat in no cabinet; never changed. */
@Entity
@Table(name = "unit_event")
class UnitEventRow extends Stored<UUID> {
    @Id
    private UUID id;

    private String driverModelCode;
    private String driverSerial;
    private Instant happenedAt;
    private String doneBy;

    @Enumerated(EnumType.STRING)
    private HistoryEvent.Kind kind;

    private String textKey;

    @Column(length = 4_000)
    private String textArgumentsJson;

    protected UnitEventRow() {}

    UnitEventRow(String driverModelCode, String driverSerial, UUID id, Timeline.Entry event) {
        this.id = id;
        this.driverModelCode = driverModelCode;
        this.driverSerial = driverSerial;
        this.happenedAt = event.at();
        this.doneBy = event.by();
        this.kind = event.kind();
        this.textKey = event.text().key();
        this.textArgumentsJson = StoredJson.write(event.text().arguments());
    }

    Timeline.Entry entry() {
        Reason text = new Reason(textKey, StoredJson.read(textArgumentsJson, new TypeReference<List<String>>() {}));
        return new Timeline.Entry(happenedAt, null, null, kind, doneBy, text);
    }

    @Override
    public UUID getId() {
        return id;
    }
}
