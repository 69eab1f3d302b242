package org.docksweep.service.sheets;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import org.docksweep.contract.FleetStatus;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.ReturnReport;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.service.bench.Bench;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.dispatches.Availability;
import org.docksweep.service.dispatches.Dispatches;
import org.docksweep.service.models.Models;
import org.docksweep.service.returns.Returns;
import org.docksweep.service.site.Site;
import org.docksweep.service.trends.Trends;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Puts the fleet status together, and keeps sheets to some models. */
@Service
@Transactional(readOnly = true)
class Sheets {
    private static final Duration FAULT_PERIOD = Duration.ofDays(30);

    private final Site site;
    private final Models models;
    private final Fleet fleet;
    private final Dispatches dispatches;
    private final Bench bench;
    private final CheckIns checkIns;
    private final Trends trends;
    private final Returns returns;

    Sheets(
            Site site,
            Models models,
            Fleet fleet,
            Dispatches dispatches,
            Bench bench,
            CheckIns checkIns,
            Trends trends,
            Returns returns) {
        this.site = site;
        this.models = models;
        this.fleet = fleet;
        this.dispatches = dispatches;
        this.bench = bench;
        this.checkIns = checkIns;
        this.trends = trends;
        this.returns = returns;
    }

    FleetStatus fleetStatus() {
        Map<String, Map<CabinetStatus, Integer>> counts = fleet.counts();
        List<FleetStatus.ModelRow> rows = new ArrayList<>();
        for (CabinetModel model : models.book().cabinetModels()) {
            rows.add(row(model, counts.getOrDefault(model.code(), Map.of())));
        }
        Availability availability = dispatches.availability();
        return new FleetStatus(
                site.siteName(),
                fleet.now(),
                rows,
                availability.bookings(),
                bench.queue(availability),
                checkIns.faults(FAULT_PERIOD),
                trends.watchList());
    }

    /**
     * The same of some cabinet models only; driver models are those that belong into them.
     *
     * @param wanted codes, or null for all
     */
    FleetStatus fleetStatus(Collection<String> wanted) {
        FleetStatus all = fleetStatus();
        if (wanted == null || wanted.isEmpty()) {
            return all;
        }
        Set<String> drivers = models.driversOf(wanted, "model");
        return new FleetStatus(
                all.siteName(),
                all.asOf(),
                only(all.models(), row -> wanted.contains(row.modelCode())),
                only(all.bookings(), row -> wanted.contains(row.modelCode())),
                only(all.benchQueue(), row -> wanted.contains(row.modelCode())),
                only(all.faults(), row -> drivers.contains(row.driverModelCode())),
                only(all.drifting(), row -> wanted.contains(row.modelCode())));
    }

    /**
     * How a list came back, cabinets of some models only.
     *
     * @param wanted codes, or null for all
     */
    ReturnReport returns(UUID list, Collection<String> wanted) {
        ReturnReport all = returns.report(list);
        if (wanted == null || wanted.isEmpty()) {
            return all;
        }
        models.driversOf(wanted, "model");
        ReturnList of = all.list();
        return new ReturnReport(
                new ReturnList(
                        of.id(),
                        of.orderNumber(),
                        of.customer(),
                        of.dueOn(),
                        of.closed(),
                        only(of.lines(), line -> wanted.contains(line.modelCode()))),
                all.asOf(),
                only(all.back(), row -> wanted.contains(row.modelCode())),
                only(all.missing(), line -> wanted.contains(line.modelCode())),
                only(all.unexpected(), row -> wanted.contains(row.modelCode())));
    }

    private static <T> List<T> only(List<T> rows, Predicate<T> wanted) {
        return rows.stream().filter(wanted).toList();
    }

    private static FleetStatus.ModelRow row(CabinetModel model, Map<CabinetStatus, Integer> counts) {
        return new FleetStatus.ModelRow(
                model.code(),
                model.name(),
                counts.getOrDefault(CabinetStatus.READY, 0),
                counts.getOrDefault(CabinetStatus.OUT, 0),
                counts.getOrDefault(CabinetStatus.BENCH, 0),
                counts.getOrDefault(CabinetStatus.SAFETY_HOLD, 0),
                counts.getOrDefault(CabinetStatus.MANUAL_HOLD, 0),
                counts.getOrDefault(CabinetStatus.MISSING, 0));
    }
}
