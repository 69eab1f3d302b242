package org.docksweep.service.cabinets;

import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.InstalledDriver;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.Page;
import org.docksweep.contract.SafetyTest;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.Reason;
import org.docksweep.service.models.Models;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Paging;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.springframework.data.domain.Limit;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Registers cabinets and shows them. */
@Service
@Transactional
class Register {
    /** Dates outside are slips of the pen. */
    private static final int FIRST_YEAR = 2000;

    private static final int LAST_YEAR = 2100;

    private final Cabinets cabinets;
    private final Installations installations;
    private final Events events;
    private final Models models;
    private final Clock clock;

    Register(Cabinets cabinets, Installations installations, Events events, Models models, Clock clock) {
        this.cabinets = cabinets;
        this.installations = installations;
        this.events = events;
        this.models = models;
        this.clock = clock;
    }

    @Transactional(readOnly = true)
    Page<CabinetBody> page(CabinetStatus status, String after, int limit) {
        Limit most = Limit.of(Paging.checked(limit) + 1);
        List<Cabinet> rows = status == null
                ? cabinets.findByTagGreaterThanOrderByTag(after, most)
                : cabinets.findByStatusAndTagGreaterThanOrderByTag(status, after, most);
        Map<String, List<InstalledDriver>> drivers = Fleet.byTag(
                installations.openIn(rows.stream().map(Cabinet::getId).toList()));
        return Paging.page(rows, limit, c -> Fleet.body(c, drivers), Cabinet::getId);
    }

    @Transactional(readOnly = true)
    CabinetBody find(AssetTag tag) {
        Cabinet cabinet = cabinets.findById(tag.value()).orElseThrow(() -> Fleet.unknown(tag));
        return Fleet.body(cabinet, Fleet.byTag(installations.openIn(tag.value())));
    }

    /** Registers a cabinet, or, for a manager, changes it. The same again changes nothing. */
    PutAnswer<CabinetBody> put(AssetTag tag, CabinetBody sent, String by, boolean mayChange) {
        CabinetBody body = checked(tag, sent);
        Cabinet cabinet = cabinets.findLocked(tag.value()).orElse(null);
        Instant now = StoredJson.cut(clock.instant());
        if (cabinet == null) {
            cabinets.saveAndFlush(new Cabinet(body));
            body.drivers().forEach(d -> install(tag, d));
            note(tag, null, now, by, HistoryEvent.Kind.REGISTERED, Reason.of("history-registered", body.modelCode()));
            return new PutAnswer<>(true, body);
        }
        CabinetBody before = Fleet.body(cabinet, Fleet.byTag(installations.openIn(tag.value())));
        if (same(before, body)) {
            return new PutAnswer<>(false, before);
        }
        if (!mayChange) {
            throw Refusal.idReused(
                    "cabinet " + tag + " is registered already, as " + before.modelCode() + " with status "
                            + before.status(),
                    "Use it as it is; only a manager changes a registered cabinet.");
        }
        if (before.status() == CabinetStatus.BENCH != (body.status() == CabinetStatus.BENCH)) {
            throw Refusal.wrongState(
                    "status",
                    "cabinet " + tag + " is " + before.status() + "; it gets to the bench and away from it by its"
                            + " bench job only",
                    "Leave the status as it is, or work on the bench job.");
        }
        cabinet.replace(body);
        if (body.safetyTestDue() != null && !body.safetyTestDue().equals(before.safetyTestDue())) {
            note(tag, null, now, by, HistoryEvent.Kind.NOTE, safetyTestWords(body.safetyTestDue()));
        }
        exchangeDrivers(tag, before.drivers(), body.drivers(), now, by);
        if (before.status() != body.status()) {
            note(
                    tag,
                    null,
                    now,
                    by,
                    changeKind(before, body),
                    Reason.of("history-status-changed", name(before), name(body)));
        }
        return new PutAnswer<>(
                false, body.safetyTestDue() == null ? body.withSafetyTestDue(before.safetyTestDue()) : body);
    }

    /** Takes the day a powered cabinet's next electrical safety test is due. The same again changes nothing. */
    CabinetBody safetyTest(AssetTag tag, SafetyTest sent, String by) {
        Cabinet cabinet = cabinets.findLocked(tag.value()).orElseThrow(() -> Fleet.unknown(tag));
        checkSafetyTest(models.cabinetModel(cabinet.modelCode(), "modelCode"), sent.dueOn(), "dueOn");
        if (!Objects.equals(sent.dueOn(), cabinet.safetyTestDue())) {
            cabinet.safetyTestDue(sent.dueOn());
            note(
                    tag,
                    null,
                    StoredJson.cut(clock.instant()),
                    by,
                    HistoryEvent.Kind.NOTE,
                    sent.dueOn() == null ? Reason.of("history-safety-test-none") : safetyTestWords(sent.dueOn()));
        }
        return Fleet.body(cabinet, Fleet.byTag(installations.openIn(tag.value())));
    }

    private static Reason safetyTestWords(LocalDate dueOn) {
        return Reason.of("history-safety-test", dueOn.toString());
    }

    private static void checkSafetyTest(CabinetModel model, LocalDate dueOn, String field) {
        Optional<String> problem = dueOn == null ? Optional.empty() : safetyTestProblem(model, dueOn);
        new Check().that(problem.isEmpty(), field, problem.orElse("")).refuseIfWrong();
    }

    /** Why a date cannot be that of a cabinet's electrical safety test; empty when it can. */
    static Optional<String> safetyTestProblem(CabinetModel model, LocalDate dueOn) {
        if (model.feed() != Feed.POWERED) {
            return Optional.of("only powered cabinets carry a date of their electrical safety test, but model "
                    + model.code() + " is " + model.feed() + "; leave it out");
        }
        return dueOn.getYear() >= FIRST_YEAR && dueOn.getYear() <= LAST_YEAR
                ? Optional.empty()
                : Optional.of("must be a date from " + FIRST_YEAR + " to " + LAST_YEAR + ", but is " + dueOn);
    }

    private static HistoryEvent.Kind changeKind(CabinetBody before, CabinetBody after) {
        boolean wasHeld = isHold(before.status());
        boolean isHeld = isHold(after.status());
        return wasHeld == isHeld
                ? HistoryEvent.Kind.NOTE
                : isHeld ? HistoryEvent.Kind.HELD : HistoryEvent.Kind.RELEASED;
    }

    private static boolean isHold(CabinetStatus status) {
        return status == CabinetStatus.SAFETY_HOLD || status == CabinetStatus.MANUAL_HOLD;
    }

    private static String name(CabinetBody body) {
        return body.status().name();
    }

    private static boolean same(CabinetBody before, CabinetBody body) {
        return before.modelCode().equals(body.modelCode())
                && Objects.equals(before.shelfPlace(), body.shelfPlace())
                && before.status() == body.status()
                && before.watch() == body.watch()
                && (body.safetyTestDue() == null || body.safetyTestDue().equals(before.safetyTestDue()))
                && new HashSet<>(before.drivers()).equals(new HashSet<>(body.drivers()));
    }

    private void exchangeDrivers(
            AssetTag tag, List<InstalledDriver> before, List<InstalledDriver> after, Instant now, String by) {
        Set<InstalledDriver> kept = new HashSet<>(before);
        kept.retainAll(after);
        for (Installation open : installations.openIn(tag.value())) {
            if (!kept.contains(open.driver())) {
                open.remove(now);
                InstalledDriver out = open.driver();
                note(
                        tag,
                        out.positionCode(),
                        now,
                        by,
                        HistoryEvent.Kind.REMOVED,
                        described("history-driver-removed", out));
            }
        }
        installations.flush();
        for (InstalledDriver driver : after) {
            if (!kept.contains(driver)) {
                install(tag, driver);
                note(
                        tag,
                        driver.positionCode(),
                        now,
                        by,
                        HistoryEvent.Kind.INSTALLED,
                        described("history-driver-installed", driver));
            }
        }
    }

    private static Reason described(String key, InstalledDriver driver) {
        return Reason.of(key, driver.driverModelCode(), driver.driverSerial() == null ? "-" : driver.driverSerial());
    }

    private void install(AssetTag tag, InstalledDriver driver) {
        if (driver.driverSerial() != null) {
            installations
                    .openOf(driver.driverModelCode(), driver.driverSerial())
                    .ifPresent(elsewhere -> {
                        throw Refusal.wrongState(
                                "drivers",
                                "driver " + driver.driverModelCode() + " " + driver.driverSerial() + " sits in "
                                        + elsewhere.tag() + " at "
                                        + elsewhere.driver().positionCode(),
                                "Check the serial; when it is right, take it out of " + elsewhere.tag() + " first.");
                    });
        }
        if (driver.diaphragmSerial() != null) {
            installations.withDiaphragm(List.of(driver.driverModelCode()), driver.diaphragmSerial()).stream()
                    .filter(Installation::isOpen)
                    .findFirst()
                    .ifPresent(elsewhere -> {
                        throw Refusal.wrongState(
                                "drivers",
                                "diaphragm " + driver.diaphragmSerial() + " sits in " + elsewhere.tag() + " at "
                                        + elsewhere.driver().positionCode(),
                                "Read the serial again; one diaphragm cannot sit in two drivers.");
                    });
        }
        // Seen by the check above when the same body gives a serial twice.
        installations.saveAndFlush(new Installation(tag, driver));
    }

    private void note(AssetTag tag, String position, Instant at, String by, HistoryEvent.Kind kind, Reason text) {
        events.save(new EventRow(new HistoryEvent(OrderedId.next(), tag, position, at, by, kind, text)));
    }

    private CabinetBody checked(AssetTag tag, CabinetBody body) {
        List<InstalledDriver> drivers = body.drivers() == null ? List.of() : body.drivers();
        Check check = new Check()
                .that(tag.equals(body.tag()), "tag", "must be " + tag + " as in the address, but is " + body.tag())
                .text(body.modelCode(), 40, "modelCode")
                .optionalText(body.shelfPlace(), 40, "shelfPlace")
                .present(body.status(), "status");
        check.refuseIfWrong();
        CabinetModel model = models.cabinetModel(body.modelCode(), "modelCode");
        Map<String, Integer> places = new HashMap<>();
        Set<String> known = new java.util.TreeSet<>();
        model.positions().forEach(p -> known.add(p.code()));
        Set<String> driverModels = models.driverModelCodes();
        for (int i = 0; i < drivers.size(); i++) {
            InstalledDriver driver = drivers.get(i);
            String at = "drivers[" + i + "]";
            if (driver == null) {
                check.present(null, at);
                continue;
            }
            check.that(
                            known.contains(driver.positionCode()),
                            at + ".positionCode",
                            "model " + model.code() + " has positions " + known + ", but this is "
                                    + driver.positionCode())
                    .that(
                            places.putIfAbsent(String.valueOf(driver.positionCode()), i) == null,
                            at + ".positionCode",
                            "position " + driver.positionCode() + " is given twice")
                    .that(
                            driver.driverModelCode() != null && driverModels.contains(driver.driverModelCode()),
                            at + ".driverModelCode",
                            "there is no driver model " + driver.driverModelCode() + " in the model book")
                    .optionalText(driver.driverSerial(), 80, at + ".driverSerial")
                    .optionalText(driver.diaphragmSerial(), 80, at + ".diaphragmSerial");
        }
        check.refuseIfWrong();
        checkSafetyTest(model, body.safetyTestDue(), "safetyTestDue");
        return new CabinetBody(
                tag,
                body.modelCode(),
                body.shelfPlace(),
                body.status(),
                body.watch(),
                List.copyOf(drivers),
                body.safetyTestDue());
    }
}
