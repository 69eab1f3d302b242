package org.docksweep.service.bench;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.contract.FindingBody;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.store.Stored;

/** A finding in columns, for counting; never changed. */
@Entity
@Table(name = "finding")
class FindingRow extends Stored<UUID> {
    @Id
    private UUID id;

    private String jobCode;
    private String tag;
    private String modelCode;
    private String positionCode;
    private String elementId;
    private String driverModelCode;
    private String driverSerial;
    private Instant happenedAt;
    private String doneBy;

    @Enumerated(EnumType.STRING)
    private ConfirmedCause cause;

    @Enumerated(EnumType.STRING)
    private ChargeClass charge;

    private Double coilResistanceOhm;
    private boolean coilOpen;

    protected FindingRow() {}

    FindingRow(BenchJob job, String driverModelCode, String driverSerial, FindingBody finding) {
        this(driverModelCode, driverSerial, finding);
        if (job != null) {
            this.jobCode = job.getId();
            this.tag = job.tag().value();
            this.modelCode = job.modelCode();
        }
    }

    private FindingRow(String driverModelCode, String driverSerial, FindingBody finding) {
        this.id = finding.id();
        this.positionCode = finding.positionCode();
        this.elementId = finding.elementId();
        this.driverModelCode = driverModelCode;
        this.driverSerial = driverSerial;
        this.happenedAt = finding.at();
        this.doneBy = finding.by();
        this.cause = finding.cause();
        this.charge = finding.charge();
        this.coilResistanceOhm = finding.coilResistanceOhm();
        this.coilOpen = finding.coilOpen();
    }

    Findings.Confirmed confirmed() {
        return new Findings.Confirmed(
                jobCode == null ? null : new JobCode(jobCode),
                modelCode,
                positionCode,
                elementId,
                driverModelCode,
                driverSerial,
                happenedAt,
                cause,
                charge,
                id,
                coilOpen);
    }

    @Override
    public UUID getId() {
        return id;
    }
}
