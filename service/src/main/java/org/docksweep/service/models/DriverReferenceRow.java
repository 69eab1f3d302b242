package org.docksweep.service.models;

import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import org.docksweep.gate.PointReference;

/** One revision of a bare driver's reference. */
@Entity
@Table(name = "driver_reference")
class DriverReferenceRow extends ReferenceRow<DriverReferenceRow.Key> {
    protected DriverReferenceRow() {}

    DriverReferenceRow(String driverModelCode, PointReference reference, int revision, Instant storedAt) {
        super(new Key(driverModelCode, revision), reference, storedAt);
    }

    int revision() {
        return getId().revision();
    }

    /** Driver model and revision. */
    @Embeddable
    record Key(String driverModelCode, int revision) implements Serializable {}
}
