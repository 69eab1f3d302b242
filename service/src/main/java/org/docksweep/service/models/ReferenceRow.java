package org.docksweep.service.models;

import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.MappedSuperclass;
import java.io.Serializable;
import java.time.Instant;
import org.docksweep.gate.PointReference;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/**
 * One revision of a reference. Revisions are never changed, only succeeded.
 *
 * @param <K> what it is of, and the revision
 */
@MappedSuperclass
abstract class ReferenceRow<K extends Serializable> extends Stored<K> {
    @EmbeddedId
    private K key;

    private int unitCount;
    private Instant storedAt;

    @Column(length = 1_000_000)
    private String bodyJson;

    protected ReferenceRow() {}

    ReferenceRow(K key, PointReference reference, Instant storedAt) {
        this.key = key;
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

    int unitCount() {
        return unitCount;
    }

    Instant storedAt() {
        return storedAt;
    }

    @Override
    public K getId() {
        return key;
    }
}
