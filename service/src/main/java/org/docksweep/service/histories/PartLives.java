package org.docksweep.service.histories;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.Timeline;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.bench.BenchFiles;
import org.docksweep.service.bench.Findings;
import org.docksweep.service.cabinets.Fittings;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.parts.Catalogue;
import org.docksweep.service.site.Site;
import org.docksweep.service.web.Times;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Lives of moving parts, as reliability is counted from them. */
@Service
@Transactional(readOnly = true)
public class PartLives {
    private final Fittings fittings;
    private final Findings findings;
    private final BenchFiles benchFiles;
    private final CheckIns checkIns;
    private final Catalogue catalogue;
    private final Site site;
    private final Times times;

    PartLives(
            Fittings fittings,
            Findings findings,
            BenchFiles benchFiles,
            CheckIns checkIns,
            Catalogue catalogue,
            Site site,
            Times times) {
        this.fittings = fittings;
        this.findings = findings;
        this.benchFiles = benchFiles;
        this.checkIns = checkIns;
        this.catalogue = catalogue;
        this.site = site;
        this.times = times;
    }

    /**
     * Lives of all moving parts ever fitted.
     *
     * @param driverModelCode driver model, or null for all
     * @return one life per part, oldest first; a driver that moved with its part keeps one life
     */
    public List<PartLife> all(String driverModelCode) {
        Map<UUID, Timeline.Stay> stays = fittings.staysOfModel(driverModelCode);
        Map<Object, List<UUID>> lives = new LinkedHashMap<>();
        stays.forEach((id, stay) ->
                lives.computeIfAbsent(key(id, stay), k -> new ArrayList<>()).add(id));
        Map<AssetTag, List<CheckIns.Header>> byTag =
                checkIns.headers(stays.values().stream().map(Timeline.Stay::tag).toList()).stream()
                        .collect(Collectors.groupingBy(CheckIns.Header::tag));
        Map<JobCode, List<Findings.Confirmed>> confirmed = findings.all().stream()
                .filter(f -> f.jobCode() != null)
                .collect(Collectors.groupingBy(Findings.Confirmed::jobCode));
        Map<JobCode, Instant> openings = benchFiles.openings();
        Map<String, Integer> costs = catalogue.unitCostsCents();
        return lives.values().stream()
                .map(ids -> life(ids, stays, byTag, confirmed, openings, costs))
                .toList();
    }

    /** Serials make two stays one life; without them nobody can know. */
    private static Object key(UUID id, Timeline.Stay stay) {
        return stay.driverSerial() == null || stay.diaphragmSerial() == null
                ? id
                : List.of(stay.driverModelCode(), stay.driverSerial(), stay.diaphragmSerial());
    }

    private PartLife life(
            List<UUID> ids,
            Map<UUID, Timeline.Stay> stays,
            Map<AssetTag, List<CheckIns.Header>> byTag,
            Map<JobCode, List<Findings.Confirmed>> confirmed,
            Map<JobCode, Instant> openings,
            Map<String, Integer> costs) {
        Timeline.Stay first = stays.get(ids.get(0));
        Timeline.Stay last = ids.stream()
                .map(stays::get)
                .max(Comparator.comparing(Timeline.Stay::removedAt, Comparator.nullsLast(Comparator.naturalOrder())))
                .orElseThrow();
        Optional<Findings.Confirmed> finding = last.removedByJob() == null
                ? Optional.empty()
                : confirmed.getOrDefault(last.removedByJob(), List.of()).stream()
                        .filter(f -> last.positionCode().equals(f.positionCode()))
                        .reduce((a, b) -> b);
        Instant failedFrom = last.removedByJob() == null ? null : openings.get(last.removedByJob());
        return new PartLife(
                ids.get(0),
                last.tag(),
                last.positionCode(),
                last.driverModelCode(),
                last.driverSerial(),
                last.partNumber(),
                last.diaphragmSerial(),
                last.diaphragmSource(),
                first.installedOn(),
                last.removedAt(),
                finding.map(f -> f.cause().endsMovingPart()).orElse(false),
                finding.map(Findings.Confirmed::cause).orElse(null),
                finding.map(Findings.Confirmed::charge).orElse(null),
                last.removedByJob(),
                lastPass(byTag.getOrDefault(last.tag(), List.of()), failedFrom),
                returns(ids, stays, byTag),
                last.partNumber() == null ? null : costs.get(last.partNumber()));
    }

    private static Instant lastPass(List<CheckIns.Header> newestFirst, Instant before) {
        return before == null
                ? null
                : newestFirst.stream()
                        .filter(h ->
                                h.verdict() == Verdict.PASS && h.finishedAt().isBefore(before))
                        .map(CheckIns.Header::finishedAt)
                        .findFirst()
                        .orElse(null);
    }

    private int returns(List<UUID> ids, Map<UUID, Timeline.Stay> stays, Map<AssetTag, List<CheckIns.Header>> byTag) {
        int count = 0;
        for (UUID id : ids) {
            Timeline.Stay stay = stays.get(id);
            // Midnight of the day it was fitted is near enough for a count of returns.
            Window window = Window.of(stay, List.of(), site.zone(), times.now());
            count += (int) byTag.getOrDefault(stay.tag(), List.of()).stream()
                    .filter(h -> window.covers(h.finishedAt()))
                    .count();
        }
        return count;
    }
}
