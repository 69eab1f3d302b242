package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;

/**
 * Moves a bench job to another state.
 *
 * @param id identity, made by the client
 * @param verb what is done
 * @param expectedRevision revision of the job this was decided on; another one is refused, so that two benches cannot
 *     take one job
 * @param at when, not in the future
 * @param by person
 * @param bench bench
 * @param partNumber part waited for, exactly with {@link Verb#WAIT_FOR_PART}
 * @param text why, needed with {@link Verb#SCRAP} and {@link Verb#RETURN_UNREPAIRED}, else optional
 * @param labourMinutes labour spent, with the verbs that close a job; else null
 */
public record BenchActionBody(
        UUID id,
        Verb verb,
        int expectedRevision,
        Instant at,
        String by,
        String bench,
        String partNumber,
        String text,
        Integer labourMinutes) {

    /** What can be done with a job. */
    public enum Verb {
        /** Take it from the queue. */
        ACCEPT,
        /** Put it back into the queue. */
        HAND_BACK,
        /** Set it aside until a part comes. */
        WAIT_FOR_PART,
        /** Begin, or go on with, the repair. */
        START_REPAIR,
        /** Begin the bench proof. */
        START_PROOF,
        /** Close it: proved, back on the shelf. */
        SIGN_OFF,
        /** Close it: the cabinet leaves the fleet. */
        SCRAP,
        /** Close it: the cabinet goes to manual hold as it is. */
        RETURN_UNREPAIRED
    }
}
