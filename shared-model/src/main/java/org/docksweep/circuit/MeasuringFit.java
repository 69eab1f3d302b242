package org.docksweep.circuit;

import java.util.Arrays;
import java.util.List;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * A fit for measuring, where {@link CircuitFit} is one for deciding. It believes the curve to its own uncertainty, and the
 * circuit only as far as physics goes: what a driver's inductance law misses is carried by a series chain of resistors and
 * inductors in parallel, {@code sum c_k j f / (f_k + j f)}, which vanishes at DC and so leaves the resistance alone.
 *
 * <p>Minimises {@code sum |Z - Z_model|^2 / sigma^2 + sum ((theta - mean) / spread)^2} by Levenberg and Marquardt, theta being
 * the circuit's parameters followed by the c_k. The inverse of the normal matrix is the covariance of theta.
 */
public final class MeasuringFit {
    private static final int ITERATIONS = 12;
    private static final double CONVERGED = 1e-5;
    /** What the physics of the circuit misses of a real cabinet, relative; common practice, no source. */
    private static final double MODEL_RELATIVE = 1.5e-3;
    /** Spread of one link of the chain as a share of the rated impedance; common practice, no source. */
    private static final double LINK_SHARE = 0.05;
    /** The nominal priors are for healthy units; a measurement must be free to find a sick one. */
    private static final double PRIOR_WIDENED = 2;

    private final PointCircuit circuit;
    private final double[] cornersHz;
    private final double[] mean;
    private final double[] spread;

    private MeasuringFit(PointCircuit circuit, CircuitPrior prior, double[] cornersHz, double ratedOhm) {
        this.circuit = circuit;
        this.cornersHz = cornersHz;
        int n = circuit.parameters().size();
        this.mean = Arrays.copyOf(prior.mean(), n + cornersHz.length);
        this.spread = Arrays.copyOf(prior.spread(), n + cornersHz.length);
        for (int i = 0; i < n; i++) {
            spread[i] *= PRIOR_WIDENED;
        }
        Arrays.fill(spread, n, spread.length, LINK_SHARE * ratedOhm);
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
        int count = 1 + (int) Math.floor(Math.log(toHz / fromHz) / Math.log(2));
        double[] hz = new double[count];
        Arrays.setAll(hz, k -> fromHz * Math.pow(2, k));
        return hz;
    }

    private FittedModel run(ImpedanceCurve curve, double[] start) {
        double[] theta = Arrays.copyOf(start, mean.length);
        Normal normal = build(curve, theta);
        double damping = 1e-4;
        for (int iteration = 0; iteration < ITERATIONS; iteration++) {
            double[] step = normal.step(damping);
            double[] next = theta.clone();
            for (int i = 0; i < next.length; i++) {
                next[i] += Math.max(-spread[i], Math.min(spread[i], step[i]));
            }
            Normal trial = build(curve, next);
            if (trial.cost < normal.cost) {
                boolean converged = normal.cost - trial.cost < CONVERGED * normal.cost;
                theta = next;
                normal = trial;
                damping = Math.max(1e-9, damping / 10);
                if (converged) {
                    break;
                }
            } else {
                damping *= 10;
            }
        }
        List<CircuitParameter> parameters = circuit.parameters();
        double freedom = Math.max(1, 2.0 * curve.size() - parameters.size());
        return new FittedModel(
                circuit, cornersHz, theta, normal.covariance(), normal.dataChi2 / freedom);
    }

    private Normal build(ImpedanceCurve curve, double[] theta) {
        int n = theta.length;
        Normal normal = new Normal(n);
        FittedModel model = new FittedModel(circuit, cornersHz, theta, null, 0);
        double[] frequencyHz = curve.frequencyHz();
        double[] re = curve.resistanceOhm();
        double[] im = curve.reactanceOhm();
        double[] uncertainty = curve.standardUncertaintyOhm();
        for (int i = 0; i < frequencyHz.length; i++) {
            CircuitSlopes z = model.slopesAt(frequencyHz[i]);
            double sigma = Math.hypot(uncertainty[i], MODEL_RELATIVE * Math.hypot(re[i], im[i]));
            normal.add(z.resistanceSlopes(), re[i] - z.resistanceOhm(), sigma);
            normal.add(z.reactanceSlopes(), im[i] - z.reactanceOhm(), sigma);
        }
        normal.dataChi2 = normal.cost;
        for (int i = 0; i < n; i++) {
            double weight = 1 / (spread[i] * spread[i]);
            double miss = mean[i] - theta[i];
            normal.matrix[i][i] += weight;
            normal.gradient[i] += weight * miss;
            normal.cost += weight * miss * miss;
        }
        return normal;
    }

    /** Normal equations; positive definite thanks to the prior. */
    private static final class Normal {
        final double[][] matrix;
        final double[] gradient;
        double cost;
        double dataChi2;

        Normal(int n) {
            matrix = new double[n][n];
            gradient = new double[n];
        }

        void add(double[] slopes, double miss, double sigma) {
            double weight = 1 / (sigma * sigma);
            cost += weight * miss * miss;
            for (int i = 0; i < slopes.length; i++) {
                double si = weight * slopes[i];
                gradient[i] += si * miss;
                for (int k = 0; k <= i; k++) {
                    matrix[i][k] += si * slopes[k];
                }
            }
        }

        private RealMatrix symmetric(double damping) {
            double[][] full = new double[matrix.length][matrix.length];
            for (int i = 0; i < matrix.length; i++) {
                for (int k = 0; k <= i; k++) {
                    full[i][k] = matrix[i][k] * (i == k ? 1 + damping : 1);
                    full[k][i] = full[i][k];
                }
            }
            return MatrixUtils.createRealMatrix(full);
        }

        double[] step(double damping) {
            return decomposed(damping)
                    .getSolver()
                    .solve(MatrixUtils.createRealVector(gradient))
                    .toArray();
        }

        double[][] covariance() {
            return decomposed(0).getSolver().getInverse().getData();
        }

        private CholeskyDecomposition decomposed(double damping) {
            return new CholeskyDecomposition(symmetric(damping), 1e-9, 0);
        }
    }
}
