package org.docksweep.service.bench;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.ChargeClass;
import org.docksweep.fleet.ConfirmedCause;
import org.docksweep.fleet.JobCode;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Confirmed causes, for whoever counts them. */
@Service
@Transactional(readOnly = true)
public class Findings {
    private final FindingRows rows;

    Findings(FindingRows rows) {
        this.rows = rows;
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
            ChargeClass charge) {}

    /**
     * All findings. A later one of the same job and place takes the place of an earlier one.
     *
     * @return oldest first
     */
    public List<Confirmed> all() {
        return rows.oldestFirst().stream().map(FindingRow::confirmed).toList();
    }
}
