package org.docksweep.service.kiosks;

import jakarta.persistence.EntityManager;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.KioskChanges;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.bench.Bench;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.cabinets.Labels;
import org.docksweep.service.commissionings.Commissionings;
import org.docksweep.service.dispatches.Dispatches;
import org.docksweep.service.learning.Learning;
import org.docksweep.service.models.Models;
import org.docksweep.service.returns.Returns;
import org.docksweep.service.site.Site;
import org.docksweep.service.store.StoredJson;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts snapshots together. */
@Service
@Transactional(readOnly = true)
class Snapshots {
    /** Events of a cabinet that a kiosk shows and prints. */
    private static final int EVENTS_PER_CABINET = 20;

    /**
     * Every write to what a snapshot holds adds a row or raises a version, and nothing is ever deleted: counts and sums
     * of versions change with every write, at the price of a few index scans.
     */
    private static final String FINGERPRINT = "select (select count(*) from cabinet_model),"
            + " (select coalesce(sum(version), 0) from cabinet_model), (select count(*) from driver_model),"
            + " (select coalesce(sum(version), 0) from driver_model), (select count(*) from point_reference),"
            + " (select count(*) from limit_set), (select count(*) from cabinet),"
            + " (select coalesce(sum(version), 0) from cabinet), (select count(*) from installation),"
            + " (select coalesce(sum(version), 0) from installation), (select count(*) from baseline),"
            + " (select count(*) from baseline_end), (select coalesce(sum(version), 0) from bench_job),"
            + " (select count(*) from bench_job), (select count(*) from dispatch),"
            + " (select count(*) from return_list), (select coalesce(sum(version), 0) from return_list),"
            + " (select count(*) from check_in), (select count(*) from history_event),"
            + " (select count(*) from past_part_life), (select count(*) from learning_decision),"
            + " (select count(*) from asset_key), (select coalesce(sum(version), 0) from asset_key)";

    /** Where the counts of references and of labels stand in it; those of the models stand before. */
    private static final int REFERENCES = 4;

    private static final int LABELS = 21;
    private static final int HASH_DIGITS = 16;
    /** A change is dated before it is there for others to see, and two services' clocks may differ. */
    private static final Duration EARLIER = Duration.ofMinutes(10);

    private final EntityManager entities;
    private final Site site;
    private final Models models;
    private final Fleet fleet;
    private final Commissionings commissionings;
    private final Returns returns;
    private final Dispatches dispatches;
    private final Bench bench;
    private final Learning learning;
    private final Labels labels;

    Snapshots(
            EntityManager entities,
            Site site,
            Models models,
            Fleet fleet,
            Commissionings commissionings,
            Returns returns,
            Dispatches dispatches,
            Bench bench,
            Learning learning,
            Labels labels) {
        this.entities = entities;
        this.site = site;
        this.models = models;
        this.fleet = fleet;
        this.commissionings = commissionings;
        this.returns = returns;
        this.dispatches = dispatches;
        this.bench = bench;
        this.learning = learning;
        this.labels = labels;
    }

    /**
     * Changes whenever a snapshot would say something else, its time of day apart. Behind the first point are those of the parts that
     * seldom change.
     */
    Fingerprint fingerprint() {
        Object[] counts = (Object[]) entities.createNativeQuery(FINGERPRINT).getSingleResult();
        // Need dates count from today on, and what was learned fades by the day, so they change at midnight without any
        // write.
        LocalDate today = LocalDate.ofInstant(fleet.now(), site.zone());
        String text = site.siteName() + "|" + site.timeZone() + "|" + today + "|" + Arrays.toString(counts);
        return new Fingerprint(
                hash(text),
                hash(Arrays.toString(Arrays.copyOfRange(counts, 0, REFERENCES))),
                hash(counts[REFERENCES].toString()),
                hash(Arrays.toString(Arrays.copyOfRange(counts, LABELS, counts.length))));
    }

    private static String hash(String text) {
        return StoredJson.sha256(text.getBytes(StandardCharsets.UTF_8)).substring(0, HASH_DIGITS);
    }

    KioskSnapshot snapshot() {
        Night night = night();
        return new KioskSnapshot(
                fleet.now(),
                site.siteName(),
                site.timeZone(),
                models.book(),
                fleet.all(),
                models.references(),
                commissionings.newest(),
                models.limits(),
                night.open(),
                night.checkedIn(),
                night.events(),
                dispatches.needsOfReturns(bench.openByModel()),
                learning.inForce(),
                labels.all());
    }

    /** Changes since a copy; parts that are as the copy's fingerprint says are left out. */
    KioskChanges changes(Instant since, Fingerprint known, Fingerprint now) {
        Instant from = since.minus(EARLIER);
        Night night = night();
        List<AssetTag> baselinesOf = commissionings.changedAfter(from);
        Instant asOf = fleet.now();
        return new KioskChanges(
                asOf,
                site.siteName(),
                site.timeZone(),
                known.models().equals(now.models()) ? null : models.book(),
                fleet.changedAfter(from),
                known.references().equals(now.references()) ? null : models.references(),
                baselinesOf,
                baselinesOf.stream()
                        .flatMap(tag -> commissionings.inForce(tag, Instant.MAX).stream())
                        .toList(),
                models.limits(),
                night.open(),
                night.checkedIn(),
                night.events(),
                dispatches.needsOfReturns(bench.openByModel()),
                learning.inForce(),
                known.labels().equals(now.labels()) ? null : labels.all());
    }

    /** What a truck of tonight brings. */
    private record Night(List<ReturnList> open, List<ReturnReport.Row> checkedIn, List<HistoryEvent> events) {}

    private Night night() {
        List<ReturnList> open = returns.open();
        Set<AssetTag> due = new LinkedHashSet<>();
        List<ReturnReport.Row> checkedIn = new ArrayList<>();
        for (ReturnList list : open) {
            list.lines().forEach(line -> due.add(line.tag()));
            ReturnReport report = returns.report(list.id());
            checkedIn.addAll(report.back());
            checkedIn.addAll(report.unexpected());
        }
        return new Night(open, checkedIn, fleet.lastEvents(due, EVENTS_PER_CABINET));
    }
}
