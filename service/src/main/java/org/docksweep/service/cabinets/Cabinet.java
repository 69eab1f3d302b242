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
import org.docksweep.contract.CabinetBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.store.Stored;

/** A cabinet and where it stands. */
@Entity
@Table(name = "cabinet")
class Cabinet extends Stored<String> {
    @Id
    private String tag;

    private String modelCode;
    private String shelfPlace;

    @Enumerated(EnumType.STRING)
    private CabinetStatus status;

    private boolean watch;
    private LocalDate safetyTestDue;

    @Version
    private int version;

    /** For kiosks that ask what changed since their copy. */
    private Instant changedAt;

    @PrePersist
    @PreUpdate
    void changing() {
        changedAt = Instant.now();
    }

    protected Cabinet() {}

    Cabinet(CabinetBody body) {
        this.tag = body.tag().value();
        replace(body);
    }

    /** Takes what a manager says of it. */
    void replace(CabinetBody body) {
        this.modelCode = body.modelCode();
        this.shelfPlace = body.shelfPlace();
        this.status = body.status();
        this.watch = body.watch();
        if (body.safetyTestDue() != null) {
            this.safetyTestDue = body.safetyTestDue();
        }
    }

    /** Takes the day the next electrical safety test is due; null for none. */
    void safetyTestDue(LocalDate dueOn) {
        this.safetyTestDue = dueOn;
    }

    /**
     * Goes where a check-in sends it, with two exceptions a sweep may not overrule: a safety hold is only left by a
     * person, and an open bench job keeps the cabinet at the bench.
     */
    void checkIn(Route route, Verdict verdict, boolean watchMark, boolean openBenchJob) {
        if (verdict != null) {
            watch = watchMark;
        }
        if (route == Route.SAFETY_HOLD || status == CabinetStatus.SAFETY_HOLD) {
            status = CabinetStatus.SAFETY_HOLD;
        } else if (openBenchJob) {
            status = CabinetStatus.BENCH;
        } else {
            status = route == Route.SHELF ? CabinetStatus.READY : CabinetStatus.MANUAL_HOLD;
        }
    }

    /** Leaves the bench. A safety hold is only left by a person, unless the cabinet leaves the fleet. */
    void leaveBench(CabinetStatus to) {
        if (status != CabinetStatus.SAFETY_HOLD || to == CabinetStatus.RETIRED) {
            status = to;
        }
        if (to == CabinetStatus.READY) {
            watch = false;
        }
    }

    /** Leaves the shelf with an order; does nothing unless it is on the shelf. */
    boolean sendOut() {
        if (status != CabinetStatus.READY) {
            return false;
        }
        status = CabinetStatus.OUT;
        return true;
    }

    /** Was due back and did not come; does nothing unless it is out. */
    boolean markMissing() {
        if (status != CabinetStatus.OUT) {
            return false;
        }
        status = CabinetStatus.MISSING;
        return true;
    }

    AssetTag tag() {
        return new AssetTag(tag);
    }

    String modelCode() {
        return modelCode;
    }

    String shelfPlace() {
        return shelfPlace;
    }

    CabinetStatus status() {
        return status;
    }

    boolean watch() {
        return watch;
    }

    LocalDate safetyTestDue() {
        return safetyTestDue;
    }

    @Override
    public String getId() {
        return tag;
    }
}
