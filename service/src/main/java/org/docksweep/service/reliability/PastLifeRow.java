package org.docksweep.service.reliability;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.PastPartLife;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A life of a part from before the bench wrote it down, never changed. */
@Entity
@Table(name = "past_part_life")
class PastLifeRow extends Stored<UUID> {
    @Id
    private UUID id;

    private String tag;
    private String driverModelCode;
    private Instant storedAt;
    private String bodySha256;

    @Column(length = 4_000)
    private String bodyJson;

    protected PastLifeRow() {}

    PastLifeRow(PastPartLife past, Instant storedAt) {
        this.id = past.life().id();
        this.tag = past.life().tag().value();
        this.driverModelCode = past.life().driverModelCode();
        this.storedAt = storedAt;
        this.bodySha256 = StoredJson.sha256(past);
        this.bodyJson = StoredJson.write(past);
    }

    PastPartLife past() {
        return StoredJson.read(bodyJson, PastPartLife.class);
    }

    boolean says(PastPartLife other) {
        return bodySha256.equals(StoredJson.sha256(other));
    }

    @Override
    public UUID getId() {
        return id;
    }
}
