package org.docksweep.kiosk.screens;

import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;

/** Invented models of every kind the window must draw. */
final class SampleHouse {
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(20, 1), new LevelMask.Point(20_000, 1)));

    static final CabinetModel TWO_WAY = model(
            "SPIN12",
            "Spindrift 12",
            Feed.PASSIVE,
            380,
            620,
            21,
            List.of(horn("HF", 190, 150, 300, 170), cone("LF", Way.LF, 190, 430, 280)),
            List.of(point("IN", "1+ / 1-", 8, "LF", "HF")));
    static final CabinetModel BIAMPED = model(
            "DUNE15B",
            "Dune Ridge 15 bi-amped",
            Feed.BIAMPED,
            460,
            760,
            36,
            List.of(horn("HF", 230, 180, 380, 240), cone("LF", Way.LF, 230, 530, 360)),
            List.of(point("LF", "1+ / 1-", 8, "LF"), point("HF", "2+ / 2-", 8, "HF")));
    static final CabinetModel SUB = model(
            "UNDR215",
            "Undertow 215",
            Feed.PASSIVE,
            1060,
            600,
            68,
            List.of(cone("LF1", Way.LF, 290, 300, 370), cone("LF2", Way.LF, 770, 300, 370)),
            List.of(point("IN", "1+ / 1-", 4, "LF1", "LF2")));
    static final CabinetModel WEDGE = model(
            "PEBL8",
            "Pebble 8",
            Feed.PASSIVE,
            420,
            290,
            9,
            List.of(cone("LF", Way.LF, 140, 150, 190), cone("HF", Way.HF, 320, 150, 150)),
            List.of(point("IN", "1+ / 1-", 8, "LF", "HF")));
    static final CabinetModel THREE_WAY = model(
            "HEAD3",
            "Headland 3",
            Feed.PASSIVE,
            520,
            1050,
            58,
            List.of(
                    horn("HF", 260, 150, 360, 200),
                    cone("MF", Way.MF, 260, 400, 240),
                    cone("LF", Way.LF, 260, 770, 370)),
            List.of(point("IN", "1+ / 1-", 8, "LF", "MF", "HF")));
    static final CabinetModel POWERED = model(
            "SALT12A",
            "Saltpan 12 A",
            Feed.POWERED,
            380,
            640,
            24,
            List.of(horn("HF", 190, 150, 300, 170), cone("LF", Way.LF, 190, 440, 280)),
            List.of(new TestPoint(
                    "LINE", TestPointKind.LINE_INPUT, "line in, pin 2 hot", List.of("LF", "HF"), 0, MASK, List.of())));

    static final List<CabinetModel> MODELS = List.of(TWO_WAY, BIAMPED, SUB, WEDGE, THREE_WAY, POWERED);

    private SampleHouse() {}

    private static CabinetModel model(
            String code,
            String name,
            Feed feed,
            double widthMm,
            double heightMm,
            double massKg,
            List<DriverPosition> positions,
            List<TestPoint> points) {
        List<String> codes = positions.stream().map(DriverPosition::code).toList();
        Enclosure box = new Enclosure("box", EnclosureKind.FREE_AIR, codes, 0, 0, 0);
        return new CabinetModel(code, name, feed, widthMm, heightMm, massKg, positions, List.of(box), points);
    }

    private static DriverPosition horn(String code, double x, double y, double w, double h) {
        return new DriverPosition(code, Way.HF, "TERN-44", x, y, w, h);
    }

    private static DriverPosition cone(String code, Way way, double x, double y, double d) {
        return new DriverPosition(code, way, "MARRAM-8", x, y, d, d);
    }

    private static TestPoint point(String code, String contacts, double ohm, String... positions) {
        return new TestPoint(
                code,
                TestPointKind.TERMINALS,
                contacts,
                List.of(positions),
                ohm,
                MASK,
                List.of(new NetworkElement.Driver("D", "in", "0", positions[0])));
    }
}
