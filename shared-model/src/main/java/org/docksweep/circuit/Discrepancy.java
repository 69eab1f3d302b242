package org.docksweep.circuit;

import java.util.Arrays;

/**
 * Covariance of a curve's misses: {@code C = N + B S B^T}, N the diagonal of what differs from point to point (noise, grain of the
 * model), B smooth bumps over ln f, S the diagonal of their variances. A circuit model's error is smooth, so neighbours share
 * it: taken for independent it would either be counted many times over, or hide small faults. The same C holds for ln|Z| and
 * for the phase.
 *
 * <p>The bumps are cubic B-splines (de Boor, A Practical Guide to Splines, 1978): bell curves that end, so a point lies under
 * four of them, {@code L L^T = S^-1 + B^T N^-1 B} has three diagonals below its main one, and a product in Woodbury's form,
 * {@code C^-1 = N^-1 - G^T G} with {@code G = L^-1 B^T N^-1}, costs seven multiplications per point and column.
 */
final class Discrepancy {
    /**
     * Distance of bumps. Their correlation then falls like {@code exp(-d^2 / 4)}, d in quarters of an octave: the variance of
     * a cubic B-spline is a third of its distance squared.
     */
    private static final double DISTANCE_OCTAVES = Math.sqrt(3) / 4;

    private static final int ORDER = 4;

    private final int points;
    private final int bumps;
    private final double[] weight;
    private final int[] firstBump;
    /** B, the four bumps over each point, times the smooth part's standard deviation there: S is the unit matrix then. */
    private final double[] basis;
    /** B^T N^-1, the four bumps over each point. */
    private final double[] weighed;
    /** L, by rows of four that end on the diagonal. */
    private final double[] lower;

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
        firstBump = new int[points];
        basis = basis(frequencyHz, smooth);
        bumps = Arrays.stream(smooth).allMatch(s -> s == 0) ? 0 : firstBump[points - 1] + ORDER;
        weighed = new double[points * ORDER];
        lower = new double[bumps * ORDER];
        if (bumps > 0) {
            collect();
            factor();
        }
        for (int a = 0; a < bumps; a++) {
            logs += 2 * StrictMath.log(lower[a * ORDER + ORDER - 1]);
        }
        logDeterminant = logs;
    }

    private double[] basis(double[] frequencyHz, double[] smooth) {
        double[] basis = new double[points * ORDER];
        double octave = StrictMath.log(2) * DISTANCE_OCTAVES;
        for (int i = 0; i < points; i++) {
            double place = StrictMath.log(frequencyHz[i] / frequencyHz[0]) / octave;
            int before = (int) Math.floor(place);
            double t = place - before;
            double u = 1 - t;
            double[] four = {
                u * u * u / 6, (3 * t * t * t - 6 * t * t + 4) / 6, (3 * u * u * u - 6 * u * u + 4) / 6, t * t * t / 6
            };
            double squares = 0;
            for (double value : four) {
                squares += value * value;
            }
            firstBump[i] = before;
            for (int m = 0; m < ORDER; m++) {
                basis[i * ORDER + m] = four[m] * smooth[i] / Math.sqrt(squares);
            }
        }
        return basis;
    }

    /** Fills B^T N^-1, and the diagonals of S^-1 + B^T N^-1 B. */
    private void collect() {
        for (int a = 0; a < bumps; a++) {
            lower[a * ORDER + ORDER - 1] = 1;
        }
        for (int i = 0; i < points; i++) {
            for (int m = 0; m < ORDER; m++) {
                double value = basis[i * ORDER + m] * weight[i];
                weighed[i * ORDER + m] = value;
                for (int k = 0; k <= m; k++) {
                    lower[(firstBump[i] + m) * ORDER + ORDER - 1 - m + k] += value * basis[i * ORDER + k];
                }
            }
        }
    }

    /** Cholesky's factor of a matrix of seven diagonals, in place. */
    private void factor() {
        for (int a = 0; a < bumps; a++) {
            int rowA = a * ORDER + ORDER - 1 - a;
            int from = Math.max(0, a - ORDER + 1);
            for (int b = from; b <= a; b++) {
                int rowB = b * ORDER + ORDER - 1 - b;
                double sum = lower[rowA + b];
                for (int k = from; k < b; k++) {
                    sum -= lower[rowA + k] * lower[rowB + k];
                }
                lower[rowA + b] = a == b ? Math.sqrt(sum) : sum / lower[rowB + b];
            }
        }
    }

    int bumps() {
        return bumps;
    }

    /** Diagonal of N^-1. */
    double weight(int point) {
        return weight[point];
    }

    /** The same, all points; not a copy. */
    double[] weights() {
        return weight;
    }

    /** An element of C. */
    double covariance(int point, int other) {
        double sum = point == other ? 1 / weight[point] : 0;
        int from = Math.max(firstBump[point], firstBump[other]);
        int to = Math.min(firstBump[point], firstBump[other]) + ORDER;
        for (int bump = from; bump < to; bump++) {
            sum += basis[point * ORDER + bump - firstBump[point]] * basis[other * ORDER + bump - firstBump[other]];
        }
        return sum;
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
        if (bumps == 0) {
            return;
        }
        Arrays.fill(product, 0, bumps * width, 0);
        for (int i = 0; i < points; i++) {
            spread(rows, i * width, i * ORDER, product, firstBump[i] * width, width);
        }
        for (int a = 0; a < bumps; a++) {
            int to = a * width;
            for (int b = Math.max(0, a - ORDER + 1); b < a; b++) {
                add(product, b * width, -lower[a * ORDER + ORDER - 1 - a + b], product, to, width);
            }
            double diagonal = lower[a * ORDER + ORDER - 1];
            for (int j = 0; j < width; j++) {
                product[to + j] /= diagonal;
            }
        }
    }

    /** Adds a row to the four bumps over its point. */
    private void spread(double[] rows, int at, int bumpsOfPoint, double[] product, int first, int width) {
        double w0 = weighed[bumpsOfPoint];
        double w1 = weighed[bumpsOfPoint + 1];
        double w2 = weighed[bumpsOfPoint + 2];
        double w3 = weighed[bumpsOfPoint + 3];
        int second = first + width;
        int third = second + width;
        int fourth = third + width;
        for (int j = 0; j < width; j++) {
            double value = rows[at + j];
            if (value != 0) {
                product[first + j] += w0 * value;
                product[second + j] += w1 * value;
                product[third + j] += w2 * value;
                product[fourth + j] += w3 * value;
            }
        }
    }

    private static void add(double[] from, int at, double factor, double[] to, int place, int width) {
        for (int j = 0; j < width; j++) {
            to[place + j] += factor * from[at + j];
        }
    }
}
