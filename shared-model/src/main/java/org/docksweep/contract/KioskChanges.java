package org.docksweep.contract;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Function;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.ModelBook;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.suspect.Priors;

/**
 * What turns a kiosk's copy of the fleet into the newest one. Nothing ever leaves a fleet: a cabinet that is scrapped stays, with its
 * status.
 *
 * @param asOf when this was true
 * @param siteName name of the house
 * @param timeZone IANA time zone of the site
 * @param book cabinet and driver models; null when they are as before
 * @param cabinets cabinets that changed or are new; others stay as they are
 * @param references references of the models; null when they are as before
 * @param baselinesOf cabinets whose baselines changed
 * @param baselines all baselines in force of these cabinets
 * @param limits limits in force
 * @param returnLists open return lists
 * @param checkedIn check-ins of the open return lists so far
 * @param recentEvents the last events of each cabinet that is due back, newest first
 * @param needs when cabinets would be missed if they went to the bench, by model
 * @param priors what the gate learned from repairs, or the usual
 * @param labels keys on labels beside the asset tags; null when they are as before
 */
public record KioskChanges(
        Instant asOf,
        String siteName,
        String timeZone,
        ModelBook book,
        List<CabinetBody> cabinets,
        List<PointReference> references,
        List<AssetTag> baselinesOf,
        List<Baseline> baselines,
        LimitSet limits,
        List<ReturnList> returnLists,
        List<ReturnReport.Row> checkedIn,
        List<HistoryEvent> recentEvents,
        List<NeedDates> needs,
        Priors priors,
        List<AssetKeys.Label> labels) {

    /**
     * Brings a copy up to date.
     *
     * @param before the copy these changes were asked for
     * @return the newest copy
     */
    public KioskSnapshot applyTo(KioskSnapshot before) {
        return new KioskSnapshot(
                asOf,
                siteName,
                timeZone,
                book == null ? before.book() : book,
                merged(before.cabinets(), cabinets),
                references == null ? before.references() : references,
                merged(before.baselines()),
                limits,
                returnLists,
                checkedIn,
                recentEvents,
                needs,
                priors,
                labels == null ? before.labels() : labels);
    }

    private static List<CabinetBody> merged(List<CabinetBody> before, List<CabinetBody> changed) {
        Map<String, CabinetBody> byTag = new TreeMap<>();
        Function<CabinetBody, String> tag = cabinet -> cabinet.tag().value();
        before.forEach(cabinet -> byTag.put(tag.apply(cabinet), cabinet));
        changed.forEach(cabinet -> byTag.put(tag.apply(cabinet), cabinet));
        return List.copyOf(byTag.values());
    }

    private List<Baseline> merged(List<Baseline> before) {
        Set<AssetTag> changed = new HashSet<>(baselinesOf);
        List<Baseline> all = new ArrayList<>();
        before.stream().filter(baseline -> !changed.contains(baseline.tag())).forEach(all::add);
        all.addAll(baselines);
        return List.copyOf(all);
    }
}
