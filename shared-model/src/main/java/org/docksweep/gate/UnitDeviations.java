package org.docksweep.gate;

import org.hipparchus.exception.MathIllegalArgumentException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * How far the units of a reference deviate from their mean, parameter by parameter, where healthy ones are believed to vary by certain
 * variances: {@code e_u = V (g_u - mean g)}, {@code V = (H + D^-1)^-1}.
 */
final class UnitDeviations {
    private final UnitScatter scatter;
    private final double[][] centred;
    private final double freedom;

    /**
     * What is believed and seen of the variance of a parameter.
     *
     * @param squares degrees of freedom times the variance of e, over the variance expected before anything was seen
     * @param freedom degrees of freedom that the units really say something with: none where their fits only repeat what was believed
     */
    record Seen(double[] squares, double[] freedom) {}

    /**
     * Prepares.
     *
     * @param scatter what the units say, at least {@link SharedScatter#LEAST_UNITS} of them
     */
    UnitDeviations(UnitScatter scatter) {
        this.scatter = scatter;
        int units = scatter.pulls().length;
        int n = scatter.tolerance().length;
        this.freedom = FewUnits.freedom(units);
        this.centred = new double[units][n];
        for (int p = 0; p < n; p++) {
            double mean = 0;
            for (double[] pull : scatter.pulls()) {
                mean += pull[p] / units;
            }
            for (int u = 0; u < units; u++) {
                centred[u][p] = scatter.pulls()[u][p] - mean;
            }
        }
    }

    /**
     * What the units show under a belief.
     *
     * @param rho variance of each parameter believed, over the one expected
     * @throws IllegalArgumentException if the information is none that curves can have
     */
    Seen under(double[] rho) {
        int n = rho.length;
        double[] spread = new double[n];
        for (int p = 0; p < n; p++) {
            spread[p] = scatter.tolerance()[p] * Math.sqrt(rho[p]);
        }
        RealMatrix scaled = MatrixUtils.createRealMatrix(n, n);
        for (int i = 0; i < n; i++) {
            for (int j = 0; j <= i; j++) {
                double entry = spread[i] * scatter.information()[i][j] * spread[j] + (i == j ? 1 : 0);
                scaled.setEntry(i, j, entry);
                scaled.setEntry(j, i, entry);
            }
        }
        RealMatrix inverse = inverse(scaled);
        double[][] deviations = new double[centred.length][n];
        for (int u = 0; u < centred.length; u++) {
            double[] pulled = new double[n];
            for (int p = 0; p < n; p++) {
                pulled[p] = spread[p] * centred[u][p];
            }
            deviations[u] = inverse.operate(pulled);
        }
        double[] squares = new double[n];
        double[] said = new double[n];
        for (int p = 0; p < n; p++) {
            double[] column = new double[deviations.length];
            for (int u = 0; u < column.length; u++) {
                column[u] = deviations[u][p];
            }
            // the deviations are in believed spreads here
            squares[p] = freedom * rho[p] * FewUnits.robustVariance(column);
            said[p] = freedom * Math.max(0, 1 - inverse.getEntry(p, p));
        }
        return new Seen(squares, said);
    }

    /** What curves say of parameters cannot be less than nothing. */
    private static RealMatrix inverse(RealMatrix matrix) {
        try {
            return new CholeskyDecomposition(matrix).getSolver().getInverse();
        } catch (MathIllegalArgumentException e) {
            throw new IllegalArgumentException(
                    "scatter of units: information must be positive, as that of curves is; teach the reference again",
                    e);
        }
    }
}
