package org.docksweep.contract;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.suspect.Suspect;

/**
 * A bench job.
 *
 * @param code code on the tag
 * @param tag cabinet
 * @param modelCode its model
 * @param state where the job stands
 * @param openedAt when it was opened
 * @param needOn first day a dispatch cannot be met without this cabinet, or null
 * @param faultPositionCode position at fault, or null
 * @param reason the deciding sentence of the check-in that opened it
 * @param suspects suspects of that check-in
 * @param checkInIds check-ins that belong to the job, oldest first
 * @param revision number of records of the job so far; a {@link BenchActionBody} names the one it was decided on
 * @param bench bench that has the job, or null while nobody has it
 * @param heldBy person who has it there, or null
 * @param waitsForPart number of the part it waits for, or null
 * @param expectedEffortMinutes expected effort by suspects and procedures, in minutes
 */
public record BenchJobBody(
        JobCode code,
        AssetTag tag,
        String modelCode,
        State state,
        Instant openedAt,
        LocalDate needOn,
        String faultPositionCode,
        Reason reason,
        List<Suspect> suspects,
        List<UUID> checkInIds,
        int revision,
        String bench,
        String heldBy,
        String waitsForPart,
        int expectedEffortMinutes) {

    /** States of a bench job; each says what may follow. */
    public enum State {
        /** In the queue: may be accepted. */
        WAITING,
        /** Some bench has it: repair, waiting for a part, proof, hand back, scrap, return unrepaired. */
        ACCEPTED,
        /** As {@link #ACCEPTED}, but a part is missing. */
        WAITING_FOR_PART,
        /** Parts may be exchanged: then proof, waiting, hand back, scrap, return unrepaired. */
        IN_REPAIR,
        /** Sweeps of the bench proof count: then sign-off, or back to repair, waiting, hand back, scrap, return. */
        PROVING,
        /** Closed: the cabinet went to the shelf with a proof. */
        SIGNED_OFF,
        /** Closed: the cabinet left the fleet. */
        SCRAPPED,
        /** Closed: the cabinet went to manual hold as it was. */
        RETURNED_UNREPAIRED
    }
}
