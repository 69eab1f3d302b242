package org.docksweep.service.histories;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Stream;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.ProofSweepBody;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.service.bench.BenchFiles;
import org.docksweep.service.bench.UnitEvents;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.models.Models;
import org.docksweep.service.site.Site;
import org.docksweep.service.web.Refusal;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Timelines of cabinets, positions, driver units and diaphragms. */
@Service
@Transactional(readOnly = true)
class Timelines {
    private static final int MOST_EVENTS = 1000;
    private static final int MOST_SWEPT_CHECK_INS = 40;

    private final Fittings fittings;
    private final UnitEvents unitEvents;
    private final BenchFiles benchFiles;
    private final CheckIns checkIns;
    private final LastOrders lastOrders;
    private final Models models;
    private final Site site;
    private final Times times;

    Timelines(
            Fittings fittings,
            UnitEvents unitEvents,
            BenchFiles benchFiles,
            CheckIns checkIns,
            LastOrders lastOrders,
            Models models,
            Site site,
            Times times) {
        this.fittings = fittings;
        this.unitEvents = unitEvents;
        this.benchFiles = benchFiles;
        this.checkIns = checkIns;
        this.lastOrders = lastOrders;
        this.models = models;
        this.site = site;
        this.times = times;
    }

    Timeline ofCabinet(AssetTag tag, String positionCode) {
        CabinetBody cabinet = fittings.cabinet(tag);
        requirePosition(cabinet, positionCode);
        Instant now = times.now();
        List<HistoryEvent> events = fittings.events(tag, MOST_EVENTS);
        return new Timeline(
                new Timeline.Subject(tag, positionCode, null, null, null),
                now,
                fittings.staysIn(tag).stream()
                        .filter(s -> positionCode == null || positionCode.equals(s.positionCode()))
                        .toList(),
                events.stream()
                        .filter(e -> positionCode == null
                                || e.positionCode() == null
                                || positionCode.equals(e.positionCode()))
                        .map(Timelines::entry)
                        .toList(),
                trend(tag)
                        .filter(p -> positionCode == null
                                || positionCode.equals(p.reading().positionCode()))
                        .toList(),
                lastOrders.of(tag, events, now));
    }

    private void requirePosition(CabinetBody cabinet, String positionCode) {
        List<String> known = models.cabinetModel(cabinet.modelCode(), "tag").positions().stream()
                .map(DriverPosition::code)
                .toList();
        if (positionCode != null && !known.contains(positionCode)) {
            throw Refusal.badField(
                    "position",
                    "model " + cabinet.modelCode() + " has positions " + known + ", but this is another one",
                    "Name a position of the cabinet.");
        }
    }

    private static Timeline.Entry entry(HistoryEvent event) {
        return new Timeline.Entry(
                event.at(), event.tag(), event.positionCode(), event.kind(), event.by(), event.text());
    }

    /** Readings of the last check-ins and of all proofs, newest first. */
    private Stream<Timeline.TrendPoint> trend(AssetTag tag) {
        Stream<Timeline.TrendPoint> atDock = checkIns.headers(List.of(tag)).stream()
                .filter(h -> h.verdict() != null)
                .limit(MOST_SWEPT_CHECK_INS)
                .flatMap(h -> checkIns.find(h.id()).measurements().stream().flatMap(m -> points(m, h.id())));
        Stream<Timeline.TrendPoint> atBench = benchFiles.proofsOf(tag).stream()
                .filter(s -> s.subject() == ProofSweepBody.Subject.CABINET)
                .flatMap(s -> s.measurements().stream().flatMap(m -> points(m, null)));
        return Stream.concat(atDock, atBench)
                .sorted(Comparator.comparing(Timeline.TrendPoint::at).reversed());
    }

    private static Stream<Timeline.TrendPoint> points(MeasurementBody measurement, UUID checkInId) {
        return measurement.judgement().readings().stream()
                .map(r -> new Timeline.TrendPoint(measurement.takenAt(), checkInId, r));
    }

    Timeline ofDriver(String driverModelCode, String driverSerial) {
        models.driverModel(driverModelCode, "driverModel");
        List<Timeline.Stay> stays = fittings.staysOfDriver(driverModelCode, driverSerial);
        List<Timeline.Entry> outside = unitEvents.of(driverModelCode, driverSerial);
        if (stays.isEmpty() && outside.isEmpty()) {
            throw Refusal.notFound(
                    "driverSerial",
                    "no driver " + driverModelCode + " with this serial is on record",
                    "Read the serial again, or look at the position it sits in.");
        }
        Timeline.Subject subject = new Timeline.Subject(null, null, driverModelCode, driverSerial, null);
        return ofStays(subject, stays, outside);
    }

    Timeline ofDiaphragm(String driverModelCode, String diaphragmSerial) {
        models.driverModel(driverModelCode, "driverModel");
        List<Timeline.Stay> stays =
                new ArrayList<>(fittings.staysOfDiaphragm(List.of(driverModelCode), diaphragmSerial));
        Collections.reverse(stays);
        if (stays.isEmpty()) {
            throw Refusal.notFound(
                    "diaphragmSerial",
                    "no diaphragm with this serial was ever fitted in a " + driverModelCode,
                    "Read the serial again.");
        }
        Timeline.Subject subject = new Timeline.Subject(null, null, driverModelCode, null, diaphragmSerial);
        return ofStays(subject, stays, List.of());
    }

    private Timeline ofStays(Timeline.Subject subject, List<Timeline.Stay> stays, List<Timeline.Entry> outside) {
        Instant now = times.now();
        Set<Timeline.Entry> entries = new LinkedHashSet<>(outside);
        Set<Timeline.TrendPoint> trend = new LinkedHashSet<>();
        Timeline.LastOrder lastOrder = null;
        for (Timeline.Stay stay : stays) {
            Window window = Window.of(stay, fittings.staysIn(stay.tag()), site.zone(), now);
            List<HistoryEvent> events = fittings.events(stay.tag(), MOST_EVENTS);
            events.stream()
                    .filter(e -> window.covers(e.at()) && window.concerns(e.positionCode()))
                    .forEach(e -> entries.add(entry(e)));
            trend(stay.tag())
                    .filter(p -> window.covers(p.at())
                            && stay.positionCode().equals(p.reading().positionCode()))
                    .forEach(trend::add);
            if (lastOrder == null) {
                Timeline.LastOrder order = lastOrders.of(stay.tag(), events, window.to());
                lastOrder = order != null && window.covers(order.at()) ? order : null;
            }
        }
        return new Timeline(
                subject,
                now,
                stays,
                entries.stream()
                        .sorted(Comparator.comparing(Timeline.Entry::at).reversed())
                        .toList(),
                trend.stream()
                        .sorted(Comparator.comparing(Timeline.TrendPoint::at).reversed())
                        .toList(),
                lastOrder);
    }
}
