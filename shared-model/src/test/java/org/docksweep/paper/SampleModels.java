package org.docksweep.paper;

import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Way;

/** Invented models for paper tests: one of each shape that the drawing must cope with. */
final class SampleModels {
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(20, 2), new LevelMask.Point(20_000, 1)));

    static final DriverModel CONE_12 = new DriverModel(
            "DUNE-12",
            "12-inch cone driver",
            DriverKind.CONE,
            8,
            5.6,
            0.02,
            0.7,
            List.of(new MotionalResonance(55, 6, 90)),
            "red dot beside the terminal",
            List.of("RK-DUNE-12"));
    static final DriverModel HORN = new DriverModel(
            "SPRAY-1",
            "1-inch compression driver",
            DriverKind.COMPRESSION,
            8,
            6.1,
            0.01,
            0.6,
            List.of(new MotionalResonance(700, 2, 14)),
            null,
            List.of("DP-SPRAY-1"));

    static final CabinetModel TIDE_12 = new CabinetModel(
            "TIDE-12",
            "two-way 12-inch cabinet",
            Feed.PASSIVE,
            360,
            600,
            22,
            List.of(
                    new DriverPosition("LF", Way.LF, "DUNE-12", 180, 400, 290, 290),
                    new DriverPosition("HF", Way.HF, "SPRAY-1", 180, 135, 280, 170)),
            List.of(
                    new Enclosure("box", EnclosureKind.VENTED, List.of("LF"), 1.4, 52, 7),
                    new Enclosure("horn", EnclosureKind.HORN, List.of("HF"), 0, 0, 0)),
            List.of(point("IN", TestPointKind.TERMINALS, "LF", "HF")));

    static final CabinetModel BREAKER_215 = new CabinetModel(
            "BREAKER-215",
            "double 15-inch sub",
            Feed.PASSIVE,
            1080,
            580,
            64,
            List.of(
                    new DriverPosition("LF1", Way.LF, "DUNE-12", 290, 290, 380, 380),
                    new DriverPosition("LF2", Way.LF, "DUNE-12", 790, 290, 380, 380)),
            List.of(new Enclosure("box", EnclosureKind.VENTED, List.of("LF1", "LF2"), 1.1, 38, 7)),
            List.of(point("IN", TestPointKind.TERMINALS, "LF1", "LF2")));

    static final CabinetModel SKIFF_P = new CabinetModel(
            "SKIFF-P",
            "powered two-way cabinet",
            Feed.POWERED,
            360,
            600,
            31,
            List.of(
                    new DriverPosition("LF", Way.LF, "DUNE-12", 180, 400, 290, 290),
                    new DriverPosition("HF", Way.HF, "SPRAY-1", 180, 135, 280, 170)),
            List.of(
                    new Enclosure("box", EnclosureKind.VENTED, List.of("LF"), 1.4, 52, 7),
                    new Enclosure("horn", EnclosureKind.HORN, List.of("HF"), 0, 0, 0)),
            List.of(new TestPoint(
                    "LINE", TestPointKind.LINE_INPUT, "line in", List.of("LF", "HF"), 0, MASK, List.of())));

    static final ModelBook BOOK = new ModelBook(List.of(TIDE_12, BREAKER_215, SKIFF_P), List.of(CONE_12, HORN));

    private SampleModels() {}

    private static TestPoint point(String code, TestPointKind kind, String... positions) {
        List<NetworkElement> elements = new java.util.ArrayList<>();
        for (String position : positions) {
            elements.add(new NetworkElement.Driver("D" + position, "in", "0", position));
        }
        return new TestPoint(code, kind, "1+ / 1-", List.of(positions), 8, MASK, elements);
    }
}
