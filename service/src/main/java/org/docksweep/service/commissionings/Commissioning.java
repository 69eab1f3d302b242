package org.docksweep.service.commissionings;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.gate.Baseline;
import org.docksweep.service.store.Stored;

/** A commissioning as stored, never changed. */
@Entity
@Table(name = "commissioning")
class Commissioning extends Stored<UUID> {
    @Id
    private UUID id;

    private String tag;
    private Instant takenAt;
    private String operator;
    private String bodySha256;

    protected Commissioning() {}

    Commissioning(CommissioningBody body, String bodySha256) {
        this.id = body.id();
        this.tag = body.tag().value();
        this.takenAt = body.takenAt();
        this.operator = body.operator();
        this.bodySha256 = bodySha256;
    }

    CommissioningBody body(List<Baseline> baselines) {
        return new CommissioningBody(id, new AssetTag(tag), takenAt, operator, baselines);
    }

    String tag() {
        return tag;
    }

    String bodySha256() {
        return bodySha256;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
