package org.docksweep.circuit;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleBiFunction;

/**
 * The circuit behind a test point, ready to be evaluated: impedance and its logarithmic slopes by every parameter.
 *
 * <p>Not safe for use by two threads at once: it keeps its working arrays.
 */
public final class PointCircuit {
    /** Conductance from every node to the return terminal, which keeps parts behind an open element solvable. */
    private static final double LEAK_S = 1e-11;

    private final List<CircuitParameter> parameters;
    private final Term[] terms;
    private final int inputNode;
    private final int contact;
    private final ComplexSystem system;
    private final List<Mover> movers;
    private double contactOhm;

    /**
     * Where the voltage that a moving coil induces is found.
     *
     * @param positionCode driver
     * @param nodes its nodes: of a cone those of its motion, of a horn driver those of its whole coil
     * @param weights their weights
     * @param coil coil of a horn driver, whose motion is a part of it; null for a cone
     */
    record Mover(String positionCode, int[] nodes, double[] weights, CoilTerm coil) {}

    PointCircuit(
            List<CircuitParameter> parameters,
            List<Term> terms,
            int nodes,
            int inputNode,
            int contact,
            List<Mover> movers) {
        this.parameters = List.copyOf(parameters);
        this.terms = terms.toArray(Term[]::new);
        this.inputNode = inputNode;
        this.contact = contact;
        this.system = new ComplexSystem(nodes);
        this.movers = List.copyOf(movers);
    }

    /**
     * Parameters in the order of every vector this circuit takes. A circuit with a fault has the healthy circuit's
     * parameters first, in the same order, then its own severity, if it has one.
     *
     * @return parameters
     */
    public List<CircuitParameter> parameters() {
        return parameters;
    }

    /**
     * Nominal parameter vector.
     *
     * @return a new array
     */
    public double[] nominal() {
        return parameters.stream().mapToDouble(CircuitParameter::nominal).toArray();
    }

    /**
     * Index of a parameter.
     *
     * @param id parameter id
     * @return index, or -1 when the circuit has no such parameter
     */
    public int indexOf(String id) {
        for (int i = 0; i < parameters.size(); i++) {
            if (parameters.get(i).id().equals(id)) {
                return i;
            }
        }
        return -1;
    }

    /**
     * Complex impedance at one frequency.
     *
     * @param frequencyHz frequency in hertz
     * @param x parameter vector
     * @return real and imaginary part in ohm
     */
    public double[] impedanceOhm(double frequencyHz, double[] x) {
        double[] logarithm = new double[2];
        prepare(x);
        evaluate(frequencyHz, logarithm, null, null);
        double magnitude = StrictMath.exp(logarithm[0]);
        return new double[] {magnitude * StrictMath.cos(logarithm[1]), magnitude * StrictMath.sin(logarithm[1])};
    }

    /**
     * How far each driver moves per volt at the contacts, times its force factor: the voltage its motion induces is {@code Bl v}, hence
     * {@code Bl x = |u| / w}. Driven at one frequency after the other, its largest travel is where this times the voltage played is largest,
     * whatever Bl is.
     *
     * @param frequencyHz frequencies in hertz
     * @param x parameter vector
     * @return by driver position: Bl x per volt, in volt seconds per volt
     */
    public Map<String, double[]> travelPerVolt(double[] frequencyHz, double[] x) {
        return perVolt(frequencyHz, x, (mover, omega) -> {
            double across = across(mover);
            double induced = mover.coil() == null
                    ? across
                    : across * mover.coil().admittanceS() * mover.coil().motionalOhm();
            return induced / omega;
        });
    }

    private double across(Mover mover) {
        return Math.hypot(
                system.projectRe(mover.nodes(), mover.weights()), system.projectIm(mover.nodes(), mover.weights()));
    }

    private Map<String, double[]> perVolt(
            double[] frequencyHz, double[] x, ToDoubleBiFunction<Mover, Double> ofUnitCurrent) {
        Map<String, double[]> all = new LinkedHashMap<>();
        movers.forEach(mover -> all.put(mover.positionCode(), new double[frequencyHz.length]));
        double[] logarithm = new double[2];
        prepare(x);
        for (int i = 0; i < frequencyHz.length; i++) {
            evaluate(frequencyHz[i], logarithm, null, null);
            double ohm = StrictMath.exp(logarithm[0]);
            for (Mover mover : movers) {
                all.get(mover.positionCode())[i] =
                        ofUnitCurrent.applyAsDouble(mover, 2 * Math.PI * frequencyHz[i]) / ohm;
            }
        }
        return all;
    }

    /**
     * Takes a parameter vector in, for all calls of {@link #evaluate} that follow.
     *
     * @param x parameter vector
     */
    void prepare(double[] x) {
        for (Term term : terms) {
            term.prepare(x);
        }
        contactOhm = x[contact];
    }

    /**
     * Natural logarithm of the impedance and its slopes at the prepared parameter vector.
     *
     * @param frequencyHz frequency in hertz
     * @param logarithm receives ln |Z| and the phase in radian
     * @param slopeRe receives d ln|Z| / dx, or null when not wanted
     * @param slopeIm receives d phase / dx, or null when not wanted
     */
    void evaluate(double frequencyHz, double[] logarithm, double[] slopeRe, double[] slopeIm) {
        double omega = 2 * Math.PI * frequencyHz;
        double logOmega = StrictMath.log(omega);
        system.clear(LEAK_S);
        for (Term term : terms) {
            term.evaluate(omega, logOmega);
            system.add(term.nodes(), term.weights(), term.yRe, term.yIm);
        }
        system.solveUnitCurrentInto(inputNode);
        double zRe = system.solutionRe(inputNode) + contactOhm;
        double zIm = system.solutionIm(inputNode);
        double norm = zRe * zRe + zIm * zIm;
        logarithm[0] = 0.5 * StrictMath.log(norm);
        logarithm[1] = StrictMath.atan2(zIm, zRe);
        if (slopeRe == null) {
            return;
        }
        java.util.Arrays.fill(slopeRe, 0);
        java.util.Arrays.fill(slopeIm, 0);
        slopeRe[contact] = zRe / norm;
        slopeIm[contact] = -zIm / norm;
        for (Term term : terms) {
            addSlopes(term, zRe, zIm, norm, slopeRe, slopeIm);
        }
    }

    /** dZ = -(g^T v)^2 dy, and d ln Z = dZ / Z. */
    private void addSlopes(Term term, double zRe, double zIm, double norm, double[] slopeRe, double[] slopeIm) {
        int[] p = term.parameters();
        if (p.length == 0) {
            return;
        }
        double vRe = system.projectRe(term.nodes(), term.weights());
        double vIm = system.projectIm(term.nodes(), term.weights());
        double squareRe = -(vRe * vRe - vIm * vIm);
        double squareIm = -2 * vRe * vIm;
        double factorRe = (squareRe * zRe + squareIm * zIm) / norm;
        double factorIm = (squareIm * zRe - squareRe * zIm) / norm;
        for (int i = 0; i < p.length; i++) {
            slopeRe[p[i]] += factorRe * term.slopeRe[i] - factorIm * term.slopeIm[i];
            slopeIm[p[i]] += factorRe * term.slopeIm[i] + factorIm * term.slopeRe[i];
        }
        int byWeight = term.weightParameter();
        if (byWeight >= 0) {
            // dZ = -2 y (g^T v) (dg^T v)
            double dRe = system.projectRe(term.nodes(), term.weightSlopes());
            double dIm = system.projectIm(term.nodes(), term.weightSlopes());
            double productRe = -2 * (vRe * dRe - vIm * dIm);
            double productIm = -2 * (vRe * dIm + vIm * dRe);
            double zSlopeRe = productRe * term.yRe - productIm * term.yIm;
            double zSlopeIm = productRe * term.yIm + productIm * term.yRe;
            slopeRe[byWeight] += (zSlopeRe * zRe + zSlopeIm * zIm) / norm;
            slopeIm[byWeight] += (zSlopeIm * zRe - zSlopeRe * zIm) / norm;
        }
    }
}
