package org.docksweep.circuit;

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

/** Small cabinets for tests of circuit, gate, suspects and judge. */
public final class SampleCabinets {
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(10, 2), new LevelMask.Point(20000, 2)));

    private SampleCabinets() {}

    /** The reference driver of the published check values: Re 6, fs 40, Qms 4, Qes 0.5, no inductance. */
    public static DriverModel referenceDriver(double lossyInductanceK) {
        return new DriverModel(
                "REF-1",
                "reference driver",
                DriverKind.CONE,
                8,
                6,
                lossyInductanceK,
                0.7,
                List.of(new MotionalResonance(40, 4, 48)),
                null,
                List.of());
    }

    public static ModelBook oneDriver(DriverModel driver, Enclosure box) {
        CabinetModel cabinet = new CabinetModel(
                "ONE",
                "one driver",
                Feed.PASSIVE,
                500,
                700,
                20,
                List.of(new DriverPosition("LF1", Way.LF, driver.code(), 250, 400, 380, 380)),
                List.of(box),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        List.of("LF1"),
                        8,
                        MASK,
                        List.of(new NetworkElement.Driver("W1", "in", "0", "LF1")))));
        return new ModelBook(List.of(cabinet), List.of(driver));
    }

    /** Two-way vented cabinet, second-order crossover at about 1.8 kHz with a pad. */
    public static ModelBook twoWay() {
        DriverModel woofer = new DriverModel(
                "LOW-12",
                "twelve-inch cone driver",
                DriverKind.CONE,
                8,
                5.6,
                0.03,
                0.68,
                List.of(new MotionalResonance(48, 6, 5.6 * 6 / 0.38)),
                null,
                List.of());
        DriverModel horn = new DriverModel(
                "HIGH-1",
                "one-inch compression driver",
                DriverKind.COMPRESSION,
                8,
                6.2,
                0.002,
                0.75,
                List.of(
                        new MotionalResonance(620, 2.2, 14),
                        new MotionalResonance(1350, 3.5, 6),
                        new MotionalResonance(2600, 4, 3)),
                null,
                List.of());
        CabinetModel cabinet = new CabinetModel(
                "TWO",
                "two-way",
                Feed.PASSIVE,
                400,
                650,
                24,
                List.of(
                        new DriverPosition("HF1", Way.HF, "HIGH-1", 200, 150, 300, 150),
                        new DriverPosition("LF1", Way.LF, "LOW-12", 200, 430, 300, 300)),
                List.of(
                        new Enclosure("BOX", EnclosureKind.VENTED, List.of("LF1"), 1.8, 52, 7),
                        new Enclosure("HORN", EnclosureKind.HORN, List.of("HF1"), 0, 0, 0)),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        List.of("HF1", "LF1"),
                        8,
                        MASK,
                        List.of(
                                new NetworkElement.Inductor("L1", "in", "low", 1.0e-3, 0.25, 0.03),
                                new NetworkElement.Capacitor("C1", "low", "0", 8.2e-6, 0.1, 0.05),
                                new NetworkElement.Driver("W1", "low", "0", "LF1"),
                                new NetworkElement.Capacitor("C2", "in", "high", 6.8e-6, 0.05, 0.05),
                                new NetworkElement.Inductor("L2", "high", "0", 0.9e-3, 0.35, 0.03),
                                new NetworkElement.Resistor("R1", "high", "horn", 3.9, 0.03),
                                new NetworkElement.Resistor("R2", "horn", "0", 8.2, 0.03),
                                new NetworkElement.Driver("T1", "horn", "0", "HF1")))));
        return new ModelBook(List.of(cabinet), List.of(woofer, horn));
    }

    /** Two fifteen-inch drivers in parallel in one vented box. */
    public static ModelBook doubleFifteen() {
        return doubleFifteen(
                new NetworkElement.Driver("W1", "in", "0", "LF1"), new NetworkElement.Driver("W2", "in", "0", "LF2"));
    }

    /** The same, one behind the other. */
    public static ModelBook doubleFifteenInSeries() {
        return doubleFifteen(
                new NetworkElement.Driver("W1", "in", "mid", "LF1"),
                new NetworkElement.Driver("W2", "mid", "0", "LF2"));
    }

    private static ModelBook doubleFifteen(NetworkElement.Driver first, NetworkElement.Driver second) {
        DriverModel woofer = new DriverModel(
                "LOW-15",
                "fifteen-inch cone driver",
                DriverKind.CONE,
                8,
                5.4,
                0.04,
                0.66,
                List.of(new MotionalResonance(36, 7, 5.4 * 7 / 0.35)),
                null,
                List.of());
        CabinetModel cabinet = new CabinetModel(
                "SUB",
                "double fifteen",
                Feed.PASSIVE,
                1000,
                600,
                62,
                List.of(
                        new DriverPosition("LF1", Way.LF, "LOW-15", 250, 300, 380, 380),
                        new DriverPosition("LF2", Way.LF, "LOW-15", 750, 300, 380, 380)),
                List.of(new Enclosure("BOX", EnclosureKind.VENTED, List.of("LF1", "LF2"), 2.2, 38, 7)),
                List.of(new TestPoint(
                        "IN",
                        TestPointKind.TERMINALS,
                        "1+ / 1-",
                        List.of("LF1", "LF2"),
                        4,
                        new LevelMask(List.of(new LevelMask.Point(10, 2), new LevelMask.Point(1000, 2))),
                        List.of(first, second))));
        return new ModelBook(List.of(cabinet), List.of(woofer));
    }
}
