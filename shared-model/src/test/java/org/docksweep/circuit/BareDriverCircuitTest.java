package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.junit.jupiter.api.Test;

/** The bare driver on the bench rig is a test point like any other: its circuit is the driver's own formula. */
class BareDriverCircuitTest {
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(15, 1), new LevelMask.Point(20_000, 1)));
    /** Plug and lead of the model's contact, and creep of a cone's suspension, which the formula leaves out. */
    private static final double RELATIVE = 0.02;

    private static double magnitudeOhm(DriverModel driver, double frequencyHz) {
        CabinetModel model = BareDriver.model(driver, MASK);
        ModelBook book = new ModelBook(List.of(model), List.of(driver));
        PointCircuit circuit =
                CircuitCompiler.compile(book, model, model.testPoint(BareDriver.TEST_POINT), CircuitFault.NONE);
        double[] z = circuit.impedanceOhm(frequencyHz, circuit.nominal());
        return Math.hypot(z[0], z[1]);
    }

    @Test
    void peaksAtTheResonanceOfACone() {
        DriverModel cone = new DriverModel(
                "CONE",
                "cone",
                DriverKind.CONE,
                8,
                5.6,
                0.0001,
                0.7,
                List.of(new MotionalResonance(40, 6, 90)),
                null,
                List.of());

        // At fs the motional impedance is real: Re + peak resistance (DriverModel's formula).
        assertThat(magnitudeOhm(cone, 40)).isCloseTo(95.6, within(95.6 * RELATIVE));
        assertThat(magnitudeOhm(cone, 40)).isGreaterThan(magnitudeOhm(cone, 37)).isGreaterThan(magnitudeOhm(cone, 43));
        assertThat(magnitudeOhm(cone, 1000)).isCloseTo(5.6, within(0.3));
    }

    @Test
    void peaksAtTheMainResonanceOfACompressionDriver() {
        DriverModel horn = new DriverModel(
                "HORN",
                "horn",
                DriverKind.COMPRESSION,
                8,
                6,
                0.0001,
                0.7,
                List.of(new MotionalResonance(700, 2, 19)),
                null,
                List.of());

        assertThat(magnitudeOhm(horn, 700)).isCloseTo(25, within(25 * RELATIVE));
        TestPoint point = BareDriver.model(horn, MASK).testPoint(BareDriver.TEST_POINT);
        assertThat(point.kind()).isEqualTo(TestPointKind.BARE_DRIVER);
        assertThat(point.ratedImpedanceOhm()).isEqualTo(8);
    }
}
