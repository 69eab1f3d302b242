package org.docksweep.service.models;

import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.gate.PointReference;

/** One revision of a reference of a cabinet model's test point, and who stored it. */
@Entity
@Table(name = "point_reference")
class PointReferenceRow extends ReferenceRow<PointReferenceRow.Key> {
    private String storedBy;

    protected PointReferenceRow() {}

    PointReferenceRow(PointReference reference, int revision, Instant storedAt, String storedBy) {
        super(new Key(reference.cabinetModelCode(), reference.testPointCode(), revision), reference, storedAt);
        this.storedBy = storedBy;
    }

    TaughtPoint taught() {
        return new TaughtPoint(
                getId().cabinetModelCode(),
                getId().testPointCode(),
                getId().revision(),
                unitCount(),
                storedAt(),
                storedBy);
    }

    int revision() {
        return getId().revision();
    }

    /** Model, test point and revision. */
    @Embeddable
    record Key(String cabinetModelCode, String testPointCode, int revision) implements Serializable {}
}
