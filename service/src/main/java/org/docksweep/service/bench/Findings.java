package org.docksweep.service.bench;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.docksweep.suspect.Suspect;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Confirmed causes, for whoever counts them. */
@Service
@Transactional(readOnly = true)
public class Findings {
    private final FindingRows rows;
    private final BenchJobs jobs;

    Findings(FindingRows rows, BenchJobs jobs) {
        this.rows = rows;
        this.jobs = jobs;
    }

    /**
     * A confirmed cause.
     *
     * @param jobCode job, or null of a spare on its own
     * @param cabinetModelCode cabinet model, or null of a spare
     * @param positionCode position, or null for the cabinet or a spare
     * @param elementId crossover part, or null
     * @param driverModelCode driver model concerned, or null
     * @param driverSerial serial of the driver unit, or null
     * @param at when it was found
     * @param cause the cause
     * @param charge who bears it
     * @param id identity of the finding
     * @param coilOpen whether the coil itself was measured as open
     */
    public record Confirmed(
            JobCode jobCode,
            String cabinetModelCode,
            String positionCode,
            String elementId,
            String driverModelCode,
            String driverSerial,
            Instant at,
            ConfirmedCause cause,
            ChargeClass charge,
            UUID id,
            boolean coilOpen) {}

    /**
     * All findings. A later one of the same job and place takes the place of an earlier one.
     *
     * @return oldest first
     */
    public List<Confirmed> all() {
        return rows.oldestFirst().stream().map(FindingRow::confirmed).toList();
    }

    /**
     * How many findings there are.
     *
     * @return the number; findings are never changed, so it tells whether {@link #all} would say anything new
     */
    public long count() {
        return rows.count();
    }

    /**
     * What the dock had suspected.
     *
     * @param codes jobs
     * @return suspects of the check-in that opened each job, most probable first
     */
    public Map<JobCode, List<Suspect>> suspects(Collection<JobCode> codes) {
        Map<JobCode, List<Suspect>> suspects = new HashMap<>();
        jobs.findAllById(codes.stream().map(JobCode::value).distinct().toList())
                .forEach(job -> suspects.put(job.jobCode(), job.suspects()));
        return suspects;
    }
}
