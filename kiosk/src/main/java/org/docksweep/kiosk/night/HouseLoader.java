package org.docksweep.kiosk.night;

import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.docksweep.contract.ApiPaths;
import org.docksweep.contract.CommissioningBody;
import org.docksweep.contract.DemoHouse;
import org.docksweep.contract.DemoHouseProvider;
import org.docksweep.contract.Dispatch;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.OrderedId;
import org.docksweep.contract.ReturnList;
import org.docksweep.contract.StockMoveBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.DriverBenchData;
import org.docksweep.fleet.Part;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.kiosk.service.ServiceClient;
import org.docksweep.kiosk.service.ServiceProblem;
import org.docksweep.kiosk.service.ServiceUnreachable;
import org.docksweep.suspect.Priors;

/** Brings the invented house to the service, or straight into a kiosk when there is no service. */
final class HouseLoader {
    private HouseLoader() {}

    static DemoHouse house(long seed) {
        return ServiceLoader.load(DemoHouseProvider.class)
                .findFirst()
                .orElseThrow(() -> new IllegalStateException(
                        "no demo house is on the class path; run the night from the kiosk module"))
                .house(seed);
    }

    /**
     * Brings everything to the service.
     *
     * @return what the service answers to a kiosk then
     */
    static KioskSnapshot loaded(DemoHouse house, BeforeTheHire.Known known, ServiceClient client, NightReport report)
            throws ServiceProblem, ServiceUnreachable {
        load(house, known.cabinets(), client);
        loadDriverReferences(known.drivers(), client);
        report.say(
                "The bench knows %d driver models bare, each from %d known-good drivers",
                known.drivers().size(), BenchLessons.DRIVERS);
        KioskSnapshot snapshot = client.get(ApiPaths.KIOSK_SNAPSHOT, KioskSnapshot.class);
        report.say(
                "House loaded: %d cabinets, %d due back",
                snapshot.cabinets().size(), house.returnList().lines().size());
        return snapshot;
    }

    private static void load(DemoHouse house, Commissioning.Result commissioning, ServiceClient client)
            throws ServiceProblem, ServiceUnreachable {
        client.put(ApiPaths.MODEL_BOOK, house.book());
        for (var cabinet : house.cabinets()) {
            client.put(ApiPaths.CABINETS + "/" + cabinet.tag(), cabinet);
        }
        Map<AssetTag, List<HistoryEvent>> events = house.pastEvents().stream()
                .collect(Collectors.groupingBy(HistoryEvent::tag, TreeMap::new, Collectors.toList()));
        for (Map.Entry<AssetTag, List<HistoryEvent>> ofCabinet : events.entrySet()) {
            client.post(ApiPaths.CABINETS + "/" + ofCabinet.getKey() + ApiPaths.HISTORY, ofCabinet.getValue());
        }
        for (Dispatch dispatch : house.dispatches()) {
            client.put(ApiPaths.DISPATCHES + "/" + dispatch.id(), dispatch);
        }
        loadBench(house.bench(), client);
        client.put(ApiPaths.RETURN_LISTS + "/" + house.returnList().id(), house.returnList());
        for (PointReference reference : commissioning.references()) {
            client.put(
                    ApiPaths.REFERENCES + "/" + reference.cabinetModelCode() + "/" + reference.testPointCode(),
                    reference);
        }
        for (CommissioningBody body : commissionings(house, commissioning)) {
            client.put(ApiPaths.COMMISSIONINGS + "/" + body.id(), body);
        }
    }

    /** References of bare drivers go under the code of their driver model. */
    private static void loadDriverReferences(List<PointReference> references, ServiceClient client)
            throws ServiceProblem, ServiceUnreachable {
        for (PointReference reference : references) {
            String driverModel = BareDriver.driverModelCode(reference.cabinetModelCode());
            client.put(ApiPaths.DRIVER_REFERENCES + "/" + driverModel, reference);
        }
    }

    private static void loadBench(DemoHouse.Bench bench, ServiceClient client)
            throws ServiceProblem, ServiceUnreachable {
        for (DriverBenchData data : bench.benchData()) {
            client.put(ApiPaths.DRIVER_BENCH_DATA + "/" + data.driverModelCode(), data);
        }
        for (Part part : bench.parts()) {
            client.put(ApiPaths.PARTS + "/" + part.number(), part);
        }
        for (StockMoveBody move : bench.stock()) {
            client.put(ApiPaths.STOCK_MOVES + "/" + move.id(), move);
        }
    }

    private static List<CommissioningBody> commissionings(DemoHouse house, Commissioning.Result result) {
        Map<AssetTag, List<Baseline>> byCabinet = result.baselines().stream()
                .collect(Collectors.groupingBy(Baseline::tag, TreeMap::new, Collectors.toList()));
        List<CommissioningBody> bodies = new ArrayList<>();
        byCabinet.forEach((tag, baselines) -> bodies.add(new CommissioningBody(
                OrderedId.next(),
                tag,
                baselines.get(0).takenAt().truncatedTo(ChronoUnit.MICROS),
                house.dockHand(),
                baselines)));
        return bodies;
    }

    /** What the service would answer to a kiosk, made here for a night without a service. */
    static KioskSnapshot snapshot(DemoHouse house, Commissioning.Result commissioning, Instant asOf) {
        List<AssetTag> due =
                house.returnList().lines().stream().map(ReturnList.Line::tag).toList();
        List<HistoryEvent> recent = house.pastEvents().stream()
                .filter(e -> due.contains(e.tag()))
                .sorted(Comparator.comparing(HistoryEvent::at).reversed())
                .toList();
        return new KioskSnapshot(
                asOf,
                house.siteName(),
                house.timeZone(),
                house.book(),
                house.cabinets(),
                commissioning.references(),
                commissioning.baselines(),
                LimitSet.initial(),
                List.of(house.returnList()),
                List.of(),
                recent,
                List.of(),
                Priors.USUAL,
                List.of());
    }
}
