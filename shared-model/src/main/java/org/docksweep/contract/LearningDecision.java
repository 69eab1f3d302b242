package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;

/**
 * A manager's decision about what the gate learns. The newest decision about a thing holds; none is ever changed.
 *
 * @param id identity, made by the client
 * @param at when, not in the future
 * @param by person
 * @param kind what was decided
 * @param findingId finding (or past part life) concerned, exactly with LEAVE_OUT and TAKE_IN
 * @param why in words
 */
public record LearningDecision(UUID id, Instant at, String by, Kind kind, UUID findingId, String why) {

    /** What can be decided. */
    public enum Kind {
        /** The gate uses what was learned. */
        USE,
        /** The gate goes by the usual weights; learning goes on and can be looked at. */
        PAUSE,
        /** One finding is not learned from. */
        LEAVE_OUT,
        /** One finding is learned from again. */
        TAKE_IN
    }
}
