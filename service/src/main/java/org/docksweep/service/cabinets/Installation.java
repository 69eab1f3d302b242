package org.docksweep.service.cabinets;

import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.PrePersist;
import jakarta.persistence.PreUpdate;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.PartSource;
import org.docksweep.service.store.Stored;

/** A driver in a position, from its fitting to its removal. */
@Entity
@Table(name = "installation")
class Installation extends Stored<UUID> {
    @Id
    private UUID id;

    private String tag;
    private String positionCode;
    private String driverModelCode;
    private String driverSerial;
    private String diaphragmSerial;

    @Enumerated(EnumType.STRING)
    private PartSource diaphragmSource;

    private LocalDate installedOn;
    private Instant removedAt;
    private String partNumber;
    private String fittedByJob;
    private String removedByJob;
    private Boolean openMarker;

    @Version
    private int version;

    /** For kiosks that ask what changed since their copy. */
    private Instant changedAt;

    @PrePersist
    @PreUpdate
    void changing() {
        changedAt = Instant.now();
    }

    protected Installation() {}

    Installation(AssetTag tag, InstalledDriver driver) {
        this(tag, driver, null, null);
    }

    /** Fitted at the bench. */
    Installation(AssetTag tag, InstalledDriver driver, String partNumber, JobCode job) {
        this.id = OrderedId.next();
        this.tag = tag.value();
        this.positionCode = driver.positionCode();
        this.driverModelCode = driver.driverModelCode();
        this.driverSerial = driver.driverSerial();
        this.diaphragmSerial = driver.diaphragmSerial();
        this.diaphragmSource = driver.diaphragmSource();
        this.installedOn = driver.installedOn();
        this.partNumber = partNumber;
        this.fittedByJob = job == null ? null : job.value();
        this.openMarker = true;
    }

    /** Ends it at the bench. */
    void remove(Instant at, JobCode job) {
        remove(at);
        removedByJob = job.value();
    }

    /** Ends it; a driver is taken out once. */
    void remove(Instant at) {
        if (openMarker == null) {
            throw new IllegalStateException("the driver at " + positionCode + " of " + tag + " was removed before");
        }
        removedAt = at;
        openMarker = null;
    }

    InstalledDriver driver() {
        return new InstalledDriver(
                positionCode, driverModelCode, driverSerial, diaphragmSerial, diaphragmSource, installedOn);
    }

    Timeline.Stay stay() {
        return new Timeline.Stay(
                new AssetTag(tag),
                positionCode,
                driverModelCode,
                driverSerial,
                diaphragmSerial,
                diaphragmSource,
                partNumber,
                installedOn,
                removedAt,
                fittedByJob == null ? null : new JobCode(fittedByJob),
                removedByJob == null ? null : new JobCode(removedByJob));
    }

    boolean isOpen() {
        return openMarker != null;
    }

    String partNumber() {
        return partNumber;
    }

    String tag() {
        return tag;
    }

    @Override
    public UUID getId() {
        return id;
    }
}
