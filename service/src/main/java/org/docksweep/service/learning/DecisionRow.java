package org.docksweep.service.learning;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.LearningDecision;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** A decision about learning, never changed. */
@Entity
@Table(name = "learning_decision")
class DecisionRow extends Stored<UUID> {
    @Id
    private UUID id;

    private Instant decidedAt;
    private String decidedBy;

    @Enumerated(EnumType.STRING)
    private LearningDecision.Kind kind;

    private UUID findingId;
    private String why;
    private String bodySha256;

    protected DecisionRow() {}

    DecisionRow(LearningDecision decision) {
        this.id = decision.id();
        this.decidedAt = decision.at();
        this.decidedBy = decision.by();
        this.kind = decision.kind();
        this.findingId = decision.findingId();
        this.why = decision.why();
        this.bodySha256 = StoredJson.sha256(decision);
    }

    LearningDecision decision() {
        return new LearningDecision(id, decidedAt, decidedBy, kind, findingId, why);
    }

    boolean says(LearningDecision other) {
        return bodySha256.equals(StoredJson.sha256(other));
    }

    @Override
    public UUID getId() {
        return id;
    }
}
