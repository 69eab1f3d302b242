package org.docksweep.service.checkins;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.docksweep.contract.CheckInBody;
import org.docksweep.contract.CheckInReceipt;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Verdict;
import org.docksweep.judge.PositionState;
import org.docksweep.service.bench.Bench;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.measurements.Measurements;
import org.docksweep.service.models.AskedModel;
import org.docksweep.service.returns.Returns;
import org.docksweep.service.store.AddedRows;
import org.docksweep.service.store.Question;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.context.ApplicationEventPublisher;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/**
 * Stores check-ins: in one transaction the check-in with its measurements and curves, the cabinet's new status, the
 * events of its history, and the bench job it opens or joins.
 */
@Service
@Transactional
public class CheckIns {
    private static final int TAGS_PER_QUERY = 500;

    private final CheckInRows rows;
    private final NewCheckIn newCheckIn;
    private final CheckInCheck check;
    private final Fleet fleet;
    private final AddedRows added;
    private final Bench bench;
    private final Measurements measurements;
    private final ApplicationEventPublisher events;

    CheckIns(
            CheckInRows rows,
            NewCheckIn newCheckIn,
            CheckInCheck check,
            Fleet fleet,
            AddedRows added,
            Bench bench,
            Measurements measurements,
            ApplicationEventPublisher events) {
        this.rows = rows;
        this.newCheckIn = newCheckIn;
        this.check = check;
        this.fleet = fleet;
        this.added = added;
        this.bench = bench;
        this.measurements = measurements;
        this.events = events;
    }

    PutAnswer<CheckInReceipt> put(UUID id, CheckInBody sent) {
        CheckInBody body = check.complete(id, sent);
        // From here on check-ins of this cabinet come one after the other, and see what the one before wrote.
        boolean knownCabinet = fleet.lockIfKnown(body.tag());
        AskedModel askedModel = new AskedModel(body.modelCode(), "modelCode");
        Question<CheckInBefore> before = CheckInBefore.of(id);
        Question<UUID> returnList = Returns.known(body.returnListId());
        Question<Map.Entry<String, String>> installed = Fleet.driverModels(body.tag());
        Question<String> openJob = Bench.openJob(body.tag());
        Question<String> usedIds = Measurements.usedIds(body.measurements());
        added.ask(askedModel.question(), before, returnList, installed, openJob, usedIds);

        CabinetModel model = askedModel.model();
        check.fits(body, model);
        if (!knownCabinet) {
            throw Fleet.unknown(body.tag());
        }
        String sha256 = StoredJson.sha256(body);
        if (!before.answers().isEmpty()) {
            return again(before.answers().get(0), id, sha256);
        }
        Returns.requireKnown(body.returnListId(), returnList);
        Bench.Assignment job = bench.assign(body, openJob);
        CabinetStatus status =
                fleet.checkIn(body.tag(), body.route(), body.verdict(), body.watch(), job.code() != null);
        CheckInReceipt receipt = new CheckInReceipt(id, status, job.code(), job.joined());
        newCheckIn.add(body, sha256, fleet.now(), receipt, driverModels(model, installed));
        measurements.store(id, body.measurements(), usedIds);
        appendEvents(body);
        events.publishEvent(new CheckInStored(body));
        return new PutAnswer<>(true, receipt);
    }

    private static PutAnswer<CheckInReceipt> again(CheckInBefore before, UUID id, String sha256) {
        if (!before.bodySha256().equals(sha256)) {
            throw Refusal.idReused(
                    "check-in " + id + " is stored already, for cabinet " + before.tag() + ", and says something else",
                    "Give another check-in an id of its own; what is stored stays.");
        }
        return new PutAnswer<>(false, before.receipt());
    }

    /** Driver model at each position: what is installed, or else what belongs there. */
    private static Map<String, String> driverModels(CabinetModel model, Question<Map.Entry<String, String>> installed) {
        Map<String, String> driverModels = new HashMap<>();
        model.positions().forEach(p -> driverModels.put(p.code(), p.driverModelCode()));
        installed.answers().forEach(driver -> driverModels.put(driver.getKey(), driver.getValue()));
        return driverModels;
    }

    private void appendEvents(CheckInBody body) {
        List<HistoryEvent> all = new ArrayList<>();
        all.add(event(body, null, body.reason()));
        for (PositionState position : body.positions()) {
            if (position.word() != null) {
                all.add(event(body, position.positionCode(), position.word()));
            }
        }
        fleet.append(all);
    }

    /** The id follows from the check-in, so that no retry can double an event, and lies beside it in the order of time. */
    private static HistoryEvent event(CheckInBody body, String position, Reason text) {
        UUID name = UUID.nameUUIDFromBytes(
                ("check-in " + body.id() + " position " + position).getBytes(StandardCharsets.UTF_8));
        UUID id = new UUID(body.id().getMostSignificantBits(), name.getLeastSignificantBits());
        return new HistoryEvent(
                id, body.tag(), position, body.finishedAt(), body.operator(), HistoryEvent.Kind.CHECKED_IN, text);
    }

    /**
     * Check-ins answered within a period.
     *
     * @param from start
     * @param to end, not part of it
     * @param most at most so many
     * @return their ids, oldest first
     */
    @Transactional(readOnly = true)
    public List<UUID> finished(Instant from, Instant to, int most) {
        return rows.finished(from, to, Limit.of(most));
    }

    /**
     * How many check-ins were answered within a period.
     *
     * @param from start
     * @param to end, not part of it
     * @return their number
     */
    @Transactional(readOnly = true)
    public int count(Instant from, Instant to) {
        return rows.countByFinishedAtGreaterThanEqualAndFinishedAtLessThan(from, to);
    }

    /**
     * A check-in with its measurements.
     *
     * @param id its id
     * @return the check-in
     * @throws Refusal if there is none
     */
    @Transactional(readOnly = true)
    public CheckInBody find(UUID id) {
        CheckIn row = rows.findById(id)
                .orElseThrow(() ->
                        Refusal.notFound("id", "there is no check-in " + id, "Its kiosk may not have sent it yet."));
        return row.body(measurements.of(id));
    }

    /**
     * What is counted and looked up of a check-in.
     *
     * @param id its id
     * @param tag cabinet
     * @param finishedAt when
     * @param verdict verdict, or null when it was held without a sweep
     */
    public record Header(UUID id, AssetTag tag, Instant finishedAt, Verdict verdict) {}

    /**
     * Check-ins of some cabinets.
     *
     * @param tags cabinets
     * @return newest first
     */
    @Transactional(readOnly = true)
    public List<Header> headers(Collection<AssetTag> tags) {
        List<String> wanted =
                tags.stream().map(AssetTag::value).distinct().sorted().toList();
        List<Header> found = new ArrayList<>();
        for (int from = 0; from < wanted.size(); from += TAGS_PER_QUERY) {
            rows.headers(wanted.subList(from, Math.min(wanted.size(), from + TAGS_PER_QUERY)))
                    .forEach(h -> found.add(
                            new Header(h.getId(), new AssetTag(h.getTag()), h.getFinishedAt(), h.getVerdict())));
        }
        return found;
    }

    /**
     * How often driver models came back.
     *
     * @param periods how far to look back from now, six of them, growing
     * @return by driver model, one count per period, each of the whole time from then to now
     */
    @Transactional(readOnly = true)
    public Map<String, long[]> returned(List<Duration> periods) {
        Instant now = fleet.now();
        List<Instant> since = periods.stream().map(now::minus).toList();
        Map<String, long[]> counts = new LinkedHashMap<>();
        rows.returnedSince(since.get(0), since.get(1), since.get(2), since.get(3), since.get(4), since.get(5))
                .forEach(r -> counts.put(r.getDriverModelCode(), new long[] {
                    r.getFirst(), r.getSecond(), r.getThird(), r.getFourth(), r.getFifth(), r.getSixth()
                }));
        return counts;
    }

    /**
     * Failures by driver model.
     *
     * @param period how far to look back from now
     * @return one row per driver model that was checked in
     */
    @Transactional(readOnly = true)
    public List<FleetStatus.FaultRow> faults(Duration period) {
        Instant since = fleet.now().minus(period);
        return rows.faultsSince(since).stream()
                .map(f -> new FleetStatus.FaultRow(
                        f.getDriverModelCode(), Math.toIntExact(f.getCheckIns()), Math.toIntExact(f.getFailures())))
                .toList();
    }
}
