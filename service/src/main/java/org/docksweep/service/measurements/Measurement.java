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

    Measurement(UUID checkInId, int lineNumber, MeasurementBody body) {
        this.id = body.id();
        this.checkInId = checkInId;
        this.lineNumber = lineNumber;
        this.takenAt = body.takenAt();
        this.attempt = body.attempt();
        this.recordingSha256 = body.recordingSha256();
        this.ambientCelsius = body.ambientCelsius();
        this.testPointCode = body.judgement().testPointCode();
        this.verdict = body.judgement().verdict();
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

    UUID checkInId() {
        return checkInId;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
