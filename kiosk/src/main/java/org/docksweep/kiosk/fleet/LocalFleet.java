package org.docksweep.kiosk.fleet;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.NeedDates;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Gs1Key;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;

/** What the kiosk knows of the fleet: the newest copy from the service and what was registered here since. A value. */
public final class LocalFleet {
    /** Copies of the fleet come and go every few seconds, references of its models hardly ever. */
    private static final SharedReferences REFERENCES = new SharedReferences();

    private final KioskSnapshot snapshot;
    private final Map<AssetTag, CabinetBody> cabinets = new HashMap<>();
    private final Map<Gs1Key, AssetTag> labels = new HashMap<>();
    private final Map<AssetTag, List<Baseline>> baselines = new HashMap<>();
    private final Map<AssetTag, List<HistoryEvent>> events = new HashMap<>();

    /**
     * Indexes a copy.
     *
     * @param snapshot copy from the service
     * @param registered cabinets registered at this kiosk that the copy may not know yet
     */
    public LocalFleet(KioskSnapshot snapshot, List<CabinetBody> registered) {
        this.snapshot = snapshot;
        registered.forEach(c -> cabinets.put(c.tag(), c));
        snapshot.cabinets().forEach(c -> cabinets.put(c.tag(), c));
        if (snapshot.labels() != null) {
            snapshot.labels().forEach(l -> labels.put(l.key(), l.tag()));
        }
        for (Baseline baseline : snapshot.baselines()) {
            baselines.computeIfAbsent(baseline.tag(), t -> new ArrayList<>()).add(baseline);
        }
        for (HistoryEvent event : snapshot.recentEvents()) {
            if (event.kind() == HistoryEvent.Kind.REGISTERED) {
                // When a cabinet was entered says nothing about what happened to it.
                continue;
            }
            events.computeIfAbsent(event.tag(), t -> new ArrayList<>()).add(event);
        }
    }

    /**
     * The copy.
     *
     * @return the copy
     */
    public KioskSnapshot snapshot() {
        return snapshot;
    }

    /**
     * References of all models, with what all of them together say of how far healthy units vary: what verdicts are made with.
     *
     * @return references
     */
    public List<PointReference> references() {
        return REFERENCES.of(snapshot.references());
    }

    /**
     * Time zone of the site.
     *
     * @return the zone
     */
    public ZoneId zone() {
        return ZoneId.of(snapshot.timeZone());
    }

    /**
     * A cabinet of the fleet.
     *
     * @param tag asset tag
     * @return the cabinet; empty when the tag is not known
     */
    public Optional<CabinetBody> cabinet(AssetTag tag) {
        return Optional.ofNullable(cabinets.get(tag));
    }

    /**
     * The cabinet that carries a label beside its asset tag.
     *
     * @param key key on the label
     * @return its asset tag; empty when no cabinet is known to carry it
     */
    public Optional<AssetTag> carrierOf(Gs1Key key) {
        return Optional.ofNullable(labels.get(key));
    }

    /**
     * Model of a cabinet.
     *
     * @param cabinet the cabinet
     * @return its model
     */
    public CabinetModel modelOf(CabinetBody cabinet) {
        return snapshot.book().cabinetModel(cabinet.modelCode());
    }

    /**
     * Baselines of a cabinet.
     *
     * @param tag asset tag
     * @return newest baseline per test point, may be empty
     */
    public List<Baseline> baselinesOf(AssetTag tag) {
        return baselines.getOrDefault(tag, List.of());
    }

    /**
     * Last events of a cabinet.
     *
     * @param tag asset tag
     * @return events, newest first, may be empty
     */
    public List<HistoryEvent> eventsOf(AssetTag tag) {
        return events.getOrDefault(tag, List.of());
    }

    /**
     * Day on which a cabinet is needed that goes to the bench now, as the service worked it out when the copy was made.
     *
     * @param modelCode its model
     * @param before how many of its model went to the bench before it since then
     * @return the day; empty when the fleet can do without it, or the copy does not say
     */
    public Optional<LocalDate> needOn(String modelCode, int before) {
        List<NeedDates> needs = snapshot.needs() == null ? List.of() : snapshot.needs();
        return needs.stream()
                .filter(n -> n.modelCode().equals(modelCode))
                .findFirst()
                .map(n -> n.needOn(before));
    }

    /**
     * Open return lists.
     *
     * @return the lists
     */
    public List<ReturnList> openLists() {
        return snapshot.returnLists().stream().filter(l -> !l.closed()).toList();
    }

    /**
     * The open return list a cabinet is on.
     *
     * @param tag asset tag
     * @return the list; empty when it is on none
     */
    public Optional<ReturnList> openListOf(AssetTag tag) {
        return openLists().stream()
                .filter(l -> l.lines().stream().anyMatch(line -> line.tag().equals(tag)))
                .findFirst();
    }

    /**
     * The same fleet with one more cabinet.
     *
     * @param registered cabinet registered at this kiosk
     * @return a new fleet
     */
    public LocalFleet with(CabinetBody registered) {
        List<CabinetBody> all = new ArrayList<>(cabinets.values());
        all.add(registered);
        return new LocalFleet(snapshot, all);
    }
}
