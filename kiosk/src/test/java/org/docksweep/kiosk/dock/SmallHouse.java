package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.docksweep.contract.AssetKeys;
import org.docksweep.contract.CabinetBody;
import org.docksweep.contract.KioskSnapshot;
import org.docksweep.contract.NeedDates;
import org.docksweep.contract.ReturnList;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.CabinetStatus;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.Gs1Key;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;
import org.docksweep.gate.LimitSet;
import org.docksweep.kiosk.fleet.LocalFleet;

/** A house small enough for a test: a one-way cabinet and a bi-amped one, three cabinets due, one not due. */
public final class SmallHouse {
    static final AssetTag FIRST = new AssetTag("TST-000001");
    static final Gs1Key KEY_OF_FIRST = new Gs1Key("(8004)0614141TST1");
    static final AssetTag SECOND = new AssetTag("TST-000002");
    static final AssetTag BIAMPED = new AssetTag("TST-000003");
    static final AssetTag NOT_DUE = new AssetTag("TST-000009");
    static final AssetTag UNKNOWN = new AssetTag("TST-000777");
    static final UUID LIST = UUID.fromString("00000000-0000-0000-0000-00000000000a");

    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(20, 1), new LevelMask.Point(3000, 1)));

    private SmallHouse() {}

    static LocalFleet fleet() {
        return new LocalFleet(snapshot(), List.of());
    }

    public static KioskSnapshot snapshot() {
        ReturnList list = new ReturnList(
                LIST,
                "R-1",
                "Small Fair",
                LocalDate.parse("2026-05-02"),
                false,
                List.of(
                        new ReturnList.Line(FIRST, "ONE"),
                        new ReturnList.Line(SECOND, "ONE"),
                        new ReturnList.Line(BIAMPED, "BIA")));
        return new KioskSnapshot(
                Instant.parse("2026-05-01T20:00:00Z"),
                "Small House",
                "UTC",
                book(),
                List.of(
                        cabinet(FIRST, "ONE"),
                        cabinet(SECOND, "ONE"),
                        cabinet(BIAMPED, "BIA"),
                        cabinet(NOT_DUE, "ONE")),
                List.of(),
                List.of(),
                LimitSet.initial(),
                List.of(list),
                List.of(),
                List.of(),
                List.of(new NeedDates("ONE", List.of(LocalDate.parse("2026-05-09")))),
                null,
                List.of(new AssetKeys.Label(KEY_OF_FIRST, FIRST)));
    }

    /** The same house whose second cabinet is a powered one. */
    static LocalFleet withPowered() {
        KioskSnapshot s = snapshot();
        List<CabinetModel> models = new ArrayList<>(s.book().cabinetModels());
        models.add(powered());
        List<CabinetBody> cabinets = new ArrayList<>(s.cabinets());
        cabinets.removeIf(c -> c.tag().equals(SECOND));
        cabinets.add(cabinet(SECOND, "POW").withSafetyTestDue(LocalDate.parse("2026-05-20")));
        return new LocalFleet(
                new KioskSnapshot(
                        s.asOf(),
                        s.siteName(),
                        s.timeZone(),
                        new ModelBook(models, s.book().driverModels()),
                        cabinets,
                        s.references(),
                        s.baselines(),
                        s.limits(),
                        s.returnLists(),
                        s.checkedIn(),
                        s.recentEvents(),
                        s.needs(),
                        s.priors(),
                        s.labels()),
                List.of());
    }

    private static CabinetModel powered() {
        return new CabinetModel(
                "POW",
                "POW cabinet",
                Feed.POWERED,
                400,
                600,
                20,
                List.of(new DriverPosition("LF", Way.LF, "DRV", 200, 300, 200, 200)),
                List.of(new Enclosure("AIR", EnclosureKind.FREE_AIR, List.of("LF"), 0, 0, 0)),
                List.of(new TestPoint(
                        "LINE", TestPointKind.LINE_INPUT, "line in, pin 2 hot", List.of("LF"), 0, MASK, List.of())));
    }

    private static CabinetBody cabinet(AssetTag tag, String model) {
        return new CabinetBody(tag, model, "C-04", CabinetStatus.OUT, false, List.of());
    }

    private static ModelBook book() {
        DriverModel driver = new DriverModel(
                "DRV",
                "driver",
                DriverKind.CONE,
                8,
                6,
                0.03,
                0.7,
                List.of(new MotionalResonance(50, 5, 40)),
                null,
                List.of());
        return new ModelBook(
                List.of(model("ONE", Feed.PASSIVE, List.of("LF")), model("BIA", Feed.BIAMPED, List.of("LF", "HF"))),
                List.of(driver));
    }

    private static CabinetModel model(String code, Feed feed, List<String> points) {
        return new CabinetModel(
                code,
                code + " cabinet",
                feed,
                400,
                600,
                20,
                points.stream()
                        .map(p -> new DriverPosition(p, Way.valueOf(p), "DRV", 200, 300, 200, 200))
                        .toList(),
                List.of(new Enclosure("AIR", EnclosureKind.FREE_AIR, points, 0, 0, 0)),
                points.stream()
                        .map(p -> new TestPoint(
                                p,
                                TestPointKind.TERMINALS,
                                "pair " + p,
                                List.of(p),
                                8,
                                MASK,
                                List.of(new NetworkElement.Driver("D-" + p, "in", "0", p))))
                        .toList());
    }
}
