package org.docksweep.kiosk.practice;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;

/** A short truck of the invented house: of everything that can happen at the dock one cabinet, and a few healthy ones. */
final class PracticeHouse {
    private static final int HEALTHY = 3;

    private PracticeHouse() {}

    static DemoHouse of(DemoHouse house) {
        List<DemoHouse.Arrival> arrivals = new ArrayList<>();
        Set<DemoHouse.Kind> had = EnumSet.noneOf(DemoHouse.Kind.class);
        int healthy = 0;
        for (DemoHouse.Arrival arrival : house.arrivals()) {
            boolean wanted = arrival.truth().kind() == DemoHouse.Kind.HEALTHY
                    ? healthy++ < HEALTHY
                    : had.add(arrival.truth().kind());
            if (wanted) {
                arrivals.add(arrival);
            }
        }
        // Whoever begins sees first how it goes when nothing is wrong.
        arrivals.sort(Comparator.comparing(a -> a.truth().kind() != DemoHouse.Kind.HEALTHY));
        Set<AssetTag> labels = arrivals.stream().map(DemoHouse.Arrival::label).collect(Collectors.toSet());
        ReturnList whole = house.returnList();
        List<ReturnList.Line> lines = whole.lines().stream()
                .filter(line -> labels.contains(line.tag()))
                .toList();
        return new DemoHouse(
                house.siteName(),
                house.timeZone(),
                house.ambientCelsius(),
                house.book(),
                house.cabinets(),
                house.pastEvents(),
                new ReturnList(whole.id(), whole.orderNumber(), whole.customer(), whole.dueOn(), false, lines),
                house.dispatches(),
                referenceUnits(house, models(house, labels)),
                house.dockHand(),
                arrivals,
                house.bench());
    }

    private static Set<String> models(DemoHouse house, Set<AssetTag> labels) {
        return house.cabinets().stream()
                .filter(c -> labels.contains(c.tag()))
                .map(c -> c.modelCode())
                .collect(Collectors.toSet());
    }

    /** Only what comes off the truck has to be known. */
    private static List<AssetTag> referenceUnits(DemoHouse house, Set<String> models) {
        Set<AssetTag> ofModels = house.cabinets().stream()
                .filter(c -> models.contains(c.modelCode()))
                .map(c -> c.tag())
                .collect(Collectors.toSet());
        return house.referenceUnits().stream().filter(ofModels::contains).toList();
    }
}
