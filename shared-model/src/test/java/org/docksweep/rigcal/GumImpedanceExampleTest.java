package org.docksweep.rigcal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.stat.correlation.Covariance;
import org.junit.jupiter.api.Test;

/**
 * JCGM 100:2008 (GUM) annex H.2: resistance, reactance and impedance from simultaneous readings of voltage, current and
 * phase. Shows that Z = V/I with correlated inputs is propagated as the guide does it; the same rule carries the cross
 * densities of voltage and current noise in the impedance estimate.
 */
class GumImpedanceExampleTest {
    private static final String FILE = "gum_h2_impedance.csv";

    /** Half a unit of the last unrounded digit kept in the check values. */
    private static final double UNROUNDED = 1e-7;

    @Test
    void givesThePublishedUncertaintiesAndNeedsTheCorrelations() {
        double[] v = CheckData.column(FILE, 1);
        double[] i = CheckData.column(FILE, 2);
        double[] phi = CheckData.column(FILE, 3);
        double[][] rows = new double[v.length][];
        double[] mean = new double[3];
        for (int k = 0; k < v.length; k++) {
            rows[k] = new double[] {v[k], i[k] / 1000, phi[k]};
            for (int c = 0; c < 3; c++) {
                mean[c] += rows[k][c] / v.length;
            }
        }
        RealMatrix covariance = new Covariance(rows).getCovarianceMatrix().scalarMultiply(1.0 / v.length);
        double z = mean[0] / mean[1];
        double r = z * Math.cos(mean[2]);
        double x = z * Math.sin(mean[2]);
        assertThat(r).isCloseTo(127.73216993, within(1e-6));
        assertThat(x).isCloseTo(219.84651191, within(1e-6));
        assertThat(z).isCloseTo(254.25970195, within(1e-6));
        double[][] slopes = {
            {r / mean[0], -r / mean[1], -x}, {x / mean[0], -x / mean[1], r}, {z / mean[0], -z / mean[1], 0}
        };
        RealMatrix jacobian = MatrixUtils.createRealMatrix(slopes);
        RealMatrix out = jacobian.multiply(covariance).multiply(jacobian.transpose());
        assertThat(Math.sqrt(out.getEntry(0, 0))).isCloseTo(0.07107141, within(UNROUNDED));
        assertThat(Math.sqrt(out.getEntry(1, 1))).isCloseTo(0.29558168, within(UNROUNDED));
        assertThat(Math.sqrt(out.getEntry(2, 2))).isCloseTo(0.23633613, within(UNROUNDED));
        assertThat(correlation(out, 0, 1)).isCloseTo(-0.58842978, within(UNROUNDED));
        assertThat(correlation(out, 0, 2)).isCloseTo(-0.48525922, within(UNROUNDED));
        assertThat(correlation(out, 1, 2)).isCloseTo(0.99251165, within(UNROUNDED));

        RealMatrix uncorrelated = MatrixUtils.createRealDiagonalMatrix(
                new double[] {covariance.getEntry(0, 0), covariance.getEntry(1, 1), covariance.getEntry(2, 2)});
        RealMatrix wrong = jacobian.multiply(uncorrelated).multiply(jacobian.transpose());
        assertThat(Math.sqrt(wrong.getEntry(0, 0))).isCloseTo(0.1945, within(0.5e-4));
        assertThat(Math.sqrt(wrong.getEntry(1, 1))).isCloseTo(0.2009, within(0.5e-4));
    }

    private static double correlation(RealMatrix m, int a, int b) {
        return m.getEntry(a, b) / Math.sqrt(m.getEntry(a, a) * m.getEntry(b, b));
    }
}
