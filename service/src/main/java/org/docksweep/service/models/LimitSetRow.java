package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import org.docksweep.gate.LimitSet;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** One version of the limits, never changed. */
@Entity
@Table(name = "limit_set")
class LimitSetRow extends Stored<Integer> {
    @Id
    private Integer version;

    private Instant storedAt;

    @Column(length = 10_000)
    private String bodyJson;

    protected LimitSetRow() {}

    LimitSetRow(LimitSet limits, Instant storedAt) {
        this.version = limits.version();
        this.storedAt = storedAt;
        this.bodyJson = StoredJson.write(limits);
    }

    LimitSet limits() {
        return StoredJson.read(bodyJson, LimitSet.class);
    }

    @Override
    public Integer getId() {
        return version;
    }
}
