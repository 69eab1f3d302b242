package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;

/**
 * A part taken out, put in, or both, within a job in repair. What is put in is booked out of stock.
 *
 * @param id identity, made by the client
 * @param at when, not in the future
 * @param by person
 * @param bench bench
 * @param positionCode driver position, or null when no driver is concerned
 * @param elementId crossover part replaced, or null
 * @param removed what was taken out, or null when the place was empty or nothing is taken out
 * @param fitted what was put in, or null when nothing was
 */
public record PartExchangeBody(
        UUID id,
        Instant at,
        String by,
        String bench,
        String positionCode,
        String elementId,
        Removed removed,
        Fitted fitted) {

    /**
     * What was taken out.
     *
     * @param what whole driver, its moving part, or something else
     * @param serial its serial as read, or null where it has none
     * @param fate what becomes of it
     */
    public record Removed(What what, String serial, Fate fate) {}

    /** What was taken out. */
    public enum What {
        DRIVER_UNIT,
        DIAPHRAGM,
        OTHER
    }

    /** What becomes of a part taken out. */
    public enum Fate {
        SCRAPPED,
        /** Kept to be repaired as a spare; whole drivers with a serial only. */
        KEPT_FOR_REPAIR
    }

    /**
     * What was put in.
     *
     * @param partNumber part of the catalogue
     * @param serial its serial, or null where it has none
     * @param quantity pieces, 1 for parts with a serial
     */
    public record Fitted(String partNumber, String serial, int quantity) {}
}
