package org.docksweep.circuit;

import java.util.Arrays;

/**
 * Covariance of a curve's misses: {@code C = N + B S B^T}, N the diagonal of what differs from point to point (noise, grain of the
 * model), B smooth bumps over ln f, S the diagonal of their variances. A circuit model's error is smooth, so neighbours share
 * it: taken for independent it would either be counted many times over, or hide small faults. The same C holds for ln|Z| and
 * for the phase.
 *
 * <p>Everything is kept in Woodbury's form, {@code C^-1 = N^-1 - G^T G} with {@code G = L^-1 B^T N^-1} and
 * {@code L L^T = S^-1 + B^T N^-1 B}: a product costs points times bumps.
 */
final class Discrepancy {
    /** Bumps in an octave; each reaches as far as its neighbours, so that variance is even between them. */
    static final double BUMPS_PER_OCTAVE = 4;

    private final int points;
    private final int bumps;
    private final double[] weight;
    private final double[] g;
    private final double logDeterminant;

    /**
     * Makes the covariance.
     *
     * @param frequencyHz rising frequencies
     * @param grain standard deviation of what differs from point to point, greater than 0
     * @param smooth standard deviation of the smooth part at each point, not negative
     */
    Discrepancy(double[] frequencyHz, double[] grain, double[] smooth) {
        points = frequencyHz.length;
        weight = new double[points];
        double logs = 0;
        for (int i = 0; i < points; i++) {
            weight[i] = 1 / (grain[i] * grain[i]);
            logs -= StrictMath.log(weight[i]);
        }
        double[][] basis = basis(frequencyHz, smooth);
        bumps = basis.length;
        double[] lower = new double[bumps * bumps];
        for (int a = 0; a < bumps; a++) {
            for (int b = 0; b <= a; b++) {
                double sum = a == b ? 1 : 0;
                for (int i = 0; i < points; i++) {
                    sum += basis[a][i] * basis[b][i] * weight[i];
                }
                for (int k = 0; k < b; k++) {
                    sum -= lower[a * bumps + k] * lower[b * bumps + k];
                }
                lower[a * bumps + b] = a == b ? Math.sqrt(sum) : sum / lower[b * bumps + b];
            }
            logs += 2 * StrictMath.log(lower[a * bumps + a]);
        }
        logDeterminant = logs;
        g = new double[bumps * points];
        for (int i = 0; i < points; i++) {
            for (int a = 0; a < bumps; a++) {
                double value = basis[a][i] * weight[i];
                for (int k = 0; k < a; k++) {
                    value -= lower[a * bumps + k] * g[k * points + i];
                }
                g[a * points + i] = value / lower[a * bumps + a];
            }
        }
    }

    /** Bumps times the smooth part's standard deviation: S is the unit matrix then. */
    private static double[][] basis(double[] frequencyHz, double[] smooth) {
        double octave = StrictMath.log(2);
        double first = StrictMath.log(frequencyHz[0]) / octave * BUMPS_PER_OCTAVE;
        double last = StrictMath.log(frequencyHz[frequencyHz.length - 1]) / octave * BUMPS_PER_OCTAVE;
        int count = Arrays.stream(smooth).allMatch(s -> s == 0) ? 0 : 3 + (int) Math.round(last - first);
        double[][] basis = new double[count][frequencyHz.length];
        for (int i = 0; i < frequencyHz.length; i++) {
            double place = StrictMath.log(frequencyHz[i]) / octave * BUMPS_PER_OCTAVE - first;
            double squares = 0;
            for (int k = 0; k < count; k++) {
                double distance = place - (k - 1);
                basis[k][i] = StrictMath.exp(-0.5 * distance * distance);
                squares += basis[k][i] * basis[k][i];
            }
            for (int k = 0; k < count; k++) {
                basis[k][i] *= smooth[i] / Math.sqrt(squares);
            }
        }
        return basis;
    }

    int bumps() {
        return bumps;
    }

    /** Diagonal of N^-1. */
    double weight(int point) {
        return weight[point];
    }

    /** ln det C. */
    double logDeterminant() {
        return logDeterminant;
    }

    /**
     * The product G rows, with rows of one length each, one per point.
     *
     * @param rows points times width
     * @param width columns
     * @param product receives bumps times width
     */
    void multiply(double[] rows, int width, double[] product) {
        Arrays.fill(product, 0, bumps * width, 0);
        for (int a = 0; a < bumps; a++) {
            int to = a * width;
            for (int i = 0; i < points; i++) {
                double factor = g[a * points + i];
                if (Math.abs(factor) < 1e-9) {
                    continue;
                }
                int from = i * width;
                for (int j = 0; j < width; j++) {
                    product[to + j] += factor * rows[from + j];
                }
            }
        }
    }
}
