package org.docksweep.circuit;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * Chi squared that one linear step from the prior means reaches, {@code min over d of b (r - J d)^T C^-1 (r - J d) + d^T P d}, b the
 * belief in the data and {@code P^-1 = S} the prior's variances. It equals {@code r^T (C / b + J S J^T)^-1 r} (the matrix inversion
 * lemma): one matrix of the size of the data, which are few here, instead of one of the size of the parameters.
 */
final class OneStep {
    private final int points;
    private final double[][] scaledSlopes;
    private final double[] miss;
    private final Discrepancy discrepancy;

    /**
     * Reads the slopes at the prior means.
     *
     * @param circuit circuit
     * @param data measured curve
     * @param prior prior of all parameters of the circuit
     */
    OneStep(PointCircuit circuit, CurveData data, CircuitPrior prior) {
        double[] mean = prior.mean();
        double[] spread = prior.spread();
        points = data.size();
        discrepancy = data.discrepancy();
        scaledSlopes = new double[2 * points][mean.length];
        miss = new double[2 * points];
        double[] logarithm = new double[2];
        circuit.prepare(mean);
        for (int i = 0; i < points; i++) {
            double[] log = scaledSlopes[i];
            double[] phase = scaledSlopes[points + i];
            circuit.evaluate(data.frequencyHz()[i], logarithm, log, phase);
            miss[i] = data.logOhm()[i] - logarithm[0];
            miss[points + i] = Math.IEEEremainder(data.phaseRad()[i] - logarithm[1], 2 * Math.PI);
            for (int j = 0; j < spread.length; j++) {
                log[j] *= spread[j];
                phase[j] *= spread[j];
            }
        }
    }

    /**
     * Chi squared of data and prior together.
     *
     * @param belief factor on the inverse of the data's covariance, greater than 0
     * @return chi squared after the step
     */
    double chi2(double belief) {
        RealMatrix covariance = MatrixUtils.createRealMatrix(2 * points, 2 * points);
        for (int i = 0; i < 2 * points; i++) {
            for (int k = 0; k <= i; k++) {
                double sum = i < points == k < points ? discrepancy.covariance(i % points, k % points) / belief : 0;
                sum += product(scaledSlopes[i], scaledSlopes[k]);
                covariance.setEntry(i, k, sum);
                covariance.setEntry(k, i, sum);
            }
        }
        RealVector right = MatrixUtils.createRealVector(miss);
        return right.dotProduct(
                new CholeskyDecomposition(covariance, 1e-9, 0).getSolver().solve(right));
    }

    private static double product(double[] one, double[] other) {
        double sum = 0;
        double second = 0;
        int j = 0;
        for (; j + 1 < one.length; j += 2) {
            sum += one[j] * other[j];
            second += one[j + 1] * other[j + 1];
        }
        return j < one.length ? sum + second + one[j] * other[j] : sum + second;
    }
}
