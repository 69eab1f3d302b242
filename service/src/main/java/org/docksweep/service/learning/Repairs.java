package org.docksweep.service.learning;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.PastPartLife;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.JobCode;
import org.docksweep.service.bench.Findings;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.reliability.PastLives;
import org.docksweep.suspect.Suspect;
import org.springframework.stereotype.Component;

/** Gathers confirmed causes from wherever they are on record. */
@Component
class Repairs {
    private final Findings findings;
    private final PastLives pastLives;
    private final Fleet fleet;

    Repairs(Findings findings, PastLives pastLives, Fleet fleet) {
        this.findings = findings;
        this.pastLives = pastLives;
        this.fleet = fleet;
    }

    List<Repair> all() {
        List<Repair> all = new ArrayList<>(past());
        all.addAll(ofTheBench());
        return all;
    }

    /** How many there may be: changes whenever anything was added, and nothing is ever changed. */
    long count() {
        return findings.count() + pastLives.count();
    }

    private record Place(JobCode jobCode, String positionCode, String elementId) {}

    private List<Repair> ofTheBench() {
        // A later finding about the same place of a job takes the place of an earlier one.
        Map<Place, Findings.Confirmed> newest = new LinkedHashMap<>();
        for (Findings.Confirmed found : findings.all()) {
            if (found.jobCode() != null) {
                newest.put(new Place(found.jobCode(), found.positionCode(), found.elementId()), found);
            }
        }
        Map<JobCode, List<Suspect>> suspects =
                findings.suspects(newest.keySet().stream().map(Place::jobCode).toList());
        return newest.values().stream()
                .map(f -> new Repair(
                        f.id(),
                        f.at(),
                        f.cabinetModelCode(),
                        f.positionCode(),
                        f.driverModelCode(),
                        f.elementId(),
                        f.cause(),
                        f.coilOpen(),
                        true,
                        suspects.getOrDefault(f.jobCode(), List.of())))
                .toList();
    }

    private List<Repair> past() {
        List<PartLife> ended = pastLives.all().stream()
                .map(PastPartLife::life)
                .filter(l -> l.failed() && l.cause() != null)
                .toList();
        Map<AssetTag, Fleet.Known> cabinets =
                fleet.known(ended.stream().map(PartLife::tag).toList());
        return ended.stream()
                .map(l -> new Repair(
                        l.id(),
                        l.endedAt(),
                        cabinets.get(l.tag()).modelCode(),
                        l.positionCode(),
                        l.driverModelCode(),
                        null,
                        l.cause(),
                        false,
                        false,
                        List.of()))
                .toList();
    }
}
