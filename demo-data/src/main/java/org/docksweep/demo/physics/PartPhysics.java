package org.docksweep.demo.physics;

import java.util.List;
import java.util.Set;
import org.docksweep.fleet.NetworkElement;
import org.hipparchus.complex.Complex;

/**
 * How crossover parts really behave: coil resistance with temperature, core and skin loss, dielectric loss, weak
 * magnetic coupling between coils on one board, and parts that are open or shorted.
 *
 * @param openParts ids of open parts
 * @param shortedParts ids of shorted parts
 * @param climate temperatures
 * @param realism whether losses and coupling are simulated
 */
record PartPhysics(Set<String> openParts, Set<String> shortedParts, Climate climate, Realism realism) {
    private static final double SHORTED_OHM = 0.01;
    /** Loss tangent of a crossover coil at 10 kHz beyond its DC resistance (assumed, common practice). */
    private static final double COIL_LOSS_AT_10_KHZ = 0.012;
    /** Loss tangent of film and bipolar capacitors (assumed, common practice). */
    private static final double CAPACITOR_LOSS = 0.004;
    /** Coupling factor of neighbouring coils (assumed, common practice). */
    private static final double COIL_COUPLING = 0.012;

    boolean isWhole(String id) {
        return !openParts.contains(id) && !shortedParts.contains(id);
    }

    Complex impedanceOhm(NetworkElement element, double omega) {
        if (openParts.contains(element.id())) {
            return new Complex(DriverCondition.OPEN_OHM);
        }
        if (shortedParts.contains(element.id())) {
            return new Complex(SHORTED_OHM);
        }
        if (element instanceof NetworkElement.Resistor resistor) {
            return new Complex(resistor.resistanceOhm());
        }
        if (element instanceof NetworkElement.Capacitor capacitor) {
            double reactance = 1 / (omega * capacitor.capacitanceF());
            double loss = realism == Realism.FULL ? CAPACITOR_LOSS * reactance : 0;
            return new Complex(capacitor.seriesResistanceOhm() + loss, -reactance);
        }
        if (element instanceof NetworkElement.Inductor coil) {
            return coilOhm(coil, omega);
        }
        throw new IllegalArgumentException("driver " + element.id() + " is not a crossover part");
    }

    Complex[][] coilImpedanceOhm(List<NetworkElement.Inductor> coils, double omega) {
        Complex[][] matrix = Dense.zeros(coils.size(), coils.size());
        for (int i = 0; i < coils.size(); i++) {
            matrix[i][i] = coilOhm(coils.get(i), omega);
            for (int k = 0; k < i && realism == Realism.FULL; k++) {
                double mutual = COIL_COUPLING
                        * Math.sqrt(coils.get(i).inductanceH() * coils.get(k).inductanceH());
                matrix[i][k] = new Complex(0, omega * mutual);
                matrix[k][i] = matrix[i][k];
            }
        }
        return matrix;
    }

    private Complex coilOhm(NetworkElement.Inductor coil, double omega) {
        double reactance = omega * coil.inductanceH();
        double loss = realism == Realism.FULL
                ? COIL_LOSS_AT_10_KHZ * Math.sqrt(omega / (2 * Math.PI * 10_000)) * reactance
                : 0;
        return new Complex(coil.seriesResistanceOhm() * climate.ambientCopperFactor() + loss, reactance);
    }

    /** The same part off its value by a factor; drivers stay as they are. */
    static NetworkElement drifted(NetworkElement element, double factor) {
        if (element instanceof NetworkElement.Resistor r) {
            return new NetworkElement.Resistor(
                    r.id(), r.nodeA(), r.nodeB(), r.resistanceOhm() * factor, r.toleranceRel());
        }
        if (element instanceof NetworkElement.Inductor l) {
            return new NetworkElement.Inductor(
                    l.id(), l.nodeA(), l.nodeB(), l.inductanceH() * factor, l.seriesResistanceOhm(), l.toleranceRel());
        }
        if (element instanceof NetworkElement.Capacitor c) {
            return new NetworkElement.Capacitor(
                    c.id(), c.nodeA(), c.nodeB(), c.capacitanceF() * factor, c.seriesResistanceOhm(), c.toleranceRel());
        }
        return element;
    }
}
