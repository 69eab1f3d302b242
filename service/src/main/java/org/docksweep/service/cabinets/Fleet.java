package org.docksweep.service.cabinets;

import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.OrderedId;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.Question;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;

/** What other features may ask of cabinets and do to them. Writes join the caller's transaction. */
@Service
@Transactional(propagation = Propagation.MANDATORY)
public class Fleet {
    private static final int EVENTS_PER_QUERY = 500;

    private final Cabinets cabinets;
    private final Installations installations;
    private final Events events;
    private final EntityManager entities;
    private final AddedRows added;
    private final Clock clock;

    Fleet(
            Cabinets cabinets,
            Installations installations,
            Events events,
            EntityManager entities,
            AddedRows added,
            Clock clock) {
        this.cabinets = cabinets;
        this.installations = installations;
        this.events = events;
        this.entities = entities;
        this.added = added;
        this.clock = clock;
    }

    /**
     * Locks a cabinet until the transaction ends, so that two check-ins of it come one after the other.
     *
     * @param tag cabinet
     * @throws Refusal if there is none
     */
    public void lock(AssetTag tag) {
        locked(tag);
    }

    /**
     * Locks a cabinet like {@link #lock}, if there is one.
     *
     * @param tag cabinet
     * @return whether there is one; otherwise everything else here refuses
     */
    public boolean lockIfKnown(AssetTag tag) {
        return find(tag) != null;
    }

    private Cabinet locked(AssetTag tag) {
        Cabinet cabinet = find(tag);
        if (cabinet == null) {
            throw unknown(tag);
        }
        return cabinet;
    }

    /** Asked again within a transaction, this is answered from memory. */
    private Cabinet find(AssetTag tag) {
        return entities.find(Cabinet.class, tag.value(), LockModeType.PESSIMISTIC_WRITE);
    }

    /**
     * What is said of a cabinet nobody registered.
     *
     * @param tag its tag
     * @return the refusal
     */
    public static Refusal unknown(AssetTag tag) {
        return Refusal.notFound(
                "tag",
                "there is no cabinet " + tag,
                "Check the label; when it is right, register the cabinet first (PUT /api/cabinets/" + tag + ").");
    }

    /**
     * Sends a cabinet where a check-in routes it.
     *
     * @param tag cabinet
     * @param route route of the check-in
     * @param verdict verdict, or null without a sweep
     * @param watch whether it gets a watch mark
     * @param openBenchJob whether it has an open bench job
     * @return its status now
     */
    public CabinetStatus checkIn(AssetTag tag, Route route, Verdict verdict, boolean watch, boolean openBenchJob) {
        Cabinet cabinet = locked(tag);
        cabinet.checkIn(route, verdict, watch, openBenchJob);
        return cabinet.status();
    }

    /**
     * Marks a cabinet as gone out with an order, when it was on the shelf.
     *
     * @param tag cabinet
     * @param by person or kiosk
     * @param text why
     */
    public void sendOut(AssetTag tag, String by, Reason text) {
        if (locked(tag).sendOut()) {
            append(event(tag, HistoryEvent.Kind.SENT_OUT, by, text));
        }
    }

    /**
     * Marks a cabinet as missing, when it is still out.
     *
     * @param tag cabinet
     * @param by person or kiosk
     * @param text why
     */
    public void markMissing(AssetTag tag, String by, Reason text) {
        if (locked(tag).markMissing()) {
            append(event(tag, HistoryEvent.Kind.MISSING, by, text));
        }
    }

    /**
     * Sends a cabinet away from the bench, its job being closed. A safety hold stays: no repair releases it. The watch
     * mark goes with a proof.
     *
     * @param tag cabinet
     * @param to READY after a proof, MANUAL_HOLD unrepaired, RETIRED when scrapped
     * @return its status now
     */
    public CabinetStatus leaveBench(AssetTag tag, CabinetStatus to) {
        Cabinet cabinet = locked(tag);
        cabinet.leaveBench(to);
        return cabinet.status();
    }

    private HistoryEvent event(AssetTag tag, HistoryEvent.Kind kind, String by, Reason text) {
        return new HistoryEvent(OrderedId.next(), tag, null, clock.instant(), by, kind, text);
    }

    /**
     * Appends an event that is new.
     *
     * @param event event with a new id
     */
    public void append(HistoryEvent event) {
        events.save(new EventRow(event));
    }

    /**
     * Appends new events of cabinets that are in the database already, right before the commit.
     *
     * @param all events with new ids
     */
    public void append(List<HistoryEvent> all) {
        added.later(EventRow.INSERT, all.stream().map(EventRow::values).toList());
    }

    /**
     * Cabinets by tag, without their drivers.
     *
     * @param tags tags
     * @return what is known of those that exist
     */
    public Map<AssetTag, Known> known(Collection<AssetTag> tags) {
        Map<AssetTag, Known> known = new TreeMap<>();
        List<String> wanted = tags.stream().map(AssetTag::value).distinct().toList();
        for (int from = 0; from < wanted.size(); from += EVENTS_PER_QUERY) {
            List<String> some = wanted.subList(from, Math.min(wanted.size(), from + EVENTS_PER_QUERY));
            cabinets.findAllById(some).forEach(c -> known.put(c.tag(), new Known(c.modelCode(), c.status())));
        }
        return known;
    }

    /**
     * What most features need of a cabinet.
     *
     * @param modelCode its model
     * @param status where it stands
     */
    public record Known(String modelCode, CabinetStatus status) {}

    /**
     * Drivers installed in a cabinet as the database has them, to be asked together with other things.
     *
     * @param tag cabinet
     * @return the question; answers are pairs of position and driver model
     */
    public static Question<Map.Entry<String, String>> driverModels(AssetTag tag) {
        return new Question<>(
                "select position_code, driver_model_code from installation where tag = ? and open_marker = true",
                (row, number) -> Map.entry(row.getString(1), row.getString(2)),
                tag.value());
    }

    /**
     * All cabinets with their drivers.
     *
     * @return by tag
     */
    public List<CabinetBody> all() {
        Map<String, List<InstalledDriver>> drivers = byTag(installations.open());
        return cabinets.findAllByOrderByTag().stream()
                .map(c -> body(c, drivers))
                .toList();
    }

    /**
     * Cabinets that changed, or whose drivers did.
     *
     * @param since after this instant
     * @return by tag
     */
    public List<CabinetBody> changedAfter(Instant since) {
        List<Cabinet> changed = cabinets.changedAfter(since);
        List<Installation> open = new ArrayList<>();
        for (int from = 0; from < changed.size(); from += EVENTS_PER_QUERY) {
            open.addAll(installations.openIn(
                    changed.subList(from, Math.min(changed.size(), from + EVENTS_PER_QUERY)).stream()
                            .map(Cabinet::getId)
                            .toList()));
        }
        Map<String, List<InstalledDriver>> drivers = byTag(open);
        return changed.stream().map(c -> body(c, drivers)).toList();
    }

    static Map<String, List<InstalledDriver>> byTag(List<Installation> installations) {
        return installations.stream()
                .collect(Collectors.groupingBy(
                        Installation::tag, Collectors.mapping(Installation::driver, Collectors.toList())));
    }

    static CabinetBody body(Cabinet cabinet, Map<String, List<InstalledDriver>> drivers) {
        return new CabinetBody(
                cabinet.tag(),
                cabinet.modelCode(),
                cabinet.shelfPlace(),
                cabinet.status(),
                cabinet.watch(),
                drivers.getOrDefault(cabinet.getId(), List.of()),
                cabinet.safetyTestDue());
    }

    /**
     * When cabinets came into the records.
     *
     * @return time of the first registration by cabinet; past events taken over count
     */
    public Map<AssetTag, Instant> registeredAt() {
        return events.registrations().stream()
                .collect(Collectors.toMap(r -> new AssetTag(r.getTag()), Events.Registration::getAt));
    }

    /**
     * How many cabinets of each model stand where.
     *
     * @return counts by model and status; statuses without a cabinet are left out
     */
    public Map<String, Map<CabinetStatus, Integer>> counts() {
        Map<String, Map<CabinetStatus, Integer>> counts = new TreeMap<>();
        for (Cabinets.StatusCount count : cabinets.countByModelAndStatus()) {
            counts.computeIfAbsent(count.getModelCode(), m -> new EnumMap<>(CabinetStatus.class))
                    .put(count.getStatus(), Math.toIntExact(count.getUnits()));
        }
        return counts;
    }

    /**
     * The last events of some cabinets.
     *
     * @param tags cabinets
     * @param most most events per cabinet
     * @return events, by cabinet, newest first
     */
    public List<HistoryEvent> lastEvents(Collection<AssetTag> tags, int most) {
        List<String> wanted =
                tags.stream().map(AssetTag::value).distinct().sorted().toList();
        List<HistoryEvent> found = new ArrayList<>();
        for (int from = 0; from < wanted.size(); from += EVENTS_PER_QUERY) {
            List<String> some = wanted.subList(from, Math.min(wanted.size(), from + EVENTS_PER_QUERY));
            events.lastOfEach(some, most).forEach(e -> found.add(e.event()));
        }
        return found;
    }

    /**
     * When something was last done that makes a driver another one than before.
     *
     * @param tag cabinet
     * @param positionCode driver position, or null for the whole cabinet
     * @param at when it was last done there
     */
    public record LastWork(AssetTag tag, String positionCode, Instant at) {}

    /**
     * The last removal, repair or sign-off at each place of some cabinets.
     *
     * @param tags cabinets
     * @return one entry per cabinet and place
     */
    public List<LastWork> lastWork(Collection<AssetTag> tags) {
        List<String> wanted =
                tags.stream().map(AssetTag::value).distinct().sorted().toList();
        if (wanted.size() == 1) {
            return lastWork(events.lastWork(wanted.get(0)));
        }
        List<LastWork> found = new ArrayList<>();
        for (int from = 0; from < wanted.size(); from += EVENTS_PER_QUERY) {
            found.addAll(
                    lastWork(events.lastWork(wanted.subList(from, Math.min(wanted.size(), from + EVENTS_PER_QUERY)))));
        }
        return found;
    }

    private static List<LastWork> lastWork(List<Events.LastWork> rows) {
        return rows.stream()
                .map(w -> new LastWork(new AssetTag(w.getTag()), w.getPositionCode(), w.getAt()))
                .toList();
    }

    /**
     * The time, cut to what the database keeps.
     *
     * @return now
     */
    public Instant now() {
        return StoredJson.cut(clock.instant());
    }
}
