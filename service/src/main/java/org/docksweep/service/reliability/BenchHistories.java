package org.docksweep.service.reliability;

import java.time.Instant;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.PartLife;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.fleet.Verdict;
import org.docksweep.service.bench.BenchFiles;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.checkins.CheckIns;
import org.docksweep.service.histories.PartLives;
import org.docksweep.service.site.Site;
import org.springframework.stereotype.Component;

/**
 * Lives from the bench's own records. A failure was found by the check-in that opened the job, not on the day the part was
 * taken out. A part that was already in when its cabinet came into the records counts from then on only: its predecessors
 * that failed earlier are unknown, and to count its whole age would make parts look better than they are.
 */
@Component
class BenchHistories {
    private final PartLives partLives;
    private final BenchFiles benchFiles;
    private final CheckIns checkIns;
    private final Fleet fleet;
    private final Site site;

    BenchHistories(PartLives partLives, BenchFiles benchFiles, CheckIns checkIns, Fleet fleet, Site site) {
        this.partLives = partLives;
        this.benchFiles = benchFiles;
        this.checkIns = checkIns;
        this.fleet = fleet;
        this.site = site;
    }

    List<PartHistory> all() {
        List<PartLife> lives = partLives.all(null);
        Map<AssetTag, Instant> registeredAt = fleet.registeredAt();
        Map<JobCode, Instant> openings = benchFiles.openings();
        Map<AssetTag, Instant> lastPasses = lastPasses(lives);
        return lives.stream()
                .map(life -> new PartHistory(
                        life,
                        recordsFrom(life, registeredAt.get(life.tag())),
                        life.failed() ? openings.getOrDefault(life.jobCode(), life.endedAt()) : null,
                        life.failed() ? life.lastPassAt() : lastPasses.get(life.tag())))
                .toList();
    }

    private LocalDate recordsFrom(PartLife life, Instant registeredAt) {
        if (registeredAt == null || life.fittedOn() == null) {
            return null;
        }
        LocalDate registered = LocalDate.ofInstant(registeredAt, site.zone());
        return registered.isAfter(life.fittedOn()) ? registered : null;
    }

    private Map<AssetTag, Instant> lastPasses(List<PartLife> lives) {
        Map<AssetTag, Instant> lastPasses = new HashMap<>();
        List<AssetTag> tags = lives.stream()
                .filter(l -> l.endedAt() == null)
                .map(PartLife::tag)
                .distinct()
                .toList();
        for (CheckIns.Header header : checkIns.headers(tags)) {
            if (header.verdict() == Verdict.PASS) {
                lastPasses.merge(header.tag(), header.finishedAt(), (a, b) -> a.isAfter(b) ? a : b);
            }
        }
        return lastPasses;
    }
}
