package org.docksweep.service.bench;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.UUID;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A measurement of a proof sweep, never changed. */
@Entity
@Table(name = "proof_measurement")
class ProofMeasurement extends Stored<UUID> {
    static final int MOST_CHARACTERS = 1_000_000;

    @Id
    private UUID id;

    private UUID proofId;
    private int lineNumber;

    @Column(length = MOST_CHARACTERS)
    private String bodyJson;

    protected ProofMeasurement() {}

    ProofMeasurement(UUID proofId, int lineNumber, MeasurementBody body, String json) {
        this.id = body.id();
        this.proofId = proofId;
        this.lineNumber = lineNumber;
        this.bodyJson = json;
    }

    UUID proofId() {
        return proofId;
    }

    MeasurementBody measurement() {
        return StoredJson.read(bodyJson, MeasurementBody.class);
    }

    @Override
    public UUID getId() {
        return id;
    }
}
