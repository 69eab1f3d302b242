package org.docksweep.service.trends;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.DriftRow;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** What was last said of a quantity that drifts. */
@Entity
@Table(name = "drift_warning")
class DriftWarning extends Stored<UUID> {
    /** Points kept for a picture. */
    static final int MOST_POINTS = 20;

    @Id
    private UUID id;

    private String tag;
    private Instant lastAt;

    @Column(length = 4_000)
    private String bodyJson;

    @Version
    private int version;

    protected DriftWarning() {}

    DriftWarning(DriftRow row) {
        this.id = UUID.randomUUID();
        this.tag = row.tag().value();
        this.lastAt = row.points().get(row.points().size() - 1).at();
        this.bodyJson = StoredJson.write(row);
    }

    DriftRow row() {
        return StoredJson.read(bodyJson, DriftRow.class);
    }

    Instant lastAt() {
        return lastAt;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
