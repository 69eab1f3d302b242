package org.docksweep.service.returns;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.Page;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.store.Question;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Return lists and how they came back. */
@Service
@Transactional
public class Returns {
    private static final int MOST_LINES = 5_000;

    private final ReturnListRows rows;
    private final Fleet fleet;
    private final Arrivals arrivals;

    Returns(ReturnListRows rows, Fleet fleet, Arrivals arrivals) {
        this.rows = rows;
        this.fleet = fleet;
        this.arrivals = arrivals;
    }

    @Transactional(readOnly = true)
    Page<ReturnList> page(UUID after, int limit) {
        Limit most = Limit.of(Paging.checked(limit) + 1);
        List<ReturnListRow> found =
                after == null ? rows.findAllByOrderById(most) : rows.findByIdGreaterThanOrderById(after, most);
        return Paging.page(found, limit, ReturnListRow::list, r -> r.getId().toString());
    }

    @Transactional(readOnly = true)
    ReturnList find(UUID id) {
        return row(id).list();
    }

    private ReturnListRow row(UUID id) {
        return rows.findById(id).orElseThrow(() -> unknown(id));
    }

    private static Refusal unknown(UUID id) {
        return Refusal.notFound("returnListId", "there is no return list " + id, "Send the list first.");
    }

    /**
     * Whether a list is there, to be asked together with other things.
     *
     * @param id the list, or null for none
     * @return the question, for {@link #requireKnown}
     */
    public static Question<UUID> known(UUID id) {
        return id == null
                ? Question.withoutAnswers()
                : new Question<>(
                        "select id from return_list where id = ?", (row, number) -> row.getObject(1, UUID.class), id);
    }

    /**
     * Makes sure a list is there.
     *
     * @param id the list, or null for none
     * @param asked what {@link #known} asked
     * @throws Refusal if there is none
     */
    public static void requireKnown(UUID id, Question<UUID> asked) {
        if (id != null && asked.answers().isEmpty()) {
            throw unknown(id);
        }
    }

    /**
     * Open lists.
     *
     * @return by due date
     */
    @Transactional(readOnly = true)
    public List<ReturnList> open() {
        return rows.findByClosedAtIsNullOrderByDueOnAscIdAsc().stream()
                .map(ReturnListRow::list)
                .toList();
    }

    /**
     * Cabinets of open lists that are still out.
     *
     * @return units by model and day due, by day
     */
    @Transactional(readOnly = true)
    public List<Due> stillOut() {
        return rows.stillOut().stream()
                .map(d -> new Due(d.getModelCode(), d.getDueOn(), Math.toIntExact(d.getUnits())))
                .toList();
    }

    /**
     * Units of a model due back.
     *
     * @param modelCode model
     * @param dueOn day due
     * @param count how many
     */
    public record Due(String modelCode, LocalDate dueOn, int count) {}

    /**
     * An order a cabinet is on the return list of.
     *
     * @param orderNumber order
     * @param customer customer
     * @param listedAt when its return list was stored
     */
    public record Order(String orderNumber, String customer, Instant listedAt) {}

    /**
     * Orders a cabinet was out on, as far as there are return lists.
     *
     * @param tag cabinet
     * @return newest first
     */
    @Transactional(readOnly = true)
    public List<Order> ordersOf(AssetTag tag) {
        return rows.with(tag.value()).stream()
                .map(r -> new Order(r.list().orderNumber(), r.list().customer(), r.storedAt()))
                .toList();
    }

    PutAnswer<ReturnList> put(UUID id, ReturnList sent, String by) {
        ReturnList list = checked(id, sent);
        String sha256 = StoredJson.sha256(list);
        var before = rows.findLocked(id);
        if (before.isPresent()) {
            if (!before.get().bodySha256().equals(sha256)) {
                throw Refusal.idReused(
                        "return list " + id + " is stored already and says something else",
                        "A list that changed is a new list: send it under a new id.");
            }
            return new PutAnswer<>(false, before.get().list());
        }
        requireCabinets(list);
        ReturnListRow row = rows.save(new ReturnListRow(list, sha256, fleet.now()));
        for (ReturnList.Line line : list.lines()) {
            fleet.sendOut(line.tag(), by, Reason.of("history-sent-out", list.orderNumber(), list.customer()));
        }
        return new PutAnswer<>(true, row.list());
    }

    private static ReturnList checked(UUID id, ReturnList list) {
        Check check = new Check()
                .that(id.equals(list.id()), "id", "must be " + id + " as in the address, but is " + list.id())
                .text(list.orderNumber(), 80, "orderNumber")
                .text(list.customer(), 200, "customer")
                .present(list.dueOn(), "dueOn");
        List<ReturnList.Line> lines = list.lines() == null ? List.of() : list.lines();
        check.that(!lines.isEmpty(), "lines", "must hold at least one cabinet")
                .that(lines.size() <= MOST_LINES, "lines", "must hold at most " + MOST_LINES + " cabinets");
        Set<AssetTag> seen = new HashSet<>();
        for (int i = 0; i < lines.size(); i++) {
            ReturnList.Line line = lines.get(i);
            check.that(line != null && line.tag() != null, "lines[" + i + "].tag", "is missing");
            check.that(
                    line == null || line.tag() == null || seen.add(line.tag()),
                    "lines[" + i + "].tag",
                    "tag " + (line == null ? null : line.tag()) + " is on the list twice");
        }
        check.refuseIfWrong();
        // Whether it is closed is ours to say; leaving it out makes a repeated PUT the same before and after closing.
        return new ReturnList(id, list.orderNumber(), list.customer(), list.dueOn(), false, List.copyOf(lines));
    }

    private void requireCabinets(ReturnList list) {
        Map<AssetTag, Fleet.Known> known =
                fleet.known(list.lines().stream().map(ReturnList.Line::tag).toList());
        Check check = new Check();
        for (int i = 0; i < list.lines().size(); i++) {
            ReturnList.Line line = list.lines().get(i);
            Fleet.Known cabinet = known.get(line.tag());
            check.that(
                    cabinet != null,
                    "lines[" + i + "].tag",
                    "there is no cabinet " + line.tag() + "; register it first");
            check.that(
                    cabinet == null || cabinet.modelCode().equals(line.modelCode()),
                    "lines[" + i + "].modelCode",
                    "cabinet " + line.tag() + " is a " + (cabinet == null ? null : cabinet.modelCode()) + ", not a "
                            + line.modelCode());
        }
        check.refuseIfWrong();
    }

    /**
     * How a list came back so far.
     *
     * @param id the list
     * @return the report
     * @throws Refusal if there is none
     */
    @Transactional(readOnly = true)
    public ReturnReport report(UUID id) {
        return report(row(id));
    }

    private ReturnReport report(ReturnListRow row) {
        ReturnList list = row.list();
        Set<AssetTag> listed = list.lines().stream().map(ReturnList.Line::tag).collect(Collectors.toSet());
        Instant until = Objects.requireNonNullElseGet(row.closedAt(), fleet::now);
        Map<AssetTag, ReturnReport.Row> came = new LinkedHashMap<>();
        arrivals.of(listed, row.storedAt(), until).forEach(r -> came.put(r.tag(), r));
        List<ReturnReport.Row> unexpected = new ArrayList<>();
        for (ReturnReport.Row arrival : arrivals.against(list.id())) {
            if (listed.contains(arrival.tag())) {
                came.put(arrival.tag(), arrival);
            } else {
                unexpected.add(arrival);
            }
        }
        List<ReturnReport.Row> back = list.lines().stream()
                .map(l -> came.get(l.tag()))
                .filter(Objects::nonNull)
                .toList();
        List<ReturnList.Line> missing =
                list.lines().stream().filter(l -> !came.containsKey(l.tag())).toList();
        return new ReturnReport(list, fleet.now(), back, missing, unexpected);
    }

    /** Closes a list: what is still out becomes missing. Closing it again changes nothing. */
    ReturnReport close(UUID id, String by) {
        ReturnListRow row = rows.findLocked(id).orElseThrow(() -> unknown(id));
        ReturnReport before = report(row);
        if (row.close(fleet.now())) {
            for (ReturnList.Line line : before.missing()) {
                fleet.markMissing(
                        line.tag(),
                        by,
                        Reason.of("history-missing", before.list().orderNumber()));
            }
        }
        return report(row);
    }
}
