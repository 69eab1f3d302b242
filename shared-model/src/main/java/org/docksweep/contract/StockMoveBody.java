package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * Pieces of a part that came or went other than by a job.
 *
 * @param id identity, made by the client
 * @param partNumber part
 * @param at when, not in the future
 * @param by person
 * @param kind why
 * @param quantity pieces: more than 0 for RECEIVED and SCRAPPED; the count found for COUNTED, at least 0
 * @param serials serials of these pieces, as far as known; none for COUNTED
 * @param text words on it, or null
 */
public record StockMoveBody(
        UUID id, String partNumber, Instant at, String by, Kind kind, int quantity, List<String> serials, String text) {

    /** Why pieces came or went. */
    public enum Kind {
        /** Came in. */
        RECEIVED,
        /** Counted on the shelf: the stock is what was counted. */
        COUNTED,
        /** Thrown away unused. */
        SCRAPPED
    }
}
