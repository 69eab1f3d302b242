package org.docksweep.circuit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/**
 * Turns a test point of a cabinet model into a {@link PointCircuit}, healthy or with one {@link CircuitFault}.
 *
 * <p>Spreads of healthy units are common practice, no source, except where the model states a tolerance.
 */
public final class CircuitCompiler {
    /** What a short leaves, and the spread of its logarithm; common practice, no source. */
    private static final double SHORT_OHM = 0.05;

    private static final double SHORT_LOG_SPREAD = 1;
    private static final double CONTACT_OHM = 0.06;
    /** Plugs differ, and the calibration has taken one plug's resistance off: it may come out below 0. */
    private static final double CONTACT_SPREAD_OHM = 0.06;
    /** Body of a cabinet against 20 C where nobody looked at a thermometer. */
    private static final double CLIMATE_SPREAD_KELVIN = 10;
    /** Coils against their cabinet's body, some time after the last show. */
    private static final double COIL_SPREAD_KELVIN = 4;

    private static final double SEIZED_OHM = 1e-4;
    private static final double SEIZED_SHARE = 0.02;
    /**
     * Losses of a capacitor are carried in ohm and not as a logarithm: a small number that may be anything on a logarithmic scale can be a
     * thousand ohm, and then an open capacitor passes for a healthy one with losses. Common practice, no source.
     */
    private static final double ESR_SPREAD_OHM = 0.02;

    /** Exponent of suspension creep and friction 1 / QP of a port; common practice, no source. */
    private static final double CREEP = 0.03;

    private static final double CREEP_SPREAD = 0.01;
    private static final double PORT_FRICTION = 0.02;
    private static final double PORT_FRICTION_SPREAD = 0.008;
    static final String RETURN_NODE = "0";
    static final String INPUT_NODE = "in";

    private final CabinetModel model;
    private final ModelBook book;
    private final TestPoint point;
    private final CircuitFault fault;
    private final List<CircuitParameter> parameters = new ArrayList<>();
    private final Map<String, Integer> parameterIndex = new HashMap<>();
    private final List<Term> terms = new ArrayList<>();
    private final Map<String, Integer> nodeIndex = new HashMap<>();
    private final Map<String, Integer> motionNode = new HashMap<>();
    private final Map<String, Integer> motionReturn = new HashMap<>();
    private final List<PointCircuit.Mover> movers = new ArrayList<>();

    private CircuitCompiler(ModelBook book, CabinetModel model, TestPoint point, CircuitFault fault) {
        this.book = book;
        this.model = model;
        this.point = point;
        this.fault = fault;
    }

    /**
     * Compiles the circuit behind a test point.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @param fault fault to build in, or {@link CircuitFault#NONE}
     * @return the circuit
     * @throws IllegalArgumentException if the network has no path from the input to the return terminal, a node with
     *     only one part on it, or a fault names something the point does not have
     */
    public static PointCircuit compile(ModelBook book, CabinetModel model, TestPoint point, CircuitFault fault) {
        return new CircuitCompiler(book, model, point, fault).compile();
    }

    private PointCircuit compile() {
        NetworkCheck.nodes(model, point);
        NetworkCheck.faultTarget(model, point, enclosuresHere(), fault);
        add("contact", CONTACT_OHM, CONTACT_SPREAD_OHM);
        add("temperature", 0, COIL_SPREAD_KELVIN);
        add("climate", 0, CLIMATE_SPREAD_KELVIN);
        // All healthy parameters come first so that every fault of a point shares their order.
        point.elements().forEach(this::addElementParameters);
        enclosuresHere().forEach(this::addEnclosureParameters);
        addSeverity();
        node(INPUT_NODE);
        point.elements().forEach(this::addElement);
        enclosuresHere().forEach(this::addEnclosure);
        int nodes = nodeIndex.size() + motionNode.size();
        return new PointCircuit(
                parameters, terms, nodes, nodeIndex.get(INPUT_NODE), parameterIndex.get("contact"), movers);
    }

    private List<Enclosure> enclosuresHere() {
        return model.enclosures().stream()
                .filter(e -> e.kind() == EnclosureKind.CLOSED || e.kind() == EnclosureKind.VENTED)
                .filter(e -> point.positionCodes().containsAll(e.positionCodes()))
                .toList();
    }

    // ------------------------------------------------------------------ parameters

    private void addElementParameters(NetworkElement element) {
        if (element instanceof NetworkElement.Resistor r) {
            add(r.id() + ".value", StrictMath.log(r.resistanceOhm()), tolerance(r.toleranceRel()));
        } else if (element instanceof NetworkElement.Inductor l) {
            add(l.id() + ".value", StrictMath.log(l.inductanceH()), tolerance(l.toleranceRel()));
            add(l.id() + ".winding", StrictMath.log(Math.max(1e-3, l.seriesResistanceOhm())), 0.05);
        } else if (element instanceof NetworkElement.Capacitor c) {
            add(c.id() + ".value", StrictMath.log(c.capacitanceF()), tolerance(c.toleranceRel()));
            add(c.id() + ".esrOhm", c.seriesResistanceOhm(), ESR_SPREAD_OHM + 0.5 * c.seriesResistanceOhm());
        } else if (element instanceof NetworkElement.Driver d) {
            addDriverParameters(d.positionCode());
        }
    }

    private void addDriverParameters(String position) {
        DriverModel driver = book.driverModelAt(model, position);
        add(position + ".Re", StrictMath.log(driver.dcResistanceOhm()), 0.018);
        add(position + ".K", StrictMath.log(Math.max(1e-6, driver.lossyInductanceK())), 0.05);
        add(position + ".n", StrictMath.log(driver.lossyInductanceExponent()), 0.015);
        if (driver.kind() == DriverKind.CONE) {
            MotionalResonance motion = driver.resonances().get(0);
            add(position + ".fs", StrictMath.log(motion.frequencyHz()), 0.05);
            add(position + ".Qms", StrictMath.log(motion.q()), 0.12);
            add(position + ".Z0", StrictMath.log(motion.peakResistanceOhm() / motion.q()), 0.06);
            add(position + ".creep", CREEP, CREEP_SPREAD);
        } else {
            for (int k = 0; k < driver.resonances().size(); k++) {
                MotionalResonance resonance = driver.resonances().get(k);
                add(position + ".f" + (k + 1), StrictMath.log(resonance.frequencyHz()), 0.035);
                add(position + ".Q" + (k + 1), StrictMath.log(resonance.q()), 0.12);
                add(position + ".Z" + (k + 1), StrictMath.log(resonance.peakResistanceOhm() / resonance.q()), 0.1);
            }
        }
    }

    private void addEnclosureParameters(Enclosure box) {
        DriverModel driver = book.driverModelAt(model, box.positionCodes().get(0));
        MotionalResonance motion = driver.resonances().get(0);
        // One driver among N sees N y_air = (alpha / q) / Z0, so y_air = S / (j w) with S = alpha 2 pi fs / (Z0 N).
        double stiffness = box.complianceRatio()
                * 2
                * Math.PI
                * motion.frequencyHz()
                / (motion.peakResistanceOhm() / motion.q() * box.positionCodes().size());
        add(box.id() + ".stiffness", StrictMath.log(stiffness), 0.06);
        add(box.id() + ".QL", StrictMath.log(box.leakageLossQ()), 0.15);
        if (box.kind() == EnclosureKind.VENTED) {
            add(box.id() + ".tuning", StrictMath.log(box.tuningHz()), 0.025);
            add(box.id() + ".friction", PORT_FRICTION, PORT_FRICTION_SPREAD);
        }
    }

    private void addSeverity() {
        if (fault.kind() == CircuitFault.Kind.SHORTED_TURNS) {
            add("fault.turns", StrictMath.log(0.1), 0.8);
        } else if (fault.kind() == CircuitFault.Kind.SERIES_RESISTANCE) {
            double dcResistanceOhm = book.driverModelAt(model, fault.target()).dcResistanceOhm();
            add("fault.series", StrictMath.log(0.5 * dcResistanceOhm), 1.0);
        } else if (fault.kind() == CircuitFault.Kind.MAGNET_WEAK) {
            add("fault.magnet", StrictMath.log(0.85), 0.12);
        } else if (fault.kind() == CircuitFault.Kind.COIL_SEIZED) {
            // what little a stuck coil still moves, as resistance
            double dcResistanceOhm = book.driverModelAt(model, fault.target()).dcResistanceOhm();
            add("fault.seized", StrictMath.log(SEIZED_SHARE * dcResistanceOhm), 1.0);
        } else if (fault.kind() == CircuitFault.Kind.DRIVER_SHORTED
                || fault.kind() == CircuitFault.Kind.DRIVER_BRIDGED
                || fault.kind() == CircuitFault.Kind.ELEMENT_SHORTED) {
            add("fault.short", StrictMath.log(SHORT_OHM), SHORT_LOG_SPREAD);
        }
    }

    private static double tolerance(double toleranceRel) {
        return Math.max(0.005, toleranceRel);
    }

    private void add(String id, double nominal, double spread) {
        if (parameterIndex.put(id, parameters.size()) != null) {
            throw new IllegalArgumentException("cabinet model " + model.code() + ": the name " + id
                    + " stands for two things; give elements and enclosures different names");
        }
        parameters.add(new CircuitParameter(id, nominal, spread));
    }

    private int parameter(String id) {
        return parameterIndex.get(id);
    }

    private int optional(String id) {
        return parameterIndex.getOrDefault(id, -1);
    }

    // ------------------------------------------------------------------ terms

    private int node(String name) {
        if (name.equals(RETURN_NODE)) {
            return -1;
        }
        return nodeIndex.computeIfAbsent(name, n -> nodeIndex.size() + motionNode.size());
    }

    private boolean hit(CircuitFault.Kind kind, String target) {
        return fault.kind() == kind && fault.target().equals(target);
    }

    private void addElement(NetworkElement element) {
        int a = node(element.nodeA());
        int b = node(element.nodeB());
        if (hit(CircuitFault.Kind.ELEMENT_OPEN, element.id())) {
            return;
        }
        if (hit(CircuitFault.Kind.ELEMENT_SHORTED, element.id())) {
            terms.add(new Terms.Resistor(Ends.nodes(a, b), Ends.weights(a, b), parameter("fault.short")));
            return;
        }
        String id = element.id();
        if (element instanceof NetworkElement.Resistor) {
            terms.add(new Terms.Resistor(Ends.nodes(a, b), Ends.weights(a, b), parameter(id + ".value")));
        } else if (element instanceof NetworkElement.Inductor) {
            terms.add(new Terms.Coil(
                    Ends.nodes(a, b),
                    Ends.weights(a, b),
                    parameter(id + ".value"),
                    parameter(id + ".winding"),
                    parameter("climate")));
        } else if (element instanceof NetworkElement.Capacitor) {
            terms.add(new Terms.Capacitor(
                    Ends.nodes(a, b), Ends.weights(a, b), parameter(id + ".value"), parameter(id + ".esrOhm")));
        } else if (element instanceof NetworkElement.Driver d) {
            addDriver(d.positionCode(), a, b);
        }
    }

    private void addDriver(String position, int a, int b) {
        DriverModel driver = book.driverModelAt(model, position);
        boolean bridged = hit(CircuitFault.Kind.DRIVER_BRIDGED, position);
        if (bridged || hit(CircuitFault.Kind.DRIVER_SHORTED, position)) {
            terms.add(new Terms.Resistor(Ends.nodes(a, b), Ends.weights(a, b), parameter("fault.short")));
        }
        boolean open = bridged || hit(CircuitFault.Kind.DRIVER_OPEN, position);
        double scale = hit(CircuitFault.Kind.DRIVER_DOUBLED, position)
                ? 2
                : hit(CircuitFault.Kind.DRIVER_HALVED, position) ? 0.5 : 1;
        boolean here = fault.target().equals(position);
        int series = here ? Math.max(optional("fault.series"), optional("fault.seized")) : -1;
        int turns = here ? optional("fault.turns") : -1;
        CoilFault coilFault = new CoilFault(scale, series, turns, here ? optional("fault.magnet") : -1);
        boolean seized = hit(CircuitFault.Kind.COIL_SEIZED, position);
        boolean cone = driver.kind() == DriverKind.CONE;
        int middle = cone ? addMotionNode(position, b) : b;
        if (cone) {
            movers.add(new PointCircuit.Mover(position, Ends.nodes(middle, b), Ends.weights(middle, b), null));
        }
        if (!open) {
            CoilTerm coil = addCoils(position, driver, a, middle, coilFault, seized);
            if (!cone) {
                movers.add(new PointCircuit.Mover(position, Ends.nodes(a, b), Ends.weights(a, b), coil));
            }
        }
        if (cone && seized) {
            terms.add(new Terms.Fixed(Ends.nodes(middle, b), Ends.weights(middle, b), SEIZED_OHM));
        } else if (cone) {
            int fs = parameter(position + ".fs");
            int qms = parameter(position + ".Qms");
            int z0 = parameter(position + ".Z0");
            int climate = parameter("climate");
            int creep = parameter(position + ".creep");
            int[] p = turns >= 0
                    ? new int[] {fs, qms, z0, climate, creep, turns, parameter(position + ".Re")}
                    : coilFault.magnet() >= 0
                            ? new int[] {fs, qms, z0, climate, creep, coilFault.magnet()}
                            : new int[] {fs, qms, z0, climate, creep};
            terms.add(new MotionTerm(Ends.nodes(middle, b), Ends.weights(middle, b), coilFault, p));
        }
    }

    private int addMotionNode(String position, int returnNode) {
        int middle = nodeIndex.size() + motionNode.size();
        motionNode.put(position, middle);
        motionReturn.put(position, returnNode);
        return middle;
    }

    private CoilTerm addCoils(String position, DriverModel driver, int a, int b, CoilFault coilFault, boolean seized) {
        int resonances = driver.kind() == DriverKind.CONE || seized
                ? 0
                : driver.resonances().size();
        int first = 5;
        boolean severity = coilFault.severity() >= 0;
        int[] p = new int[first + 3 * resonances + (severity ? 1 : 0)];
        p[0] = parameter(position + ".Re");
        p[1] = parameter(position + ".K");
        p[2] = parameter(position + ".n");
        p[3] = parameter("temperature");
        p[4] = parameter("climate");
        for (int k = 0; k < resonances; k++) {
            p[first + 3 * k] = parameter(position + ".f" + (k + 1));
            p[first + 1 + 3 * k] = parameter(position + ".Q" + (k + 1));
            p[first + 2 + 3 * k] = parameter(position + ".Z" + (k + 1));
        }
        if (severity) {
            p[p.length - 1] = coilFault.severity();
        }
        CoilTerm coil = new CoilTerm(Ends.nodes(a, b), Ends.weights(a, b), resonances, coilFault, p);
        terms.add(coil);
        return coil;
    }

    private void addEnclosure(Enclosure box) {
        boolean vented = box.kind() == EnclosureKind.VENTED && !hit(CircuitFault.Kind.PORT_BLOCKED, box.id());
        int count = box.positionCodes().size();
        int[] from = new int[count];
        int[] to = new int[count];
        double[] coupling = new double[count];
        double[] faulty = new double[count];
        for (int i = 0; i < count; i++) {
            String position = box.positionCodes().get(i);
            from[i] = motionNode.get(position);
            to[i] = motionReturn.get(position);
            // Force factor squared follows the impedance scale, and the box is seen through it.
            coupling[i] = hit(CircuitFault.Kind.DRIVER_DOUBLED, position)
                    ? Math.sqrt(0.5)
                    : hit(CircuitFault.Kind.DRIVER_HALVED, position)
                            ? Math.sqrt(2)
                            : hit(CircuitFault.Kind.POLARITY_REVERSED, position) ? -1 : 1;
            faulty[i] = fault.target().equals(position) ? coupling[i] : 0;
        }
        double fsHz = book.driverModelAt(model, box.positionCodes().get(0))
                .resonances()
                .get(0)
                .frequencyHz();
        int stiffness = parameter(box.id() + ".stiffness");
        int leak = parameter(box.id() + ".QL");
        int climate = parameter("climate");
        int[] p = vented
                ? new int[] {
                    stiffness, leak, climate, parameter(box.id() + ".tuning"), parameter(box.id() + ".friction")
                }
                : new int[] {stiffness, leak, climate};
        boolean here = box.positionCodes().contains(fault.target());
        CoilFault force =
                new CoilFault(1, -1, here ? optional("fault.turns") : -1, here ? optional("fault.magnet") : -1);
        terms.add(new BoxAirTerm(
                Ends.of(from, to, coupling), Ends.of(from, to, faulty).weights(), force, vented, fsHz, p));
    }
}
