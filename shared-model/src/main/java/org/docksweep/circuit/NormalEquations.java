package org.docksweep.circuit;

import java.util.Arrays;

/**
 * Normal equations of data and prior, {@code (belief A + P) step = belief g + p}: A and g of the data, P and p of independent
 * normal priors. Symmetric and positive definite thanks to the prior.
 */
final class NormalEquations {
    private final int n;
    private final double[] a;
    private final double[] g;
    private final double[] right;
    private final double[] lower;
    private double dataChi2;
    private double priorChi2;

    NormalEquations(int n) {
        this.n = n;
        this.a = new double[n * n];
        this.g = new double[n];
        this.right = new double[n];
        this.lower = new double[n * n];
    }

    void clear() {
        Arrays.fill(a, 0);
        Arrays.fill(g, 0);
        dataChi2 = 0;
    }

    /** Adds a row of slopes, read from an array at a place, with its miss. */
    void add(double[] slopes, int from, double miss, double weight) {
        for (int i = 0; i < n; i++) {
            double si = slopes[from + i] * weight;
            if (si == 0) {
                continue;
            }
            g[i] += si * miss;
            int row = i * n;
            for (int j = 0; j <= i; j++) {
                a[row + j] += si * slopes[from + j];
            }
        }
        dataChi2 += weight * miss * miss;
    }

    void setPriorChi2(double chi2) {
        priorChi2 = chi2;
    }

    double dataChi2() {
        return dataChi2;
    }

    double priorChi2() {
        return priorChi2;
    }

    double cost(double belief) {
        return belief * dataChi2 + priorChi2;
    }

    /** Cholesky factor of the matrix with its diagonal raised by a share. */
    void factor(double belief, double damping, double[] mean, double[] spread, double[] x) {
        for (int i = 0; i < n; i++) {
            double precision = 1 / (spread[i] * spread[i]);
            right[i] = belief * g[i] + precision * (mean[i] - x[i]);
            int row = i * n;
            for (int j = 0; j <= i; j++) {
                double sum = belief * a[row + j];
                if (i == j) {
                    sum = (sum + precision) * (1 + damping);
                }
                int other = j * n;
                for (int k = 0; k < j; k++) {
                    sum -= lower[row + k] * lower[other + k];
                }
                lower[row + j] = i == j ? Math.sqrt(Math.max(1e-300, sum)) : sum / lower[other + j];
            }
        }
    }

    double[] solve() {
        return back(forward(right));
    }

    /** By how much the full step lowers chi squared if all were linear. */
    double gain() {
        double sum = 0;
        for (double v : forward(right)) {
            sum += v * v;
        }
        return sum;
    }

    double[] forward(double[] of) {
        double[] y = of.clone();
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < i; k++) {
                y[i] -= lower[i * n + k] * y[k];
            }
            y[i] /= lower[i * n + i];
        }
        return y;
    }

    private double[] back(double[] y) {
        for (int i = n - 1; i >= 0; i--) {
            for (int k = i + 1; k < n; k++) {
                y[i] -= lower[k * n + i] * y[k];
            }
            y[i] /= lower[i * n + i];
        }
        return y;
    }

    double logDeterminant() {
        double sum = 0;
        for (int i = 0; i < n; i++) {
            sum += 2 * StrictMath.log(lower[i * n + i]);
        }
        return sum;
    }

    double[] standardDeviations() {
        double[] deviations = new double[n];
        for (int i = 0; i < n; i++) {
            double[] unit = new double[n];
            unit[i] = 1;
            double sum = 0;
            for (double v : forward(unit)) {
                sum += v * v;
            }
            deviations[i] = Math.sqrt(sum);
        }
        return deviations;
    }
}
