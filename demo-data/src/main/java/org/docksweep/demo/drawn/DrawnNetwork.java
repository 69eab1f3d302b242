package org.docksweep.demo.drawn;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.NetworkElement;

/**
 * A passive network as a designer would begin it: singly terminated Butterworth ladders at the crossover frequency into the drivers' rated
 * impedance (Zverev, Handbook of Filter Synthesis, from memory), then detuned by ear and rounded to parts that can be bought.
 */
final class DrawnNetwork {
    private static final String INPUT = "in";
    private static final String RETURN = "0";
    /** Normalised elements, from the source on, by order. */
    private static final double[][] LADDERS = {
        {1}, {1.4142, 0.7071}, {1.5, 1.3333, 0.5}, {1.5307, 1.5772, 1.0824, 0.3827}
    };

    private static final double COIL_TOLERANCE = 0.02;
    private static final double CAPACITOR_TOLERANCE = 0.03;
    private static final double RESISTOR_TOLERANCE = 0.02;
    private static final double DETUNED = 1.35;

    private final Dice dice;
    private final List<NetworkElement> elements = new ArrayList<>();
    private int coils;
    private int capacitors;
    private int resistors;
    private int nodes;

    DrawnNetwork(Dice dice) {
        this.dice = dice;
    }

    List<NetworkElement> elements() {
        return List.copyOf(elements);
    }

    /** Low-pass from the input, 0 to 4 poles. */
    String lowPass(int order, double crossHz, double loadOhm) {
        return ladder(INPUT, order, crossHz, loadOhm, true);
    }

    /** Low-pass that follows another section. */
    String lowPassFrom(String node, int order, double crossHz, double loadOhm) {
        return ladder(node, order, crossHz, loadOhm, true);
    }

    /** High-pass from the input, 0 to 4 poles. */
    String highPass(int order, double crossHz, double loadOhm) {
        return ladder(INPUT, order, crossHz, loadOhm, false);
    }

    private String ladder(String from, int order, double crossHz, double loadOhm, boolean low) {
        String node = from;
        double omega = 2 * Math.PI * crossHz;
        for (int k = 0; k < order; k++) {
            double value = LADDERS[order - 1][k];
            boolean series = k % 2 == 0;
            String next = series ? node() : RETURN;
            if (series == low) {
                coil(node, next, (low ? value : 1 / value) * loadOhm / omega);
            } else {
                capacitor(node, next, (low ? value : 1 / value) / (omega * loadOhm));
            }
            node = series ? next : node;
        }
        return node;
    }

    /** Nothing, a resistor in series, or one in series and one across. */
    String pad(String node, double loadOhm) {
        int kind = dice.wholeBetween(0, 4);
        if (kind == 0) {
            return node;
        }
        String padded = node();
        resistor(node, padded, loadOhm * dice.between(0.3, 1));
        if (kind > 2) {
            resistor(padded, RETURN, loadOhm * dice.between(0.7, 2));
        }
        return padded;
    }

    /** A resistor and a capacitor across a driver, against its inductance. */
    void flatten(String node, double loadOhm, double fromHz) {
        String between = node();
        double ohm = loadOhm * dice.between(0.75, 1.1);
        resistor(node, between, ohm);
        capacitor(between, RETURN, 1 / (2 * Math.PI * fromHz * ohm));
    }

    /** A driver; turned when a designer wants it so. */
    void driver(String node, String position, boolean turned) {
        driver(node, RETURN, position, turned);
    }

    private void driver(String node, String other, String position, boolean turned) {
        elements.add(new NetworkElement.Driver("D" + position, turned ? other : node, turned ? node : other, position));
    }

    /** Two drivers side by side, or one behind the other. */
    void pair(String node, String first, String second, boolean inSeries) {
        if (inSeries) {
            String between = node();
            driver(node, between, first, false);
            driver(between, RETURN, second, false);
        } else {
            driver(node, first, false);
            driver(node, second, false);
        }
    }

    /** One capacitor before a driver. */
    String protect(double farad) {
        String node = node();
        elements.add(new NetworkElement.Capacitor(
                "C" + ++capacitors, INPUT, node, Dice.preferred(farad), 0.05, CAPACITOR_TOLERANCE));
        return node;
    }

    /** What a network is designed for: the rated impedance, or a little above the resistance. */
    double loadOhm(DriverModel driver) {
        return driver.dcResistanceOhm() * dice.between(1.1, 1.5);
    }

    private String node() {
        nodes++;
        return "n" + nodes;
    }

    private double detuned(double value) {
        return Dice.preferred(value * dice.between(1 / DETUNED, DETUNED));
    }

    private void coil(String a, String b, double henry) {
        double value = detuned(henry);
        double windingOhm = 0.3 * Math.sqrt(value / 1e-3) * dice.between(0.6, 1.6);
        elements.add(new NetworkElement.Inductor("L" + ++coils, a, b, value, windingOhm, COIL_TOLERANCE));
    }

    private void capacitor(String a, String b, double farad) {
        elements.add(new NetworkElement.Capacitor(
                "C" + ++capacitors, a, b, detuned(farad), dice.between(0.03, 0.12), CAPACITOR_TOLERANCE));
    }

    private void resistor(String a, String b, double ohm) {
        elements.add(new NetworkElement.Resistor("R" + ++resistors, a, b, Dice.preferred(ohm), RESISTOR_TOLERANCE));
    }
}
