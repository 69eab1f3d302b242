package org.docksweep.service.bench;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;

/** Something done with a job, never changed. */
@Entity
@Table(name = "job_record")
class JobRecord extends Stored<UUID> {
    static final int MOST_CHARACTERS = 100_000;

    @Id
    private UUID id;

    private String jobCode;
    private int sequenceNumber;

    @Enumerated(EnumType.STRING)
    private Kind kind;

    private Instant happenedAt;
    private Instant storedAt;
    private String doneBy;
    private String tokenName;

    @Column(length = MOST_CHARACTERS)
    private String bodyJson;

    private String bodySha256;

    /** What a record tells. */
    enum Kind {
        ACTION,
        FINDING,
        EXCHANGE,
        TICK,
        PROOF
    }

    /**
     * Who sent a record.
     *
     * @param tokenName holder of the token
     * @param manager whether it has the manager role
     */
    record Sender(String tokenName, boolean manager) {}

    /**
     * What is recorded.
     *
     * @param id its id
     * @param kind kind
     * @param at when it happened
     * @param by person
     * @param bench bench
     * @param body its body, without measurements
     * @param sha256 hash of the whole body
     */
    record Draft(UUID id, Kind kind, Instant at, String by, String bench, Object body, String sha256) {}

    protected JobRecord() {}

    JobRecord(BenchJob job, Draft draft, Sender sender, Instant storedAt) {
        this.id = draft.id();
        this.jobCode = job.getId();
        this.sequenceNumber = job.nextRevision();
        this.kind = draft.kind();
        this.happenedAt = draft.at();
        this.storedAt = storedAt;
        this.doneBy = draft.by();
        this.tokenName = sender.tokenName();
        this.bodyJson = StoredJson.write(draft.body());
        this.bodySha256 = draft.sha256();
    }

    <T> T body(Class<T> type) {
        return StoredJson.read(bodyJson, type);
    }

    Kind kind() {
        return kind;
    }

    int sequence() {
        return sequenceNumber;
    }

    String jobCode() {
        return jobCode;
    }

    String bodySha256() {
        return bodySha256;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
