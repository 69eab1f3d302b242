package org.docksweep.service.measurements;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.service.store.Stored;

/** Header of a measurement, never changed. */
@Entity
@Table(name = "measurement")
class Measurement extends Stored<UUID> {
    static final String INSERT = "insert into measurement (id, check_in_id, line_number, taken_at, attempt,"
            + " recording_sha256, ambient_celsius, test_point_code, verdict) values (?, ?, ?, ?, ?, ?, ?, ?, ?)";

    @Id
    private UUID id;

    private UUID checkInId;
    private int lineNumber;
    private Instant takenAt;
    private int attempt;
    private String recordingSha256;
    private Double ambientCelsius;
    private String testPointCode;

    @Enumerated(EnumType.STRING)
    private Verdict verdict;

    protected Measurement() {}

    /** In the order of {@link #INSERT}. */
    static Object[] values(UUID checkInId, int lineNumber, MeasurementBody body) {
        return new Object[] {
            body.id(),
            checkInId,
            lineNumber,
            body.takenAt(),
            body.attempt(),
            body.recordingSha256(),
            body.ambientCelsius(),
            body.judgement().testPointCode(),
            body.judgement().verdict()
        };
    }

    MeasurementBody body(PointJudgement judgement) {
        return new MeasurementBody(id, takenAt, attempt, recordingSha256, ambientCelsius, judgement);
    }

    /** What is left of its judgement once retention removed the curve. */
    PointJudgement withoutCurve() {
        return new PointJudgement(
                testPointCode,
                verdict,
                Prompt.NONE,
                Reason.of("retention-curve-removed"),
                null,
                null,
                List.of(),
                List.of(),
                List.of());
    }

    @Override
    public UUID getId() {
        return id;
    }
}
