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
        List<UUID> checkInIds) {

    /** States of a bench job. */
    public enum State {
        /** Waiting in the queue. */
        WAITING,
        ACCEPTED,
        WAITING_FOR_PART,
        IN_REPAIR,
        PROVING,
        SIGNED_OFF,
        SCRAPPED,
        RETURNED_UNREPAIRED
    }
}
