package org.docksweep.circuit;

import java.util.Arrays;

/**
 * Normal equations of data and prior, {@code (belief A + P) step = belief g + p}: A and g of the data, P and p of independent
 * normal priors. Symmetric and positive definite thanks to the prior.
 */
final class NormalEquations {
    private static final int TILE_ROWS = 2;
    private static final int TILE_COLUMNS = 4;

    private final int n;
    private final int width;
    /** A by rows of {@link #width(int)}, of which the lower triangle is used; then g, and the data's chi squared behind it. */
    private final double[] a;

    private final double[] right;
    private final double[] lower;
    private double priorChi2;

    NormalEquations(int n) {
        this.n = n;
        this.width = width(n);
        this.a = new double[width * width];
        this.right = new double[n];
        this.lower = new double[n * n];
    }

    /** Places of a row: slopes, miss, and zeros up to whole tiles. */
    static int width(int n) {
        return (n + TILE_COLUMNS) / TILE_COLUMNS * TILE_COLUMNS;
    }

    void clear() {
        Arrays.fill(a, 0);
    }

    /**
     * Adds rows of slopes, each with its miss behind them, 0 where there is none, and zeros up to {@link #width(int)}. Tile by tile of
     * the matrix, whose sums stay in registers over all rows.
     *
     * @param rows rows, one behind the other
     * @param count number of rows
     * @param weight weight of every row; null for a weight of -1 each
     */
    void add(double[] rows, int count, double[] weight) {
        for (int i = 0; i < width; i += TILE_ROWS) {
            for (int j = 0; j <= i; j += TILE_COLUMNS) {
                addTile(rows, count, weight, i, j);
            }
        }
    }

    private void addTile(double[] rows, int count, double[] weight, int i, int j) {
        double a00 = 0;
        double a01 = 0;
        double a02 = 0;
        double a03 = 0;
        double a10 = 0;
        double a11 = 0;
        double a12 = 0;
        double a13 = 0;
        int at = 0;
        for (int k = 0; k < count; k++) {
            double w = weight == null ? -1 : weight[k];
            double r0 = w * rows[at + i];
            double r1 = w * rows[at + i + 1];
            double c0 = rows[at + j];
            double c1 = rows[at + j + 1];
            double c2 = rows[at + j + 2];
            double c3 = rows[at + j + 3];
            a00 += r0 * c0;
            a01 += r0 * c1;
            a02 += r0 * c2;
            a03 += r0 * c3;
            a10 += r1 * c0;
            a11 += r1 * c1;
            a12 += r1 * c2;
            a13 += r1 * c3;
            at += width;
        }
        int first = i * width + j;
        a[first] += a00;
        a[first + 1] += a01;
        a[first + 2] += a02;
        a[first + 3] += a03;
        int second = first + width;
        a[second] += a10;
        a[second + 1] += a11;
        a[second + 2] += a12;
        a[second + 3] += a13;
    }

    void setPriorChi2(double chi2) {
        priorChi2 = chi2;
    }

    double dataChi2() {
        return a[n * width + n];
    }

    /** The data's matrix A, both triangles. */
    double[][] information() {
        double[][] full = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                full[i][j] = a[i * width + j];
                full[j][i] = full[i][j];
            }
        }
        return full;
    }

    double priorChi2() {
        return priorChi2;
    }

    double cost(double belief) {
        return belief * dataChi2() + priorChi2;
    }

    /** Cholesky factor of the matrix with its diagonal raised by a share. */
    void factor(double belief, double damping, double[] mean, double[] spread, double[] x) {
        for (int i = 0; i < n; i++) {
            double precision = 1 / (spread[i] * spread[i]);
            right[i] = belief * a[n * width + i] + precision * (mean[i] - x[i]);
            int row = i * n;
            for (int j = 0; j <= i; j++) {
                double sum = belief * a[i * width + j];
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

    /** Square roots of the diagonal of the inverse: column by column of {@code L^-1}, which begins on the diagonal. */
    double[] standardDeviations() {
        double[] deviations = new double[n];
        double[] column = new double[n];
        for (int c = 0; c < n; c++) {
            double squares = 0;
            for (int i = c; i < n; i++) {
                double sum = i == c ? 1 : 0;
                for (int k = c; k < i; k++) {
                    sum -= lower[i * n + k] * column[k];
                }
                column[i] = sum / lower[i * n + i];
                squares += column[i] * column[i];
            }
            deviations[c] = Math.sqrt(squares);
        }
        return deviations;
    }
}
