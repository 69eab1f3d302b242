package org.docksweep.service.bench;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.store.Stored;

/** A check-in that belongs to a job. */
@Entity
@Table(name = "bench_job_check_in")
class JobCheckIn extends Stored<UUID> {
    @Id
    private UUID checkInId;

    private String jobCode;
    private Instant finishedAt;

    protected JobCheckIn() {}

    JobCheckIn(UUID checkInId, JobCode job, Instant finishedAt) {
        this.checkInId = checkInId;
        this.jobCode = job.value();
        this.finishedAt = finishedAt;
    }

    String jobCode() {
        return jobCode;
    }

    @Override
    public UUID getId() {
        return checkInId;
    }
}
