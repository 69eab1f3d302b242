package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * A driver unit on its own repaired and proved: it goes into stock as a spare with its own history.
 *
 * @param id identity, made by the client
 * @param at when, not in the future
 * @param by person
 * @param bench bench
 * @param partNumber part of the catalogue that is this whole driver
 * @param driverSerial serial of the unit, which must await repair
 * @param fitted diaphragm or recone kit put in, or null when none was needed
 * @param finding what was found; its position is null
 * @param proofs sweeps of the bare driver, oldest first; the last two must be clean, polarity proved
 */
public record SpareRepairBody(
        UUID id,
        Instant at,
        String by,
        String bench,
        String partNumber,
        String driverSerial,
        PartExchangeBody.Fitted fitted,
        FindingBody finding,
        List<ProofSweepBody> proofs) {}
