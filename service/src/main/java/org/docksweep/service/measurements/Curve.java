package org.docksweep.service.measurements;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.LocalDate;
import java.util.UUID;
import org.docksweep.judge.PointJudgement;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** What the gate said of a measurement, with its curves. Apart from the header, because it is large. */
@Entity
@Table(name = "measurement_curve")
class Curve extends Stored<UUID> {
    /** Longest JSON text of one judgement. */
    static final int MOST_CHARACTERS = 1_000_000;

    static final String INSERT =
            "insert into measurement_curve (measurement_id, stored_on, judgement_json) values (?, ?, ?)";

    @Id
    private UUID measurementId;

    private LocalDate storedOn;

    @Column(length = MOST_CHARACTERS)
    private String judgementJson;

    protected Curve() {}

    PointJudgement judgement() {
        return StoredJson.read(judgementJson, PointJudgement.class);
    }

    @Override
    public UUID getId() {
        return measurementId;
    }
}
