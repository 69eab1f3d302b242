package org.docksweep.circuit;

import java.util.Arrays;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * A fit for measuring, where {@link CircuitFit} is one for deciding. It believes the curve to its own uncertainty, and the
 * circuit only as far as physics goes: creep of suspensions and what a driver's inductance law misses are free
 * ({@link MeasuringModel}).
 *
 * <p>Minimises {@code sum |Z - Z_model|^2 / sigma^2 + sum ((theta - mean) / spread)^2} by Levenberg and Marquardt, theta being
 * the circuit's parameters, creep and chain. The inverse of the normal matrix is the covariance of theta.
 */
public final class MeasuringFit {
    private static final LevenbergMarquardt.Settings SETTINGS = new LevenbergMarquardt.Settings(25, 1e-5, 1e-4, 1e-9);
    /** Longest step, in spreads: beyond it the slopes mean little. */
    private static final double STEP_SPREADS = 3;
    /** What the physics of the circuit misses of a real cabinet, relative; common practice, no source. */
    private static final double MODEL_RELATIVE = 1.5e-3;
    /** Spread of one link of the chain as a share of the rated impedance; common practice, no source. */
    private static final double LINK_SHARE = 0.05;
    /** Exponent of suspension creep and its spread; common practice, no source. */
    private static final double CREEP = 0.03;

    private static final double CREEP_SPREAD = 0.03;
    /** Q of a port's friction and the spread of its logarithm; common practice, no source. */
    private static final double PORT_Q = 50;

    private static final double PORT_Q_SPREAD = 0.7;
    /** Where a coil's inductance stops to grow towards DC, and the spread of its logarithm; common practice, no source. */
    private static final double BYPASS_HZ = 50;

    private static final double BYPASS_SPREAD = 1.0;
    /** The nominal priors are for healthy units; a measurement must be free to find a sick one. */
    private static final double PRIOR_WIDENED = 2;

    private final MeasuringModel model;
    private final double[] mean;
    private final double[] spread;

    private MeasuringFit(PointCircuit circuit, CircuitPrior prior, double[] cornersHz, double ratedOhm) {
        this.model = new MeasuringModel(circuit, cornersHz);
        int n = circuit.parameters().size();
        this.mean = Arrays.copyOf(prior.mean(), model.size());
        this.spread = Arrays.copyOf(prior.spread(), model.size());
        for (int i = 0; i < n; i++) {
            spread[i] *= PRIOR_WIDENED;
        }
        mean[model.creepIndex()] = CREEP;
        spread[model.creepIndex()] = CREEP_SPREAD;
        mean[model.portIndex()] = StrictMath.log(PORT_Q);
        spread[model.portIndex()] = PORT_Q_SPREAD;
        mean[model.bypassIndex()] = StrictMath.log(BYPASS_HZ);
        spread[model.bypassIndex()] = BYPASS_SPREAD;
        Arrays.fill(spread, model.firstLink(), spread.length, LINK_SHARE * ratedOhm);
    }

    /**
     * Fits.
     *
     * @param circuit circuit
     * @param curve calibrated impedance
     * @param prior prior of the circuit's parameters; widened twice
     * @param start start vector of the circuit's parameters, from a fit that has already found the resonances
     * @param withoutNetwork whether drivers sit at the terminals with nothing between; only then the chain is used
     * @param ratedOhm rated impedance of the point, greater than 0
     * @return the fitted model
     */
    public static FittedModel fit(
            PointCircuit circuit,
            ImpedanceCurve curve,
            CircuitPrior prior,
            double[] start,
            boolean withoutNetwork,
            double ratedOhm) {
        double[] grid = curve.frequencyHz();
        double[] corners = withoutNetwork ? octavesWithin(4 * grid[0], 4 * grid[grid.length - 1]) : new double[0];
        return new MeasuringFit(circuit, prior, corners, ratedOhm).run(curve, start);
    }

    private static double[] octavesWithin(double fromHz, double toHz) {
        int count = 1 + (int) Math.floor(StrictMath.log(toHz / fromHz) / StrictMath.log(2));
        double[] hz = new double[count];
        Arrays.setAll(hz, k -> fromHz * StrictMath.pow(2, k));
        return hz;
    }

    private FittedModel run(ImpedanceCurve curve, double[] start) {
        double[] theta = Arrays.copyOf(start, mean.length);
        theta[model.creepIndex()] = CREEP;
        theta[model.portIndex()] = StrictMath.log(PORT_Q);
        theta[model.bypassIndex()] = StrictMath.log(BYPASS_HZ);
        LevenbergMarquardt.Found found = LevenbergMarquardt.minimise(
                new LevenbergMarquardt.Problem() {
                    @Override
                    public WeightedNormal at(double[] x) {
                        return build(curve, x);
                    }

                    @Override
                    public double shortening(double[] from, double[] step) {
                        double longest = 1;
                        for (int i = 0; i < step.length; i++) {
                            longest = Math.max(longest, Math.abs(step[i]) / (STEP_SPREADS * spread[i]));
                        }
                        return longest;
                    }
                },
                theta,
                SETTINGS);
        double freedom = Math.max(1, 2.0 * curve.size() - theta.length);
        return new FittedModel(
                model, found.x(), found.normal().covariance(), found.normal().dataChi2() / freedom);
    }

    private WeightedNormal build(ImpedanceCurve curve, double[] theta) {
        int n = theta.length;
        WeightedNormal normal = new WeightedNormal(n);
        double[] frequencyHz = curve.frequencyHz();
        double[] re = curve.resistanceOhm();
        double[] im = curve.reactanceOhm();
        double[] uncertainty = curve.standardUncertaintyOhm();
        for (int i = 0; i < frequencyHz.length; i++) {
            CircuitSlopes z = model.at(frequencyHz[i], theta);
            double sigma = StrictMath.hypot(uncertainty[i], MODEL_RELATIVE * StrictMath.hypot(re[i], im[i]));
            normal.add(z.resistanceSlopes(), re[i] - z.resistanceOhm(), sigma);
            normal.add(z.reactanceSlopes(), im[i] - z.reactanceOhm(), sigma);
        }
        for (int i = 0; i < n; i++) {
            normal.addPrior(i, mean[i] - theta[i], spread[i]);
        }
        return normal;
    }
}
