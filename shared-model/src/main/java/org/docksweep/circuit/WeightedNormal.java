package org.docksweep.circuit;

import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/** Normal equations of weighted misses and, where there are any, of independent normal priors. */
final class WeightedNormal {
    private final double[][] matrix;
    private final double[] gradient;
    private double cost;
    private double dataChi2;

    WeightedNormal(int n) {
        matrix = new double[n][n];
        gradient = new double[n];
    }

    /** Adds a miss with its slopes; priors come last. */
    void add(double[] slopes, double miss, double sigma) {
        double weight = 1 / (sigma * sigma);
        cost += weight * miss * miss;
        dataChi2 = cost;
        for (int i = 0; i < slopes.length; i++) {
            double si = weight * slopes[i];
            gradient[i] += si * miss;
            for (int k = 0; k <= i; k++) {
                matrix[i][k] += si * slopes[k];
            }
        }
    }

    /** Adds a prior of one parameter, by how far it is missed. */
    void addPrior(int i, double miss, double spread) {
        double weight = 1 / (spread * spread);
        matrix[i][i] += weight;
        gradient[i] += weight * miss;
        cost += weight * miss * miss;
    }

    /** Weighted sum of squares of data and priors. */
    double cost() {
        return cost;
    }

    /** The same of the data alone. */
    double dataChi2() {
        return dataChi2;
    }

    /** Solution with the diagonal raised by a share. */
    double[] step(double damping) {
        return decomposed(damping)
                .getSolver()
                .solve(MatrixUtils.createRealVector(gradient))
                .toArray();
    }

    /** Inverse of the normal matrix. */
    double[][] covariance() {
        return decomposed(0).getSolver().getInverse().getData();
    }

    private CholeskyDecomposition decomposed(double damping) {
        return new CholeskyDecomposition(symmetric(damping), 1e-9, 0);
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
}
