package org.docksweep.service.learning;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.PartLife;
import org.docksweep.contract.PastPartLife;
import org.docksweep.fleet.AssetTag;
import org.docksweep.service.cabinets.Fleet;
import org.docksweep.service.reliability.PastLives;
import org.springframework.stereotype.Component;

/** Gathers confirmed causes from wherever they are on record. */
@Component
class Repairs {
    private final PastLives pastLives;
    private final Fleet fleet;

    Repairs(PastLives pastLives, Fleet fleet) {
        this.pastLives = pastLives;
        this.fleet = fleet;
    }

    List<Repair> all() {
        return new ArrayList<>(past());
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
