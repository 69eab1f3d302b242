package org.docksweep.service.dispatches;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.NeedDates;
import org.docksweep.contract.Page;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.models.Models;
import org.docksweep.service.returns.Returns;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** The dispatch plan. */
@Service
@Transactional
public class Dispatches {
    private static final int MOST_LINES = 500;
    private static final int MOST_UNITS = 100_000;
    private static final int MOST_NEEDS = 20;

    private final DispatchRows rows;
    private final Models models;
    private final Fleet fleet;
    private final Returns returns;
    private final Site site;
    private final Clock clock;

    Dispatches(DispatchRows rows, Models models, Fleet fleet, Returns returns, Site site, Clock clock) {
        this.rows = rows;
        this.models = models;
        this.fleet = fleet;
        this.returns = returns;
        this.site = site;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    Page<Dispatch> page(UUID after, int limit) {
        Limit most = Limit.of(Paging.checked(limit) + 1);
        List<DispatchRow> found =
                after == null ? rows.findAllByOrderById(most) : rows.findByIdGreaterThanOrderById(after, most);
        return Paging.page(found, limit, DispatchRow::dispatch, r -> r.getId().toString());
    }

    @Transactional(readOnly = true)
    Dispatch find(UUID id) {
        return rows.findById(id)
                .orElseThrow(() -> Refusal.notFound("id", "there is no dispatch " + id, "Look for it in the list."))
                .dispatch();
    }

    PutAnswer<Dispatch> put(UUID id, Dispatch sent) {
        Dispatch dispatch = checked(id, sent);
        String sha256 = StoredJson.sha256(dispatch);
        var before = rows.findById(id);
        if (before.isEmpty()) {
            rows.save(new DispatchRow(dispatch, sha256));
            return new PutAnswer<>(true, dispatch);
        }
        if (!before.get().bodySha256().equals(sha256)) {
            throw Refusal.idReused(
                    "dispatch " + id + " is stored already and says something else",
                    "A dispatch that changed is a new dispatch: send it under a new id.");
        }
        return new PutAnswer<>(false, dispatch);
    }

    private Dispatch checked(UUID id, Dispatch dispatch) {
        Check check = new Check()
                .that(id.equals(dispatch.id()), "id", "must be " + id + " as in the address")
                .text(dispatch.orderNumber(), 80, "orderNumber")
                .text(dispatch.customer(), 200, "customer")
                .present(dispatch.outOn(), "outOn")
                .present(dispatch.dueOn(), "dueOn");
        check.that(
                dispatch.outOn() == null
                        || dispatch.dueOn() == null
                        || !dispatch.dueOn().isBefore(dispatch.outOn()),
                "dueOn",
                "must not be before outOn, but is " + dispatch.dueOn() + " before " + dispatch.outOn());
        List<Dispatch.Line> lines = dispatch.lines() == null ? List.of() : dispatch.lines();
        check.that(!lines.isEmpty(), "lines", "must hold at least one model")
                .that(lines.size() <= MOST_LINES, "lines", "must hold at most " + MOST_LINES + " models");
        Set<String> known = models.cabinetModelCodes();
        Set<String> seen = new HashSet<>();
        for (int i = 0; i < lines.size(); i++) {
            Dispatch.Line line = lines.get(i);
            String at = "lines[" + i + "]";
            if (line == null) {
                check.present(null, at);
                continue;
            }
            check.that(
                            line.modelCode() != null && known.contains(line.modelCode()),
                            at + ".modelCode",
                            "there is no cabinet model " + line.modelCode() + " in the model book")
                    .that(
                            seen.add(String.valueOf(line.modelCode())),
                            at + ".modelCode",
                            "model " + line.modelCode() + " is given twice; give it one line with the sum")
                    .that(
                            line.count() >= 1 && line.count() <= MOST_UNITS,
                            at + ".count",
                            "must be from 1 to " + MOST_UNITS + ", but is " + line.count());
        }
        check.refuseIfWrong();
        return new Dispatch(
                id,
                dispatch.orderNumber(),
                dispatch.customer(),
                dispatch.outOn(),
                dispatch.dueOn(),
                List.copyOf(lines));
    }

    /**
     * When cabinets would be missed that are due back and went to the bench instead of the shelf: the first of a model,
     * the second, and so on. Each is worked out as if so many did not come back to the shelf, those due first.
     *
     * @param openJobs open bench jobs by model
     * @return one row per model with units due back, by model
     */
    @Transactional(readOnly = true)
    public List<NeedDates> needsOfReturns(Map<String, Integer> openJobs) {
        Plan plan = plan();
        Map<String, Integer> units = new TreeMap<>();
        plan.due().forEach(d -> units.merge(d.modelCode(), d.count(), Integer::sum));
        List<NeedDates> needs = new ArrayList<>();
        units.forEach((model, count) -> {
            List<LocalDate> days = new ArrayList<>();
            for (int lost = 1; lost <= Math.min(count, MOST_NEEDS); lost++) {
                Availability without = Availability.of(plan.ready(), less(plan.due(), model, lost), plan.booked());
                days.add(without.needOn(model, openJobs.getOrDefault(model, 0) + lost - 1));
            }
            needs.add(new NeedDates(model, days));
        });
        return needs;
    }

    private static List<Availability.Back> less(List<Availability.Back> due, String model, int units) {
        List<Availability.Back> left = new ArrayList<>();
        int lost = units;
        for (Availability.Back back : due) {
            int gone = back.modelCode().equals(model) ? Math.min(lost, back.count()) : 0;
            lost -= gone;
            if (back.count() > gone) {
                left.add(new Availability.Back(back.modelCode(), back.dueOn(), back.count() - gone));
            }
        }
        return left;
    }

    /** What bookings are served from, and the bookings. */
    private record Plan(Map<String, Integer> ready, List<Availability.Back> due, List<Dispatch> booked) {}

    /**
     * What of the bookings from today on can be met.
     *
     * @return the availability now
     */
    @Transactional(readOnly = true)
    public Availability availability() {
        Plan plan = plan();
        return Availability.of(plan.ready(), plan.due(), plan.booked());
    }

    private Plan plan() {
        LocalDate today = LocalDate.ofInstant(clock.instant(), site.zone());
        Map<String, Integer> ready = new HashMap<>();
        fleet.counts().forEach((model, counts) -> ready.put(model, counts.getOrDefault(CabinetStatus.READY, 0)));
        List<Availability.Back> due = returns.stillOut().stream()
                .map(d -> new Availability.Back(d.modelCode(), d.dueOn(), d.count()))
                .toList();
        List<Dispatch> booked = rows.findByOutOnGreaterThanEqualOrderByOutOnAscOrderNumberAscIdAsc(today).stream()
                .map(DispatchRow::dispatch)
                .toList();
        return new Plan(ready, due, booked);
    }
}
