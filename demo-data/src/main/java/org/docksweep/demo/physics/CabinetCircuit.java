package org.docksweep.demo.physics;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.fleet.NetworkElement;
import org.hipparchus.complex.Complex;

/**
 * The network behind one test point with its drivers and boxes, solved by nodal analysis at one frequency after the
 * other. Coils form one coupled group; cones that share a box form one coupled group, so a dead cone stays in the box as
 * a passive radiator.
 */
final class CabinetCircuit implements Load {
    static final String INPUT = "in";
    static final String RETURN = "0";

    private final List<NetworkElement> singles = new ArrayList<>();
    private final List<NetworkElement.Inductor> coils = new ArrayList<>();
    private final List<DriverGroup> groups;
    private final PartPhysics parts;
    private final double shuntOhm;
    private final Rattle rattle;
    private final Map<String, Integer> nodes = new HashMap<>();
    private final int leading;

    /**
     * Makes the circuit.
     *
     * @param elements this unit's elements
     * @param groups drivers by the air they share
     * @param parts losses and faults of the crossover parts
     * @param shuntOhm resistance straight across the contacts, infinite when there is none
     * @param rattle a loose part, or null
     */
    CabinetCircuit(
            List<NetworkElement> elements,
            List<DriverGroup> groups,
            PartPhysics parts,
            double shuntOhm,
            Rattle rattle) {
        this.groups = groups;
        this.parts = parts;
        this.shuntOhm = shuntOhm;
        this.rattle = rattle;
        this.leading = leading(groups);
        nodes.put(INPUT, 0);
        for (NetworkElement element : elements) {
            addNode(element.nodeA());
            addNode(element.nodeB());
            if (element instanceof NetworkElement.Inductor coil && parts.isWhole(coil.id())) {
                coils.add(coil);
            } else if (!(element instanceof NetworkElement.Driver)) {
                singles.add(element);
            }
        }
    }

    /** The group whose movement is looked at: one that rubs, else the first with cones, else the first. */
    private static int leading(List<DriverGroup> groups) {
        int found = 0;
        for (int g = groups.size() - 1; g >= 0; g--) {
            if (groups.get(g).hasCones()) {
                found = g;
            }
        }
        for (int g = 0; g < groups.size(); g++) {
            if (groups.get(g).rubDb() > Double.NEGATIVE_INFINITY) {
                found = g;
            }
        }
        return found;
    }

    private void addNode(String name) {
        if (!name.equals(RETURN)) {
            nodes.putIfAbsent(name, nodes.size());
        }
    }

    private int node(String name) {
        return name.equals(RETURN) ? -1 : nodes.get(name);
    }

    @Override
    public double rubDb() {
        return groups.stream().mapToDouble(DriverGroup::rubDb).max().orElse(Double.NEGATIVE_INFINITY);
    }

    @Override
    public Rattle rattle() {
        return rattle;
    }

    @Override
    public Response at(double frequencyHz, Complex sourceOhm) {
        double omega = 2 * Math.PI * frequencyHz;
        Complex[][] admittance = Dense.zeros(nodes.size(), nodes.size());
        for (NetworkElement element : singles) {
            stamp(admittance, element, parts.impedanceOhm(element, omega).reciprocal());
        }
        if (!coils.isEmpty()) {
            Complex[][] coupled = Dense.inverse(parts.coilImpedanceOhm(coils, omega));
            stampGroup(admittance, coils, coupled);
        }
        List<DriverGroup.Solved> solved = new ArrayList<>();
        for (DriverGroup group : groups) {
            DriverGroup.Solved at = group.at(omega);
            solved.add(at);
            stampGroup(admittance, group.elements(), at.admittance());
        }
        Complex sourceAdmittance = sourceOhm.reciprocal();
        admittance[0][0] = admittance[0][0].add(sourceAdmittance).add(1 / shuntOhm);
        Complex[][] voltages = Dense.zeros(nodes.size(), 1);
        voltages[0][0] = sourceAdmittance;
        Dense.solveInPlace(admittance, voltages);

        Complex current = Complex.ONE.subtract(voltages[0][0]).multiply(sourceAdmittance);
        Complex pressure = Complex.ZERO;
        Complex excursion = Complex.ZERO;
        for (int g = 0; g < groups.size(); g++) {
            DriverGroup.Sound sound = solved.get(g).sound(e -> across(voltages, e));
            pressure = pressure.add(sound.pressurePa());
            if (g == leading) {
                excursion = sound.excursion();
            }
        }
        return new Response(voltages[0][0], current, pressure, excursion);
    }

    private Complex across(Complex[][] voltages, NetworkElement element) {
        return at(voltages, element.nodeA()).subtract(at(voltages, element.nodeB()));
    }

    private Complex at(Complex[][] voltages, String name) {
        return name.equals(RETURN) ? Complex.ZERO : voltages[node(name)][0];
    }

    private void stamp(Complex[][] matrix, NetworkElement element, Complex value) {
        add(matrix, node(element.nodeA()), node(element.nodeA()), value);
        add(matrix, node(element.nodeB()), node(element.nodeB()), value);
        add(matrix, node(element.nodeA()), node(element.nodeB()), value.negate());
        add(matrix, node(element.nodeB()), node(element.nodeA()), value.negate());
    }

    private void stampGroup(Complex[][] matrix, List<? extends NetworkElement> branches, Complex[][] values) {
        for (int i = 0; i < branches.size(); i++) {
            for (int k = 0; k < branches.size(); k++) {
                Complex value = values[i][k];
                NetworkElement row = branches.get(i);
                NetworkElement column = branches.get(k);
                add(matrix, node(row.nodeA()), node(column.nodeA()), value);
                add(matrix, node(row.nodeB()), node(column.nodeB()), value);
                add(matrix, node(row.nodeA()), node(column.nodeB()), value.negate());
                add(matrix, node(row.nodeB()), node(column.nodeA()), value.negate());
            }
        }
    }

    private static void add(Complex[][] matrix, int row, int column, Complex value) {
        if (row >= 0 && column >= 0) {
            matrix[row][column] = matrix[row][column].add(value);
        }
    }
}
