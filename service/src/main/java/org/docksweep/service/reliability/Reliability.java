package org.docksweep.service.reliability;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.contract.ReliabilityReport;
import org.docksweep.contract.ReliabilityReport.DriverRow;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.models.Models;
import org.docksweep.service.site.Site;
import org.docksweep.service.web.Refusal;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts the reliability report together. */
@Service
@Transactional(readOnly = true)
class Reliability {
    private final Site site;
    private final Models models;
    private final Fleet fleet;
    private final PastLives pastLives;
    private final BenchHistories histories;

    Reliability(Site site, Models models, Fleet fleet, PastLives pastLives, BenchHistories histories) {
        this.site = site;
        this.models = models;
        this.fleet = fleet;
        this.pastLives = pastLives;
        this.histories = histories;
    }

    /** The report of all driver models, or of one. */
    ReliabilityReport report(String driverModelCode) {
        ModelBook book = models.book();
        if (driverModelCode != null
                && book.driverModels().stream().noneMatch(d -> d.code().equals(driverModelCode))) {
            throw Refusal.notFound(
                    "driverModel",
                    "there is no driver model " + driverModelCode,
                    "Leave it out for all, or take a code of GET /api/model-book.");
        }
        Instant asOf = fleet.now();
        ReliabilityCount count = new ReliabilityCount(site.zone());
        Map<String, List<PartHistory>> parts = new TreeMap<>();
        for (PartHistory history : histories()) {
            parts.computeIfAbsent(history.life().driverModelCode(), d -> new ArrayList<>())
                    .add(history);
        }
        List<DriverRow> rows = new ArrayList<>();
        for (DriverModel driver : book.driverModels()) {
            List<PartHistory> own = parts.getOrDefault(driver.code(), List.of());
            if (!own.isEmpty() && (driverModelCode == null || driverModelCode.equals(driver.code()))) {
                rows.add(count.driver(driver.code(), driver.name(), own));
            }
        }
        rows.sort(Comparator.comparingInt((DriverRow r) -> r.all().failures())
                .reversed()
                .thenComparing(DriverRow::driverModelCode));
        return new ReliabilityReport(site.siteName(), asOf, ReliabilityCount.CONFIDENCE, rows);
    }

    private List<PartHistory> histories() {
        List<PartHistory> all = new ArrayList<>();
        pastLives
                .all()
                .forEach(p -> all.add(new PartHistory(
                        p.life(), p.recordsFrom(), p.life().endedAt(), p.life().lastPassAt())));
        all.addAll(histories.all());
        return all;
    }
}
