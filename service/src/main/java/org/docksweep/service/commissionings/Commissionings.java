package org.docksweep.service.commissionings;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.UUID;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.models.Models;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Keeps commissionings; the newest baseline of a cabinet's test point is the one to compare with. */
@Service
@Transactional
public class Commissionings {
    private final CommissioningRows rows;
    private final BaselineRows baselines;
    private final BaselineEnds ends;
    private final Fleet fleet;
    private final Models models;

    Commissionings(CommissioningRows rows, BaselineRows baselines, BaselineEnds ends, Fleet fleet, Models models) {
        this.rows = rows;
        this.ends = ends;
        this.baselines = baselines;
        this.fleet = fleet;
        this.models = models;
    }

    /**
     * Stores a commissioning: its curves become the cabinet's baseline, older ones are kept.
     *
     * @param id its id
     * @param sent commissioning
     * @return what is stored
     * @throws Refusal if it is wrong, or the id was used before
     */
    public PutAnswer<CommissioningBody> put(UUID id, CommissioningBody sent) {
        CommissioningBody body = checked(id, sent);
        fleet.lock(body.tag());
        String sha256 = StoredJson.sha256(body);
        var before = rows.findById(id);
        if (before.isPresent()) {
            if (!before.get().bodySha256().equals(sha256)) {
                throw Refusal.idReused(
                        "commissioning " + id + " is stored already, for cabinet "
                                + before.get().tag() + ", and says something else",
                        "Give another sweep an id of its own; what is stored stays.");
            }
            return new PutAnswer<>(false, body);
        }
        requirePoints(body);
        rows.saveAndFlush(new Commissioning(body, sha256));
        body.baselines().forEach(b -> baselines.save(new BaselineRow(id, b)));
        fleet.append(new HistoryEvent(
                UUID.nameUUIDFromBytes(("commissioning " + id).getBytes(StandardCharsets.UTF_8)),
                body.tag(),
                null,
                body.takenAt(),
                body.operator(),
                HistoryEvent.Kind.COMMISSIONED,
                Reason.of(
                        "history-commissioned",
                        Integer.toString(body.baselines().size()))));
        return new PutAnswer<>(true, body);
    }

    private static CommissioningBody checked(UUID id, CommissioningBody body) {
        Check check = new Check()
                .that(id.equals(body.id()), "id", "must be " + id + " as in the address, but is " + body.id())
                .present(body.tag(), "tag")
                .present(body.takenAt(), "takenAt")
                .text(body.operator(), 120, "operator");
        List<Baseline> baselines = body.baselines() == null ? List.of() : body.baselines();
        check.that(!baselines.isEmpty(), "baselines", "must hold at least one baseline");
        Set<String> points = new HashSet<>();
        for (int i = 0; i < baselines.size(); i++) {
            Baseline baseline = baselines.get(i);
            String at = "baselines[" + i + "]";
            check.present(baseline, at);
            if (baseline != null) {
                check.that(
                                body.tag() != null && body.tag().equals(baseline.tag()),
                                at + ".tag",
                                "must be " + body.tag() + " as in the body, but is " + baseline.tag())
                        .text(baseline.testPointCode(), 40, at + ".testPointCode")
                        .that(
                                points.add(String.valueOf(baseline.testPointCode())),
                                at + ".testPointCode",
                                "test point " + baseline.testPointCode() + " is given twice")
                        .present(baseline.takenAt(), at + ".takenAt")
                        .that(
                                baseline.impedance() != null || baseline.acoustic() != null,
                                at,
                                "holds no curve; at least one is needed");
            }
        }
        check.refuseIfWrong();
        return new CommissioningBody(
                id,
                body.tag(),
                StoredJson.cut(body.takenAt()),
                body.operator(),
                baselines.stream().map(Commissionings::cut).toList());
    }

    private static Baseline cut(Baseline baseline) {
        return new Baseline(
                baseline.tag(),
                baseline.testPointCode(),
                StoredJson.cut(baseline.takenAt()),
                baseline.ambientCelsius(),
                baseline.impedance(),
                baseline.acoustic());
    }

    private void requirePoints(CommissioningBody body) {
        String modelCode = fleet.known(List.of(body.tag())).get(body.tag()).modelCode();
        CabinetModel model = models.cabinetModel(modelCode, "tag");
        Set<String> known = new TreeSet<>();
        model.testPoints().stream().map(TestPoint::code).forEach(known::add);
        Check check = new Check();
        for (int i = 0; i < body.baselines().size(); i++) {
            String code = body.baselines().get(i).testPointCode();
            check.that(
                    known.contains(code),
                    "baselines[" + i + "].testPointCode",
                    "model " + modelCode + " has test points " + known + ", but this is " + code);
        }
        check.refuseIfWrong();
    }

    /**
     * Ends baselines: what they were measured on is no longer in the cabinet. They are kept, but hold no longer.
     *
     * @param tag cabinet
     * @param testPointCodes test points
     * @param at since when they hold no longer
     * @param job job that exchanged something
     */
    public void end(AssetTag tag, Set<String> testPointCodes, Instant at, JobCode job) {
        testPointCodes.forEach(point -> ends.save(new BaselineEnd(tag, point, at, job)));
    }

    @Transactional(readOnly = true)
    CommissioningBody find(UUID id) {
        Commissioning row = rows.findById(id)
                .orElseThrow(() -> Refusal.notFound(
                        "id", "there is no commissioning " + id, "Its kiosk may not have sent it yet."));
        return row.body(baselines.of(id).stream().map(BaselineRow::baseline).toList());
    }

    /**
     * Baselines of a cabinet that held before an instant.
     *
     * @param tag cabinet
     * @param before instant
     * @return the newest per test point taken before
     */
    @Transactional(readOnly = true)
    public List<Baseline> before(AssetTag tag, Instant before) {
        Map<String, Baseline> newest = new TreeMap<>();
        baselines.of(tag.value()).stream()
                .map(BaselineRow::baseline)
                .filter(b -> b.takenAt().isBefore(before))
                .forEach(b -> newest.putIfAbsent(b.testPointCode(), b));
        return List.copyOf(newest.values());
    }

    /**
     * Baselines that were in force at an instant.
     *
     * @param tag cabinet
     * @param at instant
     * @return the newest per test point taken before and not ended since
     */
    @Transactional(readOnly = true)
    public List<Baseline> inForce(AssetTag tag, Instant at) {
        List<BaselineEnd> ended = ends.of(tag.value());
        return before(tag, at).stream()
                .filter(b -> ended.stream().noneMatch(e -> e.ended(b.testPointCode(), b.takenAt(), at)))
                .toList();
    }

    /**
     * Cabinets whose baselines changed.
     *
     * @param since after this instant
     * @return their tags
     */
    @Transactional(readOnly = true)
    public List<AssetTag> changedAfter(Instant since) {
        return baselines.changedAfter(since).stream().map(AssetTag::new).toList();
    }

    /**
     * Baselines in force.
     *
     * @return the newest per cabinet and test point, by cabinet
     */
    @Transactional(readOnly = true)
    public List<Baseline> newest() {
        return baselines.newest().stream().map(BaselineRow::baseline).toList();
    }
}
