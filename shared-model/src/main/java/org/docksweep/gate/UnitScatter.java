package org.docksweep.gate;

import java.util.Arrays;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * What the known-good units of one reference say of how far healthy units vary. Linear near their fits, the curve of unit {@code u} says
 * {@code -1/2 d' H d + g_u' d} of the deviations d of its parameters, in the circuit's order, from where they were expected. Arrays are never
 * changed after construction and must not be changed by readers.
 *
 * @param tolerance standard deviation expected of each carried parameter before anything was seen
 * @param information H, the mean of all units; symmetric, so its lower triangle by rows
 * @param pulls g, a row per unit
 */
public record UnitScatter(double[] tolerance, double[][] information, double[][] pulls) {
    public UnitScatter {
        int n = tolerance.length;
        boolean fits = information.length == n
                && IntStream.range(0, n).allMatch(i -> information[i].length == i + 1)
                && Arrays.stream(pulls).allMatch(row -> row.length == n);
        if (!fits) {
            throw new IllegalArgumentException(
                    "scatter of units: information, a lower triangle, and pulls must be of the" + " circuit's " + n
                            + " parameters; teach the reference again");
        }
        if (pulls.length < 1 || pulls.length > ReferenceTeacher.MAX_UNITS) {
            throw new IllegalArgumentException("scatter of units: pulls must be of 1 to " + ReferenceTeacher.MAX_UNITS
                    + " units, but are of " + pulls.length + "; teach the reference again");
        }
        boolean numbers = Stream.of(information, pulls).flatMap(Arrays::stream).allMatch(UnitScatter::finite)
                && finite(tolerance);
        if (!numbers) {
            throw new IllegalArgumentException(
                    "scatter of units: information, pulls and tolerances must be numbers; teach the reference again");
        }
    }

    /**
     * From fits.
     *
     * @param tolerance standard deviation expected of each carried parameter before anything was seen
     * @param information mean information of the curves, both triangles
     * @param believed spreads the fits began with
     * @param deviations of the fits from where they began, a row per unit
     */
    static UnitScatter of(double[] tolerance, double[][] information, double[] believed, double[][] deviations) {
        int n = tolerance.length;
        double[][] pulls = new double[deviations.length][n];
        for (int u = 0; u < pulls.length; u++) {
            for (int i = 0; i < n; i++) {
                // at a fit, data pull as much as the belief pulls back
                pulls[u][i] = deviations[u][i] / (believed[i] * believed[i]);
                for (int j = 0; j < n; j++) {
                    pulls[u][i] += information[i][j] * deviations[u][j];
                }
            }
        }
        double[][] triangle = new double[n][];
        for (int i = 0; i < n; i++) {
            triangle[i] = Arrays.copyOf(information[i], i + 1);
        }
        return new UnitScatter(tolerance, triangle, pulls);
    }

    private static boolean finite(double[] row) {
        return Arrays.stream(row).allMatch(Double::isFinite);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof UnitScatter that
                && Arrays.equals(tolerance, that.tolerance)
                && Arrays.deepEquals(information, that.information)
                && Arrays.deepEquals(pulls, that.pulls);
    }

    @Override
    public int hashCode() {
        return Arrays.deepHashCode(pulls) * 31 + Arrays.hashCode(tolerance);
    }

    @Override
    public String toString() {
        return "UnitScatter[" + pulls.length + " units, " + tolerance.length + " parameters]";
    }
}
