package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;
import org.docksweep.fleet.JobCode;

/**
 * A stock move as booked.
 *
 * @param id identity: that of the {@link StockMoveBody}, or of the exchange or spare repair that booked it
 * @param partNumber part
 * @param at when
 * @param by person
 * @param kind RECEIVED, COUNTED, SCRAPPED, FITTED (by a job or spare repair) or REPAIRED (a spare that came back)
 * @param change pieces added, negative when taken away
 * @param stockAfter pieces in stock afterwards
 * @param jobCode job that booked it, or null
 */
public record StockMove(
        UUID id, String partNumber, Instant at, String by, Kind kind, int change, int stockAfter, JobCode jobCode) {
    /** Why pieces came or went. */
    public enum Kind {
        RECEIVED,
        COUNTED,
        SCRAPPED,
        FITTED,
        REPAIRED
    }
}
