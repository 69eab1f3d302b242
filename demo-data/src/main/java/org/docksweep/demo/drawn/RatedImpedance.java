package org.docksweep.demo.drawn;

import java.util.List;
import java.util.Map;
import org.docksweep.demo.physics.DriverMechanics;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.Realism;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.hipparchus.complex.Complex;

/** The rated impedance on the plate: the magnitude nowhere falls below 80 % of it (IEC 60268-5, 16.1, from memory). */
final class RatedImpedance {
    private static final double SHARE = 0.8;
    private static final double[] COMMON_OHM = {16, 12, 8, 6, 4, 3, 2, 1};
    private static final double STEP = 1.03;

    private RatedImpedance() {}

    static CabinetModel of(CabinetModel model, ModelBook book, Map<String, DriverMechanics> mechanics) {
        VirtualCabinet nominal = VirtualCabinet.nominal(book, mechanics, model.code(), Realism.FULL);
        List<TestPoint> points = model.testPoints().stream()
                .map(p -> p.kind() == TestPointKind.TERMINALS ? rated(p, nominal.load(p.code())) : p)
                .toList();
        return new CabinetModel(
                model.code(),
                model.name(),
                model.feed(),
                model.widthMm(),
                model.heightMm(),
                model.massKg(),
                model.positions(),
                model.enclosures(),
                points);
    }

    private static TestPoint rated(TestPoint point, Load load) {
        double least = Double.POSITIVE_INFINITY;
        for (double hz = point.levelMask().lowestHz(); hz < point.levelMask().highestHz(); hz *= STEP) {
            least = Math.min(
                    least, load.at(hz, new Complex(1e-3)).impedanceOhm().norm());
        }
        double ratedOhm = COMMON_OHM[COMMON_OHM.length - 1];
        for (double ohm : COMMON_OHM) {
            if (least >= SHARE * ohm) {
                ratedOhm = ohm;
                break;
            }
        }
        return new TestPoint(
                point.code(),
                point.kind(),
                point.contacts(),
                point.positionCodes(),
                ratedOhm,
                point.levelMask(),
                point.elements());
    }
}
