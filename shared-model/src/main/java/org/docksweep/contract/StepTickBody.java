package org.docksweep.contract;

import java.time.Instant;
import java.util.UUID;
import org.docksweep.fleet.ProcedurePurpose;

/**
 * A step of a procedure card ticked, or its tick taken back.
 *
 * @param id identity, made by the client
 * @param at when, not in the future
 * @param by person
 * @param bench bench
 * @param purpose card
 * @param positionCode driver position the card is used for, or null
 * @param stepCode step
 * @param done true for a tick, false to take it back
 */
public record StepTickBody(
        UUID id,
        Instant at,
        String by,
        String bench,
        ProcedurePurpose purpose,
        String positionCode,
        String stepCode,
        boolean done) {}
