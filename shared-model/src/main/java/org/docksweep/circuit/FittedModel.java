package org.docksweep.circuit;

import java.util.Arrays;

/**
 * A circuit with the parameters found for one measured curve and their covariance. Numbers are read off the model with
 * {@link Estimate standard uncertainties} by the law of propagation (JCGM 100:2008, 5.2.2), correlations included.
 */
public final class FittedModel {
    /** Low enough for every inductance and motion to be nothing, in hertz. */
    private static final double NEARLY_DC_HZ = 1e-4;
    /** A point blocked by a capacitor shows more than this at {@link #NEARLY_DC_HZ}, in ohm. */
    private static final double BLOCKED_OHM = 1e3;
    /** Relative step of the slopes against frequency. */
    private static final double STEP = 1e-3;

    private final PointCircuit circuit;
    private final double[] cornersHz;
    private final double[] theta;
    private final double[][] covariance;
    private final double reducedChi2;

    FittedModel(
            PointCircuit circuit, double[] cornersHz, double[] theta, double[][] covariance, double reducedChi2) {
        this.circuit = circuit;
        this.cornersHz = cornersHz;
        this.theta = theta;
        this.covariance = covariance;
        this.reducedChi2 = reducedChi2;
    }

    /**
     * A value with its standard uncertainty.
     *
     * @param value value
     * @param standardUncertainty standard uncertainty in the same unit, at least 0
     */
    public record Estimate(double value, double standardUncertainty) {
        /**
         * The estimate times a factor.
         *
         * @param factor factor
         * @return scaled estimate
         */
        public Estimate times(double factor) {
            return new Estimate(value * factor, standardUncertainty * Math.abs(factor));
        }
    }

    /**
     * Weighted squared residuals per degree of freedom; near 1 when model and uncertainties are right.
     *
     * @return reduced chi squared
     */
    public double reducedChi2() {
        return reducedChi2;
    }

    /**
     * Magnitude of the model.
     *
     * @param frequencyHz frequency in hertz, greater than 0
     * @return |Z| in ohm
     */
    public double magnitudeOhm(double frequencyHz) {
        double[] z = circuit.impedanceOhm(frequencyHz, Arrays.copyOf(theta, circuit.parameters().size()));
        for (int k = 0; k < cornersHz.length; k++) {
            double ratio = frequencyHz / cornersHz[k];
            double c = theta[circuit.parameters().size() + k] / (1 + ratio * ratio);
            z[0] += c * ratio * ratio;
            z[1] += c * ratio;
        }
        return Math.hypot(z[0], z[1]);
    }

    /**
     * A parameter of the circuit.
     *
     * @param id parameter id
     * @return its value: exp of what is carried, kelvin above 20 C for the temperature; null without such a parameter
     */
    public Estimate parameter(String id) {
        int index = circuit.indexOf(id);
        if (index < 0) {
            return null;
        }
        double u = Math.sqrt(covariance[index][index]);
        return id.equals("temperature")
                ? new Estimate(theta[index], u)
                : new Estimate(Math.exp(theta[index]), Math.exp(theta[index]) * u);
    }

    /**
     * A product of powers of parameters, {@code prod p_i^e_i}, such as a Q.
     *
     * @param ids parameter ids, all of the circuit and none the temperature
     * @param exponents exponents
     * @return the product
     */
    public Estimate product(String[] ids, double... exponents) {
        double[] slopes = new double[theta.length];
        double logarithm = 0;
        for (int i = 0; i < ids.length; i++) {
            int index = circuit.indexOf(ids[i]);
            logarithm += exponents[i] * theta[index];
            slopes[index] += exponents[i];
        }
        return new Estimate(Math.exp(logarithm), Math.exp(logarithm) * uncertainty(slopes));
    }

    /**
     * Resistance between the terminals at DC and at the temperature met, plug contact included.
     *
     * @return resistance in ohm, or null when a capacitor blocks DC
     */
    public Estimate dcResistanceOhm() {
        CircuitSlopes z = slopesAt(NEARLY_DC_HZ);
        if (Math.hypot(z.resistanceOhm(), z.reactanceOhm()) > BLOCKED_OHM) {
            return null;
        }
        return new Estimate(z.resistanceOhm(), uncertainty(z.resistanceSlopes()));
    }

    /**
     * Magnitude with its uncertainty.
     *
     * @param frequencyHz frequency in hertz, greater than 0
     * @return |Z| in ohm
     */
    public Estimate magnitudeWithUncertainty(double frequencyHz) {
        double magnitude = magnitudeOhm(frequencyHz);
        double[] slopes = logSlopes(frequencyHz);
        return new Estimate(magnitude, magnitude * uncertainty(slopes));
    }

    /**
     * Uncertainty of the place of an extremum of |Z|: at {@code g(f, theta) = d ln|Z|/d ln f = 0} the place moves by
     * {@code -(dg/dtheta) / (dg/d ln f)}.
     *
     * @param frequencyHz the extremum
     * @return its place in hertz
     */
    public Estimate placeOfExtremum(double frequencyHz) {
        double above = frequencyHz * Math.exp(STEP);
        double below = frequencyHz * Math.exp(-STEP);
        double[] slopesAbove = logSlopes(above);
        double[] slopesBelow = logSlopes(below);
        double curvature = (Math.log(magnitudeOhm(above))
                        - 2 * Math.log(magnitudeOhm(frequencyHz))
                        + Math.log(magnitudeOhm(below)))
                / (STEP * STEP);
        double[] slopes = new double[theta.length];
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = -(slopesAbove[i] - slopesBelow[i]) / (2 * STEP) / curvature;
        }
        return new Estimate(frequencyHz, frequencyHz * uncertainty(slopes));
    }

    private double[] logSlopes(double frequencyHz) {
        CircuitSlopes z = slopesAt(frequencyHz);
        double norm = z.resistanceOhm() * z.resistanceOhm() + z.reactanceOhm() * z.reactanceOhm();
        double[] slopes = new double[theta.length];
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] =
                    (z.resistanceOhm() * z.resistanceSlopes()[i] + z.reactanceOhm() * z.reactanceSlopes()[i]) / norm;
        }
        return slopes;
    }

    private double uncertainty(double[] slopes) {
        double sum = 0;
        for (int i = 0; i < slopes.length; i++) {
            for (int k = 0; k < slopes.length; k++) {
                sum += slopes[i] * covariance[i][k] * slopes[k];
            }
        }
        return Math.sqrt(Math.max(0, sum));
    }

    /** Impedance of circuit and chain with the slopes by all of theta. */
    CircuitSlopes slopesAt(double frequencyHz) {
        int n = circuit.parameters().size();
        CircuitSlopes bare = CircuitSlopes.at(circuit, frequencyHz, Arrays.copyOf(theta, n));
        double re = bare.resistanceOhm();
        double im = bare.reactanceOhm();
        double[] bySlopes = Arrays.copyOf(bare.resistanceSlopes(), theta.length);
        double[] byReactance = Arrays.copyOf(bare.reactanceSlopes(), theta.length);
        for (int k = 0; k < cornersHz.length; k++) {
            double ratio = frequencyHz / cornersHz[k];
            double norm = 1 + ratio * ratio;
            bySlopes[n + k] = ratio * ratio / norm;
            byReactance[n + k] = ratio / norm;
            re += theta[n + k] * bySlopes[n + k];
            im += theta[n + k] * byReactance[n + k];
        }
        return new CircuitSlopes(re, im, bySlopes, byReactance);
    }
}
