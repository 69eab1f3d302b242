package org.docksweep.service.trends;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.DriftRow;
import org.docksweep.contract.OrderedId;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** What was last said of a quantity that drifts. */
@Entity
@Table(name = "drift_warning")
class DriftWarning extends Stored<UUID> {
    /** Points kept for a picture. */
    static final int MOST_POINTS = 20;

    static final String INSERT =
            "insert into drift_warning (id, tag, last_at, body_json, version) values (?, ?, ?, ?, 0)";

    @Id
    private UUID id;

    private String tag;
    private Instant lastAt;

    @Column(length = 4_000)
    private String bodyJson;

    @Version
    private int version;

    protected DriftWarning() {}

    /** In the order of {@link #INSERT}. */
    static Object[] values(DriftRow row) {
        return new Object[] {
            OrderedId.next(),
            row.tag().value(),
            row.points().get(row.points().size() - 1).at(),
            StoredJson.write(row)
        };
    }

    DriftRow row() {
        return StoredJson.read(bodyJson, DriftRow.class);
    }

    @Override
    public UUID getId() {
        return id;
    }
}
