package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;

/**
 * One thing that was done or refused. Entries are only ever added.
 *
 * @param number place in the log, rising; numbers may be left out
 * @param at when
 * @param doneBy the person, or the kiosk when nobody was signed on
 * @param kiosk the kiosk it came from, or null
 * @param personId the person, or null when nobody was signed on
 * @param action HTTP method
 * @param target path, without its query
 * @param outcome {@code STORED} or {@code REFUSED}
 * @param requestId id of the request, as in the logs of kiosk and service, or null
 */
public record AuditEntry(
        long number,
        Instant at,
        String doneBy,
        String kiosk,
        UUID personId,
        String action,
        String target,
        Outcome outcome,
        String requestId) {

    /** How it ended. */
    public enum Outcome {
        /** Was stored, in the same transaction as this entry. */
        STORED,
        /** Was refused for want of a right, or a badge or PIN was wrong. */
        REFUSED
    }
}
