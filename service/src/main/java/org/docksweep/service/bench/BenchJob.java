package org.docksweep.service.bench;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.BenchJobBody;
import org.docksweep.contract.CheckInBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.service.store.Stored;
import org.docksweep.service.store.StoredJson;
import org.docksweep.suspect.Suspect;
import tools.jackson.core.type.TypeReference;

/** A bench job. While it is open, its marker keeps a second one for the same cabinet out. */
@Entity
@Table(name = "bench_job")
class BenchJob extends Stored<String> {
    @Id
    private String code;

    private String tag;
    private String modelCode;

    @Enumerated(EnumType.STRING)
    private BenchJobBody.State state;

    private Instant openedAt;
    private String faultPositionCode;

    @Column(length = 4_000)
    private String reasonJson;

    @Column(length = 1_000_000)
    private String suspectsJson;

    private Boolean openMarker;

    @Version
    private int version;

    protected BenchJob() {}

    /** Opened by the check-in that sent the cabinet to the bench. */
    BenchJob(CheckInBody checkIn) {
        this.code = checkIn.jobCode().value();
        this.tag = checkIn.tag().value();
        this.modelCode = checkIn.modelCode();
        this.state = BenchJobBody.State.WAITING;
        this.openedAt = checkIn.finishedAt();
        this.faultPositionCode = checkIn.faultPositionCode();
        this.reasonJson = StoredJson.write(checkIn.reason());
        this.suspectsJson = StoredJson.write(checkIn.suspects());
        this.openMarker = true;
    }

    BenchJobBody body(LocalDate needOn, List<UUID> checkInIds) {
        return new BenchJobBody(
                jobCode(),
                new AssetTag(tag),
                modelCode,
                state,
                openedAt,
                needOn,
                faultPositionCode,
                StoredJson.read(reasonJson, Reason.class),
                StoredJson.read(suspectsJson, new TypeReference<List<Suspect>>() {}),
                checkInIds,
                0,
                null,
                null,
                null,
                0);
    }

    JobCode jobCode() {
        return new JobCode(code);
    }

    String tag() {
        return tag;
    }

    String modelCode() {
        return modelCode;
    }

    Instant openedAt() {
        return openedAt;
    }

    boolean isOpen() {
        return openMarker != null;
    }

    @Override
    public String getId() {
        return code;
    }
}
