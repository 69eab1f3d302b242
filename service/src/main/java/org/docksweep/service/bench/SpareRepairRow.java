package org.docksweep.service.bench;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.SpareRepairBody;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A repair of a driver on its own, never changed. */
@Entity
@Table(name = "spare_repair")
class SpareRepairRow extends Stored<UUID> {
    static final int MOST_CHARACTERS = 100_000;

    @Id
    private UUID id;

    private String partNumber;
    private String driverSerial;
    private Instant happenedAt;
    private Instant storedAt;
    private String doneBy;
    private String tokenName;

    @Column(length = MOST_CHARACTERS)
    private String bodyJson;

    private String bodySha256;

    protected SpareRepairRow() {}

    SpareRepairRow(SpareRepairBody body, SpareRepairBody bare, String sha256, String tokenName, Instant storedAt) {
        this.id = body.id();
        this.partNumber = body.partNumber();
        this.driverSerial = body.driverSerial();
        this.happenedAt = body.at();
        this.storedAt = storedAt;
        this.doneBy = body.by();
        this.tokenName = tokenName;
        this.bodyJson = StoredJson.write(bare);
        this.bodySha256 = sha256;
    }

    String bodySha256() {
        return bodySha256;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
