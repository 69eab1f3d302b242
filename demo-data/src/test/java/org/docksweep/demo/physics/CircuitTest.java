package org.docksweep.demo.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Set;
import org.docksweep.fleet.NetworkElement;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** Circuits against impedances worked out by hand. */
class CircuitTest {
    /** Elimination of a handful of nodes loses a few digits at most. */
    private static final double ROUNDING = 1e-9;

    private static CabinetCircuit circuit(Realism realism, NetworkElement... elements) {
        PartPhysics parts = new PartPhysics(Set.of(), Set.of(), Climate.even(20), realism);
        return new CabinetCircuit(List.of(elements), List.of(), parts, Double.POSITIVE_INFINITY, null);
    }

    private static Complex ohm(Load load, double frequencyHz) {
        return load.at(frequencyHz, new Complex(1)).impedanceOhm();
    }

    @Test
    void findsSeriesResonanceOfCoilAndCapacitor() {
        Load load = circuit(
                Realism.PLAIN,
                new NetworkElement.Inductor("L1", "in", "a", 1.2e-3, 0.4, 0),
                new NetworkElement.Capacitor("C1", "a", "0", 8.2e-6, 0.05, 0));
        double resonanceHz = 1 / (2 * Math.PI * Math.sqrt(1.2e-3 * 8.2e-6));
        Complex z = ohm(load, resonanceHz);
        assertThat(z.getRealPart()).isCloseTo(0.45, within(ROUNDING));
        assertThat(z.getImaginaryPart()).isCloseTo(0, within(1e-6));
    }

    @Test
    void findsParallelOfResistorCoilAndCapacitor() {
        double f = 730;
        double omega = 2 * Math.PI * f;
        Load load = circuit(
                Realism.PLAIN,
                new NetworkElement.Resistor("R1", "in", "0", 48, 0),
                new NetworkElement.Inductor("L1", "in", "0", 47.74648293e-3, 0, 0),
                new NetworkElement.Capacitor("C1", "in", "0", 331.5727981e-6, 0, 0));
        double susceptance = omega * 331.5727981e-6 - 1 / (omega * 47.74648293e-3);
        Complex expected = new Complex(1 / 48.0, susceptance).reciprocal();
        assertThat(ohm(load, f).subtract(expected).norm()).isLessThan(ROUNDING);
    }

    @Test
    void findsLadderOfSixElements() {
        double omega = 2 * Math.PI * 1600;
        Load load = circuit(
                Realism.PLAIN,
                new NetworkElement.Capacitor("C1", "in", "a", 8.2e-6, 0.05, 0),
                new NetworkElement.Inductor("L1", "a", "0", 1.2e-3, 0.45, 0),
                new NetworkElement.Resistor("R1", "a", "b", 3.9, 0),
                new NetworkElement.Resistor("R2", "b", "0", 8.2, 0),
                new NetworkElement.Resistor("R3", "b", "0", 6.1, 0));
        double pad = 3.9 + 8.2 * 6.1 / (8.2 + 6.1);
        Complex coil = new Complex(0.45, omega * 1.2e-3);
        Complex branch = coil.multiply(pad).divide(coil.add(pad));
        Complex expected = branch.add(new Complex(0.05, -1 / (omega * 8.2e-6)));
        assertThat(ohm(load, 1600).subtract(expected).norm()).isLessThan(ROUNDING);
    }

    @Test
    void couplesCoilsThatSitOnOneBoard() {
        NetworkElement first = new NetworkElement.Inductor("L1", "in", "a", 1e-3, 0.1, 0);
        NetworkElement second = new NetworkElement.Inductor("L2", "a", "0", 4e-3, 0.1, 0);
        double omega = 2 * Math.PI * 1000;
        double apart = ohm(circuit(Realism.PLAIN, first, second), 1000).getImaginaryPart();
        double coupled = ohm(circuit(Realism.FULL, first, second), 1000).getImaginaryPart();
        double mutual = 0.012 * Math.sqrt(1e-3 * 4e-3);
        assertThat(apart).isCloseTo(omega * 5e-3, within(ROUNDING));
        assertThat(coupled).isCloseTo(omega * (5e-3 + 2 * mutual), within(ROUNDING));
    }

    @Test
    void giveCurrentAndVoltageOfTheDividerWithTheSource() {
        Load load = circuit(Realism.PLAIN, new NetworkElement.Resistor("R1", "in", "0", 3, 0));
        Load.Response response = load.at(100, new Complex(1));
        assertThat(response.voltage().getRealPart()).isCloseTo(0.75, within(ROUNDING));
        assertThat(response.current().getRealPart()).isCloseTo(0.25, within(ROUNDING));
    }

    @Test
    void staysSolvableWhenAPartHangsOnAnOpenOne() {
        PartPhysics parts = new PartPhysics(Set.of("R1"), Set.of(), Climate.even(20), Realism.PLAIN);
        Load load = new CabinetCircuit(
                List.of(
                        new NetworkElement.Resistor("R1", "in", "z", 6.8, 0),
                        new NetworkElement.Capacitor("C1", "z", "0", 1e-5, 0, 0),
                        new NetworkElement.Resistor("R2", "in", "0", 8, 0)),
                List.of(),
                parts,
                Double.POSITIVE_INFINITY,
                null);
        assertThat(ohm(load, 1000).norm()).isCloseTo(8, within(1e-6));
    }
}
