package org.docksweep.service.reliability;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.ImportReceipt;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.PastPartLife;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.models.Models;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.StoredJson;
import org.docksweep.service.web.Check;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Takes over lives of parts from before the bench wrote them down: all or nothing. */
@Service
@Transactional
public class PastLives {
    private static final int MOST_AT_ONCE = 10_000;

    private final PastLifeRows rows;
    private final Fleet fleet;
    private final Models models;
    private final Site site;

    PastLives(PastLifeRows rows, Fleet fleet, Models models, Site site) {
        this.rows = rows;
        this.fleet = fleet;
        this.models = models;
        this.site = site;
    }

    ImportReceipt append(List<PastPartLife> sent) {
        check(sent);
        Instant now = fleet.now();
        int stored = 0;
        for (PastPartLife past : sent) {
            PastPartLife cut = cut(past);
            var before = rows.findById(cut.life().id());
            if (before.isEmpty()) {
                rows.save(new PastLifeRow(cut, now));
                stored++;
            } else if (!before.get().says(cut)) {
                throw Refusal.idReused(
                        "the life " + cut.life().id() + " is on record already and says something else",
                        "Lives on record are never changed: send another one under a new id.");
            }
        }
        return new ImportReceipt(sent.size(), stored, sent.size() - stored);
    }

    private void check(List<PastPartLife> sent) {
        if (sent.size() > MOST_AT_ONCE) {
            throw Refusal.badField(
                    "[]",
                    sent.size() + " lives are sent, at most " + MOST_AT_ONCE + " are taken at once",
                    "Send them in several lists.");
        }
        Check check = new Check();
        Set<UUID> ids = new HashSet<>();
        List<AssetTag> tags = new ArrayList<>();
        for (int i = 0; i < sent.size(); i++) {
            PastPartLife past = sent.get(i);
            String at = "[" + i + "]";
            check.present(past, at);
            if (past != null) {
                check.present(past.life(), at + ".life");
                if (past.life() != null) {
                    check(past, at + ".life.", ids, check);
                    tags.add(past.life().tag());
                }
            }
        }
        check.refuseIfWrong();
        Map<AssetTag, Fleet.Known> known = fleet.known(tags);
        Set<String> driverModels = models.driverModelCodes();
        for (int i = 0; i < sent.size(); i++) {
            PartLife life = sent.get(i).life();
            check.that(known.containsKey(life.tag()), "[" + i + "].life.tag", "there is no cabinet " + life.tag())
                    .that(
                            driverModels.contains(life.driverModelCode()),
                            "[" + i + "].life.driverModelCode",
                            "there is no driver model " + life.driverModelCode());
        }
        check.refuseIfWrong();
    }

    private void check(PastPartLife past, String at, Set<UUID> ids, Check check) {
        PartLife life = past.life();
        Instant now = fleet.now();
        LocalDate today = LocalDate.ofInstant(now, site.zone());
        check.present(life.id(), at + "id")
                .that(life.id() == null || ids.add(life.id()), at + "id", "is given twice")
                .present(life.tag(), at + "tag")
                .text(life.driverModelCode(), 40, at + "driverModelCode")
                .text(life.positionCode(), 40, at + "positionCode")
                .optionalText(life.driverSerial(), 80, at + "driverSerial")
                .optionalText(life.partNumber(), 80, at + "partNumber")
                .optionalText(life.partSerial(), 80, at + "partSerial")
                .present(life.fittedOn(), at + "fittedOn")
                .that(
                        life.fittedOn() == null || !life.fittedOn().isAfter(today),
                        at + "fittedOn",
                        "must not be in the future, but is " + life.fittedOn())
                .that(
                        life.endedAt() == null || !life.endedAt().isAfter(now),
                        at + "endedAt",
                        "must not be in the future, but is " + life.endedAt())
                .that(
                        life.jobCode() == null,
                        at + "jobCode",
                        "must be empty: lives of bench jobs are on record already")
                .that(
                        !life.failed() || life.endedAt() != null,
                        at + "endedAt",
                        "is missing; a part that failed was taken out at some time")
                .that(life.cause() == null || life.failed(), at + "cause", "needs failed to be true")
                .that(life.returnCount() >= 0, at + "returnCount", "must be 0 or more, but is " + life.returnCount())
                .that(
                        life.unitCostCents() == null || life.unitCostCents() >= 0,
                        at + "unitCostCents",
                        "must be 0 or more, but is " + life.unitCostCents());
        order(life, at, check);
    }

    private void order(PartLife life, String at, Check check) {
        if (life.fittedOn() == null) {
            return;
        }
        Instant fitted = life.fittedOn().atStartOfDay(site.zone()).toInstant();
        Instant end = Objects.requireNonNullElse(life.endedAt(), fleet.now());
        check.that(
                        !end.isBefore(fitted),
                        at + "endedAt",
                        "must not be before it was fitted on " + life.fittedOn() + ", but is " + life.endedAt())
                .that(
                        life.lastPassAt() == null
                                || (!life.lastPassAt().isBefore(fitted)
                                        && !life.lastPassAt().isAfter(end)),
                        at + "lastPassAt",
                        "must lie between fitting and end, but is " + life.lastPassAt());
    }

    private static PastPartLife cut(PastPartLife past) {
        PartLife life = past.life();
        return new PastPartLife(
                new PartLife(
                        life.id(),
                        life.tag(),
                        life.positionCode(),
                        life.driverModelCode(),
                        life.driverSerial(),
                        life.partNumber(),
                        life.partSerial(),
                        life.source(),
                        life.fittedOn(),
                        StoredJson.cut(life.endedAt()),
                        life.failed(),
                        life.cause(),
                        life.charge(),
                        null,
                        StoredJson.cut(life.lastPassAt()),
                        life.returnCount(),
                        life.unitCostCents()),
                past.recordsFrom());
    }

    /**
     * How many past lives there are.
     *
     * @return the number; lives are never changed, so it tells whether {@link #all} would say anything new
     */
    @Transactional(readOnly = true)
    public long count() {
        return rows.count();
    }

    /**
     * All past lives.
     *
     * @return lives, by id
     */
    @Transactional(readOnly = true)
    public List<PastPartLife> all() {
        return rows.findAllByOrderById().stream().map(PastLifeRow::past).toList();
    }
}
