package org.docksweep.service.commissionings;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.gate.Baseline;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A baseline as stored, never changed; the newest of a cabinet's test point is in force. */
@Entity
@Table(name = "baseline")
class BaselineRow extends Stored<BaselineRow.Key> {
    @EmbeddedId
    private Key key;

    private String tag;
    private Instant takenAt;

    @Column(length = 1_000_000)
    private String bodyJson;

    protected BaselineRow() {}

    BaselineRow(UUID commissioningId, Baseline baseline) {
        this.key = new Key(commissioningId, baseline.testPointCode());
        this.tag = baseline.tag().value();
        this.takenAt = baseline.takenAt();
        this.bodyJson = StoredJson.write(baseline);
    }

    Baseline baseline() {
        return StoredJson.read(bodyJson, Baseline.class);
    }

    @Override
    public Key getId() {
        return key;
    }

    /** Commissioning and test point. */
    @Embeddable
    record Key(UUID commissioningId, String testPointCode) implements Serializable {}
}
