package org.docksweep.demo.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.docksweep.demo.DemoModels;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** A driver taken out of its cabinet follows its own formula: box, crossover and horn stayed behind. */
class BareDriverPhysicsTest {
    private static final ModelBook BOOK = DemoModels.book();
    private static final Complex SOURCE_OHM = new Complex(0.5);
    /** Blocked inductance at the resonance, which the formula leaves out. */
    private static final double RELATIVE = 0.02;

    private static VirtualCabinet nominal(String modelCode) {
        return VirtualCabinet.nominal(BOOK, DemoModels.mechanics(), modelCode, Realism.PLAIN);
    }

    private static double magnitudeOhm(Load load, double frequencyHz) {
        return load.at(frequencyHz, SOURCE_OHM).impedanceOhm().norm();
    }

    private static double peakHz(Load load, double fromHz, double toHz) {
        double best = fromHz;
        for (double f = fromHz; f <= toHz; f *= 1.001) {
            best = magnitudeOhm(load, f) > magnitudeOhm(load, best) ? f : best;
        }
        return best;
    }

    /** Z(fs) = Re (1 + Qms / Qes) of a cone in free air: Small, JAES 20 (1972), from memory. */
    @Test
    void peaksInFreeAirAtTheConesOwnResonance() {
        DriverModel cone = BOOK.driverModel("SPINIFEX-12");
        double fsHz = cone.resonances().get(0).frequencyHz();
        Load bare = nominal("SPIN12").bareDriver("LF");

        assertThat(peakHz(bare, fsHz / 2, fsHz * 2)).isCloseTo(fsHz, within(0.01 * fsHz));
        double expectedOhm = cone.dcResistanceOhm() * (1 + cone.qms() / cone.qes());
        assertThat(magnitudeOhm(bare, fsHz)).isCloseTo(expectedOhm, within(RELATIVE * expectedOhm));
        assertThat(magnitudeOhm(bare, fsHz / 2.5)).as("one peak only").isLessThan(2 * cone.dcResistanceOhm());
    }

    @Test
    void ringsLowerOnTheTestHornThanInItsCabinet() {
        double ownHz = BOOK.driverModel("GULL-75").resonances().get(0).frequencyHz();
        VirtualCabinet cabinet = nominal("DUNE15B");

        double onBench = peakHz(cabinet.bareDriver("HF"), 0.7 * ownHz, 1.4 * ownHz);
        double inCabinet = peakHz(cabinet.load("HF"), 0.7 * ownHz, 1.4 * ownHz);

        assertThat(onBench).isLessThan(0.98 * inCabinet);
    }

    @Test
    void takesTheFaultsOfTheDriverAlongAndLeavesTheOthersBehind() {
        VirtualCabinet healthy = nominal("SPIN12");
        VirtualCabinet inBoxAndCrossover = healthy.with(Fault.of(
                FaultKind.LEAK,
                healthy.model().enclosures().stream()
                        .filter(e -> e.positionCodes().contains("LF"))
                        .findFirst()
                        .orElseThrow()
                        .id(),
                0.1));
        VirtualCabinet open = healthy.with(Fault.of(FaultKind.DRIVER_OPEN, "HF"));

        for (double f : new double[] {30, 60, 200, 2000}) {
            assertThat(magnitudeOhm(inBoxAndCrossover.bareDriver("LF"), f))
                    .isEqualTo(magnitudeOhm(healthy.bareDriver("LF"), f));
        }
        assertThat(magnitudeOhm(open.bareDriver("HF"), 1000)).isGreaterThan(1e6);
        assertThat(magnitudeOhm(open.bareDriver("LF"), 1000)).isLessThan(100);
    }

    /** Behind its amplifier nobody sees a driver's impedance; on the bench rig one does. */
    @Test
    void showsTheDriverOfAPoweredCabinetWhoseAmplifierIsDead() {
        VirtualCabinet dead = nominal("SALT12A").with(Fault.of(FaultKind.WAY_DEAD, "HF"));

        assertThat(magnitudeOhm(dead.load("LINE"), 1000)).isGreaterThan(1000);
        assertThat(magnitudeOhm(dead.bareDriver("HF"), 1000)).isBetween(4.0, 40.0);
    }

    @Test
    void namesAPositionThatIsNotThere() {
        VirtualCabinet cabinet = nominal("SPIN12");

        assertThatThrownBy(() -> cabinet.bareDriver("MF"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("MF");
    }
}
