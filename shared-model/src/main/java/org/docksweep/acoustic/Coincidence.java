package org.docksweep.acoustic;

import java.util.Arrays;

/**
 * How often two sweeps show something in the same cell of the same period, whatever its phase: each period counts with
 * the cell in which the lesser of the two sweeps stands out most. What chance would give is read from the same data,
 * with the cells of one sweep turned against those of the other.
 */
final class Coincidence {
    /** Turns smaller than this would still find what is wider than a cell. */
    private static final int LEAST_TURN = 4;

    /** Standard deviation of one period's count under noise alone (simulated normal cells), at least. */
    private static final double ONE_PERIOD = 0.45;

    private Coincidence() {}

    /**
     * Deviation from chance.
     *
     * @param scores standard normal scores by sweep, period and cell, all cut off at the same height
     * @return standard deviations; 0 for a single sweep
     */
    static double score(double[][][] scores) {
        if (scores.length < 2) {
            return 0;
        }
        int periods = scores[0].length;
        int cells = scores[0][0].length;
        // Of more than two sweeps the best pair counts: one may have been disturbed.
        double best = Double.NEGATIVE_INFINITY;
        for (int a = 0; a < scores.length; a++) {
            for (int b = a + 1; b < scores.length; b++) {
                best = Math.max(best, pair(scores[a], scores[b], periods, cells));
            }
        }
        return best;
    }

    private static double pair(double[][] one, double[][] other, int periods, int cells) {
        double met = met(one, other, 0);
        double[] chance = new double[cells - 2 * LEAST_TURN + 1];
        Arrays.setAll(chance, i -> met(one, other, LEAST_TURN + i));
        double mean = Arrays.stream(chance).average().orElseThrow();
        double square = Arrays.stream(chance).map(c -> (c - mean) * (c - mean)).sum() / (chance.length - 1);
        return (met - mean) / Math.max(Math.sqrt(square), ONE_PERIOD / Math.sqrt(periods));
    }

    /** Mean over the periods of the best cell's lesser score. */
    private static double met(double[][] one, double[][] other, int turn) {
        double sum = 0;
        int cells = one[0].length;
        for (int j = 0; j < one.length; j++) {
            double best = Double.NEGATIVE_INFINITY;
            for (int m = 0; m < cells; m++) {
                int n = m + turn < cells ? m + turn : m + turn - cells;
                best = Math.max(best, Math.min(one[j][m], other[j][n]));
            }
            sum += best;
        }
        return sum / one.length;
    }
}
