package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.Objects;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** One revision of a reference. Revisions are never changed, only succeeded. */
@Entity
@Table(name = "point_reference")
class PointReferenceRow extends Stored<PointReferenceRow.Key> {
    @EmbeddedId
    private Key key;

    private int unitCount;
    private Instant storedAt;
    private String storedBy;

    @Column(length = 1_000_000)
    private String bodyJson;

    protected PointReferenceRow() {}

    PointReferenceRow(PointReference reference, int revision, Instant storedAt, String storedBy) {
        this.key = new Key(reference.cabinetModelCode(), reference.testPointCode(), revision);
        this.unitCount = reference.unitCount();
        this.storedAt = storedAt;
        this.storedBy = storedBy;
        this.bodyJson = StoredJson.write(reference);
    }

    boolean says(PointReference reference) {
        return bodyJson.equals(StoredJson.write(reference));
    }

    PointReference reference() {
        return StoredJson.read(bodyJson, PointReference.class);
    }

    TaughtPoint taught() {
        return new TaughtPoint(key.cabinetModelCode, key.testPointCode, key.revision, unitCount, storedAt, storedBy);
    }

    Instant storedAt() {
        return storedAt;
    }

    int revision() {
        return key.revision;
    }

    @Override
    public Key getId() {
        return key;
    }

    /** Model, test point and revision. */
    @Embeddable
    static class Key implements Serializable {
        private static final long serialVersionUID = 1L;
        private String cabinetModelCode;
        private String testPointCode;
        private int revision;

        protected Key() {}

        Key(String cabinetModelCode, String testPointCode, int revision) {
            this.cabinetModelCode = cabinetModelCode;
            this.testPointCode = testPointCode;
            this.revision = revision;
        }

        @Override
        public boolean equals(Object other) {
            return other instanceof Key that
                    && cabinetModelCode.equals(that.cabinetModelCode)
                    && testPointCode.equals(that.testPointCode)
                    && revision == that.revision;
        }

        @Override
        public int hashCode() {
            return Objects.hash(cabinetModelCode, testPointCode, revision);
        }
    }
}
