package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.Objects;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** One revision of a bare driver's reference. Revisions are never changed, only succeeded. */
@Entity
@Table(name = "driver_reference")
class DriverReferenceRow extends Stored<DriverReferenceRow.Key> {
    @EmbeddedId
    private Key key;

    private int unitCount;
    private Instant storedAt;

    @Column(length = 1_000_000)
    private String bodyJson;

    protected DriverReferenceRow() {}

    DriverReferenceRow(String driverModelCode, PointReference reference, int revision, Instant storedAt) {
        this.key = new Key(driverModelCode, revision);
        this.unitCount = reference.unitCount();
        this.storedAt = storedAt;
        this.bodyJson = StoredJson.write(reference);
    }

    boolean says(PointReference reference) {
        return bodyJson.equals(StoredJson.write(reference));
    }

    PointReference reference() {
        return StoredJson.read(bodyJson, PointReference.class);
    }

    int revision() {
        return key.revision;
    }

    @Override
    public Key getId() {
        return key;
    }

    /** Driver model and revision. */
    @Embeddable
    static class Key implements Serializable {
        private static final long serialVersionUID = 1L;
        private String driverModelCode;
        private int revision;

        protected Key() {}

        Key(String driverModelCode, int revision) {
            this.driverModelCode = driverModelCode;
            this.revision = revision;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Key that
                    && driverModelCode.equals(that.driverModelCode)
                    && revision == that.revision;
        }

        @Override
        public int hashCode() {
            return Objects.hash(driverModelCode, revision);
        }
    }
}
