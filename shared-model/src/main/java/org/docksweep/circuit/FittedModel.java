package org.docksweep.circuit;

import java.util.List;

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

    private final MeasuringModel model;
    private final PointCircuit circuit;
    private final double[] theta;
    private final double[][] covariance;
    private final double reducedChi2;

    FittedModel(MeasuringModel model, double[] theta, double[][] covariance, double reducedChi2) {
        this.model = model;
        this.circuit = model.circuit();
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
        CircuitSlopes z = model.at(frequencyHz, theta);
        return StrictMath.hypot(z.resistanceOhm(), z.reactanceOhm());
    }

    /**
     * A parameter of the circuit.
     *
     * @param id parameter id
     * @return its value: exp of what is carried, itself for contact (ohm) and temperatures (kelvin); null without such a parameter
     */
    public Estimate parameter(String id) {
        int index = circuit.indexOf(id);
        if (index < 0) {
            return null;
        }
        double u = Math.sqrt(covariance[index][index]);
        return List.of("temperature", "climate", "contact").contains(id)
                ? new Estimate(theta[index], u)
                : new Estimate(StrictMath.exp(theta[index]), StrictMath.exp(theta[index]) * u);
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
        return new Estimate(StrictMath.exp(logarithm), StrictMath.exp(logarithm) * uncertainty(slopes));
    }

    /**
     * Mechanical Q of a cone at its free resonance, with the loss that creep makes there:
     * {@code 1 / (1/Qms + sin(beta pi/2))}.
     *
     * @param position driver position with a cone
     * @return Q
     */
    public Estimate mechanicalQ(String position) {
        int index = circuit.indexOf(position + ".Qms");
        double beta = theta[model.creepIndex()];
        double viscous = StrictMath.exp(-theta[index]);
        double q = 1 / (viscous + StrictMath.sin(beta * Math.PI / 2));
        double[] slopes = new double[theta.length];
        slopes[index] = q * q * viscous;
        slopes[model.creepIndex()] = -q * q * Math.PI / 2 * StrictMath.cos(beta * Math.PI / 2);
        return new Estimate(q, uncertainty(slopes));
    }

    /**
     * Resistance between the terminals at DC and at the temperature met, plug contact included.
     *
     * @return resistance in ohm, or null when a capacitor blocks DC
     */
    public Estimate dcResistanceOhm() {
        CircuitSlopes z = model.at(NEARLY_DC_HZ, theta);
        if (StrictMath.hypot(z.resistanceOhm(), z.reactanceOhm()) > BLOCKED_OHM) {
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
        double above = frequencyHz * StrictMath.exp(STEP);
        double below = frequencyHz * StrictMath.exp(-STEP);
        double[] slopesAbove = logSlopes(above);
        double[] slopesBelow = logSlopes(below);
        double curvature = (StrictMath.log(magnitudeOhm(above))
                        - 2 * StrictMath.log(magnitudeOhm(frequencyHz))
                        + StrictMath.log(magnitudeOhm(below)))
                / (STEP * STEP);
        double[] slopes = new double[theta.length];
        for (int i = 0; i < slopes.length; i++) {
            slopes[i] = -(slopesAbove[i] - slopesBelow[i]) / (2 * STEP) / curvature;
        }
        return new Estimate(frequencyHz, frequencyHz * uncertainty(slopes));
    }

    private double[] logSlopes(double frequencyHz) {
        CircuitSlopes z = model.at(frequencyHz, theta);
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
}
