package org.docksweep.service.bench;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.SpareRepairBody;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.Part;
import org.docksweep.fleet.PartFit;
import org.docksweep.fleet.PartKind;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Reasons;
import org.docksweep.service.models.Models;
import org.docksweep.service.parts.Catalogue;
import org.docksweep.service.parts.MovingPart;
import org.docksweep.service.parts.Stock;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.PutAnswer;
import org.docksweep.service.web.Refusal;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Repairs of driver units on their own: proved on the bench rig, then in stock as spares with their own history. */
@Service
@Transactional
class SpareRepairs {
    private final SpareRepairRows rows;
    private final RecordCheck check;
    private final JobBook book;
    private final FindingRows findings;
    private final UnitEvents unitEvents;
    private final Catalogue catalogue;
    private final Stock stock;
    private final Models models;
    private final Times times;
    private final Site site;

    SpareRepairs(
            SpareRepairRows rows,
            RecordCheck check,
            JobBook book,
            FindingRows findings,
            UnitEvents unitEvents,
            Catalogue catalogue,
            Stock stock,
            Models models,
            Times times,
            Site site) {
        this.rows = rows;
        this.check = check;
        this.book = book;
        this.findings = findings;
        this.unitEvents = unitEvents;
        this.catalogue = catalogue;
        this.stock = stock;
        this.models = models;
        this.times = times;
        this.site = site;
    }

    PutAnswer<Part> put(UUID id, SpareRepairBody sent, String tokenName) {
        SpareRepairBody body = checked(id, sent);
        Part unit = catalogue.known(body.partNumber(), "partNumber");
        String sha256 = StoredJson.sha256(body);
        Optional<SpareRepairRow> before = rows.findById(id);
        if (before.isPresent()) {
            if (!before.get().bodySha256().equals(sha256)) {
                throw Refusal.idReused(
                        "spare repair " + id + " is stored already and says something else",
                        "Give another repair an id of its own; what is stored stays.");
            }
            return new PutAnswer<>(false, unit);
        }
        DriverModel driver = driver(unit);
        MovingPart inside = stock.awaitingRepair(unit, body.driverSerial());
        requireProved(body);
        if (body.fitted() != null) {
            inside = fit(body, driver, inside);
        }
        stock.repaired(derived(id, "stock"), unit, body.driverSerial(), inside, body.at(), body.by());
        store(body, sha256, tokenName, driver);
        return new PutAnswer<>(true, unit);
    }

    private DriverModel driver(Part unit) {
        if (unit.kind() != PartKind.DRIVER_UNIT) {
            throw Refusal.badField(
                    "partNumber",
                    "part " + unit.number() + " is a " + unit.kind() + ", not a whole driver",
                    "Give the number of the whole driver that was repaired.");
        }
        return models.driverModel(unit.fitsDriverModels().get(0), "partNumber");
    }

    private SpareRepairBody checked(UUID id, SpareRepairBody body) {
        Check errors = new Check()
                .that(id.equals(body.id()), "id", "must be " + id + " as in the address, but is " + body.id())
                .text(body.by(), 120, "by")
                .text(body.bench(), 80, "bench")
                .text(body.partNumber(), 40, "partNumber")
                .text(body.driverSerial(), 80, "driverSerial")
                .present(body.finding(), "finding")
                .that(body.finding() == null || body.finding().id() != null, "finding.id", "is missing")
                .that(
                        body.proofs() != null && body.proofs().stream().allMatch(p -> p != null && p.id() != null),
                        "proofs",
                        "must be a list of sweeps with ids");
        times.notInFuture(body.at(), "at", errors);
        if (body.fitted() != null) {
            check.fitted(body.fitted(), errors);
        }
        errors.refuseIfWrong();
        return new SpareRepairBody(
                id,
                StoredJson.cut(body.at()),
                body.by(),
                body.bench(),
                body.partNumber(),
                body.driverSerial(),
                body.fitted(),
                check.finding(body.finding().id(), body.finding(), null),
                body.proofs().stream().map(p -> check.proof(p.id(), p, null)).toList());
    }

    private static void requireProved(SpareRepairBody body) {
        List<Reason> missing =
                ProofRules.missingOfBareDriver(body.proofs(), body.fitted() != null, body.driverSerial());
        if (!missing.isEmpty()) {
            throw Refusal.notProved(
                    body.driverSerial(),
                    missing.stream().map(m -> Reasons.text(m, Locale.ENGLISH)).toList());
        }
    }

    private MovingPart fit(SpareRepairBody body, DriverModel driver, MovingPart old) {
        Part part = catalogue.known(body.fitted().partNumber(), "fitted.partNumber");
        PartFit.refusal(part, driver).ifPresent(reason -> {
            throw Exchanges.doesNotFit(reason);
        });
        stock.consume(derived(body.id(), "fitted"), body.fitted(), body.at(), body.by(), null);
        stock.scrapMovingPart(old.partNumber(), old.serial(), body.at());
        return new MovingPart(
                part.number(), body.fitted().serial(), part.source(), LocalDate.ofInstant(body.at(), site.zone()));
    }

    private void store(SpareRepairBody body, String sha256, String tokenName, DriverModel driver) {
        SpareRepairBody bare = new SpareRepairBody(
                body.id(),
                body.at(),
                body.by(),
                body.bench(),
                body.partNumber(),
                body.driverSerial(),
                body.fitted(),
                body.finding(),
                body.proofs().stream().map(p -> JobBook.with(p, List.of())).toList());
        rows.saveAndFlush(new SpareRepairRow(body, bare, sha256, tokenName, times.now()));
        body.proofs().forEach(p -> book.store(p.id(), p.measurements()));
        findings.saveAndFlush(new FindingRow(null, driver.code(), body.driverSerial(), body.finding()));
        event(body, driver, "found", body.finding().at(), HistoryEvent.Kind.FOUND, JobEvents.found(body.finding()));
        if (body.fitted() != null) {
            event(
                    body,
                    driver,
                    "fitted",
                    body.at(),
                    HistoryEvent.Kind.INSTALLED,
                    Reason.of(
                            "history-bench-fitted",
                            body.fitted().partNumber(),
                            body.fitted().serial() == null
                                    ? "-"
                                    : JobEvents.words(body.fitted().serial())));
        }
        event(body, driver, "repaired", body.at(), HistoryEvent.Kind.REPAIRED, Reason.of("history-spare-repaired"));
    }

    private void event(
            SpareRepairBody body, DriverModel driver, String what, Instant at, HistoryEvent.Kind kind, Reason text) {
        unitEvents.append(driver.code(), body.driverSerial(), derived(body.id(), what), at, body.by(), kind, text);
    }

    private static UUID derived(UUID id, String what) {
        return UUID.nameUUIDFromBytes(("spare repair " + id + " " + what).getBytes(StandardCharsets.UTF_8));
    }
}
