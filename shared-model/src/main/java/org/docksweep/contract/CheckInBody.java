package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.judge.PositionState;
import org.docksweep.suspect.Suspect;

/**
 * A check-in: one cabinet, one return.
 *
 * @param id identity, made by the kiosk
 * @param tag asset tag scanned
 * @param modelCode cabinet model it was judged as
 * @param returnListId return list it was checked in against, or null
 * @param kioskId kiosk
 * @param operator person, as signed on at the kiosk
 * @param startedAt scan
 * @param finishedAt answer
 * @param visualDamage items of the visual list that were not fine
 * @param verdict verdict of the sweeps, or null when it was held without a sweep
 * @param route where it goes
 * @param watch whether it gets a watch mark
 * @param reason the deciding sentence
 * @param faultPositionCode driver position at fault, or null
 * @param positions state of each driver position
 * @param suspects possible causes, most probable first
 * @param jobCode bench job code printed on the tag; present exactly when the route is BENCH
 * @param judgeVersion version of the judgement, or null when nothing was swept
 * @param limitsVersion version of the limits used
 * @param measurements all measurements, spoiled ones included
 */
public record CheckInBody(
        UUID id,
        AssetTag tag,
        String modelCode,
        UUID returnListId,
        String kioskId,
        String operator,
        Instant startedAt,
        Instant finishedAt,
        Set<VisualItem> visualDamage,
        Verdict verdict,
        Route route,
        boolean watch,
        Reason reason,
        String faultPositionCode,
        List<PositionState> positions,
        List<Suspect> suspects,
        JobCode jobCode,
        String judgeVersion,
        int limitsVersion,
        List<MeasurementBody> measurements) {}
