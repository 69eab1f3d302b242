package org.docksweep.contract;

import java.time.Instant;
import java.util.List;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.suspect.Priors;

/**
 * Everything a kiosk needs to work without a network.
 *
 * @param asOf when this was true
 * @param siteName name of the house
 * @param timeZone IANA time zone of the site
 * @param book cabinet and driver models
 * @param cabinets all cabinets of the site
 * @param references references of the models
 * @param baselines newest baseline per cabinet and test point
 * @param limits limits in force
 * @param returnLists open return lists
 * @param checkedIn check-ins of the open return lists so far
 * @param recentEvents the last events of each cabinet that is due back, newest first
 * @param needs when cabinets would be missed if they went to the bench, by model; null in copies of older services
 * @param priors what the gate learned from repairs, or the usual; null in copies of older services
 * @param labels keys on labels beside the asset tags; null in copies of older services
 */
public record KioskSnapshot(
        Instant asOf,
        String siteName,
        String timeZone,
        ModelBook book,
        List<CabinetBody> cabinets,
        List<PointReference> references,
        List<Baseline> baselines,
        LimitSet limits,
        List<ReturnList> returnLists,
        List<ReturnReport.Row> checkedIn,
        List<HistoryEvent> recentEvents,
        List<NeedDates> needs,
        Priors priors,
        List<AssetKeys.Label> labels) {

    /**
     * Priors to judge with.
     *
     * @return those of the snapshot, or the usual ones
     */
    public Priors priorsInForce() {
        return priors == null ? Priors.USUAL : priors;
    }
}
