package org.docksweep.demo.physics;

import java.util.List;
import java.util.Map;
import org.docksweep.demo.DemoModels;
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

/** Books for tests. */
final class Books {
    static final Map<String, DriverMechanics> REFERENCE_MECHANICS =
            Map.of("REF", new DriverMechanics(90, 530, 5, 20_000));

    private Books() {}

    /** The demo book without voice-coil inductance, so that all elements are linear. */
    static ModelBook demoWithoutInductance() {
        ModelBook book = DemoModels.book();
        List<DriverModel> drivers = book.driverModels().stream()
                .map(d -> new DriverModel(
                        d.code(),
                        d.name(),
                        d.kind(),
                        d.ratedImpedanceOhm(),
                        d.dcResistanceOhm(),
                        0,
                        d.lossyInductanceExponent(),
                        d.resonances(),
                        d.polarityMark(),
                        d.diaphragmPartNumbers()))
                .toList();
        return new ModelBook(book.cabinetModels(), drivers);
    }

    /** One or more reference drivers (Re 6 ohm, fs 40 Hz, Qms 4, Qes 0.5, no inductance) in parallel in one box. */
    static VirtualCabinet reference(EnclosureKind kind, double alpha, double tuningHz, double leakageLossQ, int count) {
        DriverModel driver = new DriverModel(
                "REF",
                "reference driver",
                DriverKind.CONE,
                8,
                6,
                0,
                0.7,
                List.of(new MotionalResonance(40, 4, 48)),
                null,
                List.of());
        List<String> codes = List.of("LF1", "LF2").subList(0, count);
        List<DriverPosition> positions = codes.stream()
                .map(c -> new DriverPosition(c, Way.LF, "REF", 100, 100, 100, 100))
                .toList();
        List<NetworkElement> elements = codes.stream()
                .<NetworkElement>map(c -> new NetworkElement.Driver("D" + c, "in", "0", c))
                .toList();
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(10, 1), new LevelMask.Point(20_000, 1)));
        CabinetModel model = new CabinetModel(
                "BOX",
                "reference box",
                Feed.PASSIVE,
                400,
                600,
                20,
                positions,
                List.of(new Enclosure("box", kind, codes, alpha, tuningHz, leakageLossQ)),
                List.of(new TestPoint("IN", TestPointKind.TERMINALS, "1+ / 1-", codes, 8.0 / count, mask, elements)));
        ModelBook book = new ModelBook(List.of(model), List.of(driver));
        return VirtualCabinet.nominal(book, REFERENCE_MECHANICS, "BOX", Realism.PLAIN);
    }
}
