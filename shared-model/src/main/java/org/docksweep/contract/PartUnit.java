package org.docksweep.contract;

import java.time.Instant;

/**
 * A piece known by its serial.
 *
 * @param partNumber part
 * @param serial serial
 * @param state where it is
 * @param repaired whether it is a repaired driver unit rather than a new piece
 * @param since since when it is there
 */
public record PartUnit(String partNumber, String serial, State state, boolean repaired, Instant since) {
    /** Where a piece is. */
    public enum State {
        IN_STOCK,
        /** Taken out and kept: not in stock until it is repaired and proved. */
        AWAITING_REPAIR,
        FITTED,
        SCRAPPED
    }
}
