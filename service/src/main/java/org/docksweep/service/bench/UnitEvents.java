package org.docksweep.service.bench;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.Reason;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** What happened to driver units while they sat in no cabinet. Writes join the caller's transaction. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class UnitEvents {
    private final UnitEventRows rows;

    UnitEvents(UnitEventRows rows) {
        this.rows = rows;
    }

    void append(
            String driverModelCode,
            String driverSerial,
            UUID id,
            Instant at,
            String by,
            HistoryEvent.Kind kind,
            Reason text) {
        rows.save(new UnitEventRow(
                driverModelCode, driverSerial, id, new Timeline.Entry(at, null, null, kind, by, text)));
    }

    /**
     * Events of a driver unit outside cabinets.
     *
     * @param driverModelCode driver model
     * @param driverSerial its serial
     * @return newest first
     */
    public List<Timeline.Entry> of(String driverModelCode, String driverSerial) {
        return rows.of(driverModelCode, driverSerial).stream()
                .map(UnitEventRow::entry)
                .toList();
    }
}
