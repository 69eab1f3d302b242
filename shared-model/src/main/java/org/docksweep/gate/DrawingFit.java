package org.docksweep.gate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CircuitParameter;
import org.docksweep.circuit.CircuitPrior;
import org.docksweep.circuit.ModelOffsets;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;

/**
 * Fits a drawing to cabinets: a template knows how the parts hang together and only about what they are worth. Each unit is
 * fitted with every value free within what a guess from the plate may be wrong by, from several starts, since a resonance that is
 * far off would settle on the wrong peak; the medians over the units become the drawing's nominal values. Parts then have the
 * tolerance of ordinary parts.
 */
public final class DrawingFit {
    /** Relative standard tolerance of crossover parts once their value is known; common practice, no source. */
    static final double PART_TOLERANCE = 0.05;

    /** Factors on the resonances of the box and its cones, and of the horn driver, at which fits start. */
    private static final double[] BOX_STARTS = {0.65, 0.8, 1, 1.25, 1.5};

    private static final double[] HORN_STARTS = {0.75, 1, 1.33};
    /** What a fitted drawing is believed to miss, smooth over frequency; common practice, no source. */
    private static final double FITTED_SIGMA = 0.01;

    private final ModelBook book;
    private final CabinetModel model;
    private final TestPoint point;
    private final Knowledge guessed;

    /**
     * Prepares a drawing.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     */
    public DrawingFit(ModelBook book, CabinetModel model, TestPoint point) {
        this.book = book;
        this.model = model;
        this.point = point;
        this.guessed = guessed(book, model, point);
    }

    /**
     * What a drawing that was not fitted says of a test point: every value may be wrong by what a guess may be wrong by.
     *
     * @param book models
     * @param model cabinet model
     * @param point test point with terminals
     * @return knowledge with wide spreads
     */
    public static Knowledge guessed(ModelBook book, CabinetModel model, TestPoint point) {
        Knowledge nominal = Knowledge.nominal(book, model, point);
        double[] spread = nominal.prior().spread();
        for (int i = 0; i < spread.length; i++) {
            spread[i] = Math.max(
                    spread[i], guess(nominal.circuit().parameters().get(i).id()));
        }
        return new Knowledge(nominal.circuit(), new CircuitPrior(nominal.prior().mean(), spread), nominal.offsets());
    }

    /** By how much (standard deviation of the logarithm) a value guessed from a plate is wrong; common practice, no source. */
    private static double guess(String parameterId) {
        String quantity = parameterId.substring(parameterId.lastIndexOf('.') + 1);
        return switch (quantity) {
            case "Re" -> 0.1;
            case "K" -> 0.4;
            case "n" -> 0.06;
            case "fs", "tuning" -> 0.25;
            case "value" -> 0.25;
            case "Qms", "Z0", "stiffness", "winding" -> 0.4;
            case "QL" -> 0.3;
            case "contact", "temperature", "climate", "creep", "friction", "esrOhm" -> 0;
            default -> quantity.startsWith("f") ? 0.2 : 0.4;
        };
    }

    /**
     * Values of one unit.
     *
     * @param x parameter vector of the point's healthy circuit
     */
    public record Unit(double[] x) {}

    /**
     * Fits the drawing to one unit.
     *
     * @param unit unit with an impedance curve
     * @return its values
     */
    public Unit fit(ReferenceTeacher.Unit unit) {
        CircuitPrior prior = guessed.at(unit.ambientCelsius()).prior();
        CircuitFit.Result best = null;
        for (double box : BOX_STARTS) {
            for (double horn : HORN_STARTS) {
                CircuitFit.Result fit = CircuitFit.fit(
                        guessed.circuit(), guessed.dataOf(unit.impedance()), prior, start(guessed, box, horn));
                best = best == null || fit.chi2() < best.chi2() ? fit : best;
            }
        }
        Knowledge sharp =
                new Knowledge(guessed.circuit(), prior, ModelOffsets.none(FITTED_SIGMA, Knowledge.UNTAUGHT_GRAIN));
        return new Unit(CircuitFit.fit(sharp.circuit(), sharp.dataOf(unit.impedance()), prior, best.x())
                .x());
    }

    /**
     * The book with the medians of units as nominal values of the point's parts, drivers and boxes.
     *
     * @param units fitted units, at least one
     * @return another book
     * @throws IllegalArgumentException if there is no unit
     */
    public ModelBook redrawn(List<Unit> units) {
        if (units.isEmpty()) {
            throw new IllegalArgumentException(
                    "the drawing of " + model.code() + " needs at least one known-good unit");
        }
        Map<String, Double> values = new HashMap<>();
        List<CircuitParameter> parameters = guessed.circuit().parameters();
        for (int p = 0; p < parameters.size(); p++) {
            int place = p;
            double[] sorted =
                    units.stream().mapToDouble(u -> u.x()[place]).sorted().toArray();
            int middle = sorted.length / 2;
            double median = sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
            values.put(parameters.get(p).id(), median);
        }
        return new Redrawn(values).book();
    }

    private static double[] start(Knowledge guessed, double box, double horn) {
        double[] x = guessed.start();
        for (int i = 0; i < x.length; i++) {
            String id = guessed.circuit().parameters().get(i).id();
            if (id.endsWith(".fs") || id.endsWith(".tuning") || id.endsWith(".stiffness")) {
                x[i] += StrictMath.log(box);
            } else if (id.matches(".*\\.f\\d+")) {
                x[i] += StrictMath.log(horn);
            }
        }
        return x;
    }

    /** The book with other values. */
    private final class Redrawn {
        private final Map<String, Double> carried;

        Redrawn(Map<String, Double> carried) {
            this.carried = carried;
        }

        private double value(String id) {
            return rounded(StrictMath.exp(carried.get(id)));
        }

        ModelBook book() {
            Map<String, DriverModel> drivers = new TreeMap<>();
            for (String position : point.positionCodes()) {
                DriverModel driver = book.driverModelAt(model, position);
                // Equal drivers are one model: the last one's values are as good as the first one's.
                drivers.put(driver.code(), driver(driver, positionsOf(driver)));
            }
            List<TestPoint> points = new ArrayList<>(model.testPoints());
            points.replaceAll(p -> p.code().equals(point.code()) ? point(p) : p);
            List<Enclosure> boxes = new ArrayList<>(model.enclosures());
            boxes.replaceAll(b -> carried.containsKey(b.id() + ".stiffness") ? box(b, drivers) : b);
            CabinetModel changed = new CabinetModel(
                    model.code(),
                    model.name(),
                    model.feed(),
                    model.widthMm(),
                    model.heightMm(),
                    model.massKg(),
                    model.positions(),
                    boxes,
                    points);
            List<CabinetModel> cabinets = new ArrayList<>(book.cabinetModels());
            cabinets.replaceAll(c -> c.code().equals(model.code()) ? changed : c);
            List<DriverModel> all = new ArrayList<>(book.driverModels());
            all.replaceAll(d -> drivers.getOrDefault(d.code(), d));
            return new ModelBook(cabinets, all);
        }

        private List<String> positionsOf(DriverModel driver) {
            return point.positionCodes().stream()
                    .filter(p -> book.driverModelAt(model, p).code().equals(driver.code()))
                    .toList();
        }

        /** Geometric mean over equal drivers: one curve cannot tell whose value is whose. */
        private double mean(List<String> positions, String quantity) {
            double sum = 0;
            for (String position : positions) {
                sum += carried.get(position + "." + quantity);
            }
            return rounded(StrictMath.exp(sum / positions.size()));
        }

        private DriverModel driver(DriverModel old, List<String> at) {
            List<MotionalResonance> resonances = new ArrayList<>();
            if (old.kind() == DriverKind.CONE) {
                double q = mean(at, "Qms");
                resonances.add(new MotionalResonance(mean(at, "fs"), q, rounded(q * mean(at, "Z0"))));
            } else {
                for (int k = 1; k <= old.resonances().size(); k++) {
                    double q = mean(at, "Q" + k);
                    resonances.add(new MotionalResonance(mean(at, "f" + k), q, rounded(q * mean(at, "Z" + k))));
                }
            }
            return new DriverModel(
                    old.code(),
                    old.name(),
                    old.kind(),
                    old.ratedImpedanceOhm(),
                    mean(at, "Re"),
                    mean(at, "K"),
                    Math.max(0.3, Math.min(1, mean(at, "n"))),
                    resonances,
                    old.polarityMark(),
                    old.diaphragmPartNumbers());
        }

        private TestPoint point(TestPoint old) {
            return new TestPoint(
                    old.code(),
                    old.kind(),
                    old.contacts(),
                    old.positionCodes(),
                    old.ratedImpedanceOhm(),
                    old.levelMask(),
                    old.elements().stream().map(this::element).toList());
        }

        private NetworkElement element(NetworkElement old) {
            if (old instanceof NetworkElement.Resistor r) {
                return new NetworkElement.Resistor(
                        r.id(), r.nodeA(), r.nodeB(), value(r.id() + ".value"), tolerance(r.toleranceRel()));
            }
            if (old instanceof NetworkElement.Inductor l) {
                return new NetworkElement.Inductor(
                        l.id(),
                        l.nodeA(),
                        l.nodeB(),
                        value(l.id() + ".value"),
                        value(l.id() + ".winding"),
                        tolerance(l.toleranceRel()));
            }
            if (old instanceof NetworkElement.Capacitor c) {
                return new NetworkElement.Capacitor(
                        c.id(),
                        c.nodeA(),
                        c.nodeB(),
                        value(c.id() + ".value"),
                        rounded(Math.max(0, carried.get(c.id() + ".esrOhm"))),
                        tolerance(c.toleranceRel()));
            }
            return old;
        }

        private double tolerance(double drawn) {
            return Math.min(drawn, PART_TOLERANCE);
        }

        private Enclosure box(Enclosure old, Map<String, DriverModel> drivers) {
            String first = old.positionCodes().get(0);
            DriverModel driver = drivers.get(book.driverModelAt(model, first).code());
            MotionalResonance motion = driver.resonances().get(0);
            // The inverse of what the compiler does with a compliance ratio.
            double ratio = StrictMath.exp(carried.get(old.id() + ".stiffness"))
                    * (motion.peakResistanceOhm() / motion.q())
                    * old.positionCodes().size()
                    / (2 * Math.PI * motion.frequencyHz());
            boolean vented = carried.containsKey(old.id() + ".tuning");
            return new Enclosure(
                    old.id(),
                    old.kind(),
                    old.positionCodes(),
                    rounded(ratio),
                    vented ? value(old.id() + ".tuning") : old.tuningHz(),
                    value(old.id() + ".QL"));
        }
    }

    /** Four significant digits: finer than units differ, and readable in the book. */
    private static double rounded(double value) {
        return Double.parseDouble(String.format(java.util.Locale.ROOT, "%.3e", value));
    }
}
