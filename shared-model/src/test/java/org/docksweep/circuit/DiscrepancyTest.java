package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.junit.jupiter.api.Test;

/** The covariance in Woodbury's form against the plain matrix, by a linear-algebra library. */
class DiscrepancyTest {
    private static final double AGREES = 1e-8;

    private final double[] hz = new double[40];
    private final double[] grain = new double[40];
    private final double[] smooth = new double[40];

    DiscrepancyTest() {
        for (int i = 0; i < hz.length; i++) {
            hz[i] = 30 * Math.pow(2, i / 8.0);
            grain[i] = 0.001 * (1 + i % 3);
            smooth[i] = 0.004 + 0.0005 * i;
        }
    }

    @Test
    void inverseAndDeterminantAreThoseOfThePlainMatrix() {
        Discrepancy discrepancy = new Discrepancy(hz, grain, smooth);
        RealMatrix inverse = new LUDecomposition(plain(discrepancy)).getSolver().getInverse();
        Random random = new Random(7);
        for (int draw = 0; draw < 5; draw++) {
            double[] r = random.doubles(hz.length, -0.01, 0.01).toArray();
            double direct =
                    MatrixUtils.createRealVector(r).dotProduct(inverse.operate(MatrixUtils.createRealVector(r)));
            assertThat(product(discrepancy, r, r)).isCloseTo(direct, within(AGREES * direct));
        }
        double logDeterminant = 0;
        RealMatrix lower = new CholeskyDecomposition(plain(discrepancy), 1e-9, 0).getL();
        for (int i = 0; i < hz.length; i++) {
            logDeterminant += 2 * Math.log(lower.getEntry(i, i));
        }
        assertThat(discrepancy.logDeterminant()).isCloseTo(logDeterminant, within(1e-6));
    }

    /** Curves drawn from the covariance have a chi squared of one per point; taken as independent they would have not. */
    @Test
    void drawnCurvesHaveAChiSquaredOfOnePerPoint() {
        Discrepancy discrepancy = new Discrepancy(hz, grain, smooth);
        RealMatrix lower = new CholeskyDecomposition(plain(discrepancy), 1e-9, 0).getL();
        Random random = new Random(11);
        int draws = 400;
        double sum = 0;
        for (int draw = 0; draw < draws; draw++) {
            double[] white = new double[hz.length];
            Arrays.setAll(white, i -> random.nextGaussian());
            double[] r = lower.operate(white);
            sum += product(discrepancy, r, r) / hz.length / draws;
        }
        // standard deviation of the mean: root(2 / (40 * 400)) = 0.011
        assertThat(sum).isCloseTo(1, within(0.045));
    }

    /** Pointwise variance is what was asked for, everywhere between the bumps too. */
    @Test
    void smoothPartHasTheVarianceAskedFor() {
        Discrepancy discrepancy = new Discrepancy(hz, grain, smooth);
        RealMatrix c = plain(discrepancy);
        for (int i = 0; i < hz.length; i++) {
            for (int j = 0; j < hz.length; j++) {
                assertThat(discrepancy.covariance(i, j)).isCloseTo(c.getEntry(i, j), within(1e-12));
            }
            assertThat(c.getEntry(i, i)).isCloseTo(grain[i] * grain[i] + smooth[i] * smooth[i], within(1e-12));
        }
        double near = c.getEntry(10, 11) / (smooth[10] * smooth[11]);
        double far = c.getEntry(10, 30) / (smooth[10] * smooth[30]);
        assertThat(near).isGreaterThan(0.9);
        assertThat(far).isLessThan(0.01);
    }

    private static double product(Discrepancy discrepancy, double[] a, double[] b) {
        double[] ga = new double[discrepancy.bumps()];
        double[] gb = new double[discrepancy.bumps()];
        discrepancy.multiply(a, 1, ga);
        discrepancy.multiply(b, 1, gb);
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += discrepancy.weight(i) * a[i] * b[i];
        }
        for (int k = 0; k < ga.length; k++) {
            sum -= ga[k] * gb[k];
        }
        return sum;
    }

    /** C from its definition: cubic B-splines by truncated powers, scaled to the variance asked for. */
    private RealMatrix plain(Discrepancy discrepancy) {
        int n = hz.length;
        double[][] c = new double[n][n];
        double[][] bump = new double[n][discrepancy.bumps()];
        for (int i = 0; i < n; i++) {
            double place = Math.log(hz[i] / hz[0]) / Math.log(2) * 4 / Math.sqrt(3);
            double squares = 0;
            for (int k = 0; k < bump[i].length; k++) {
                bump[i][k] = spline(place - (k - 1));
                squares += bump[i][k] * bump[i][k];
            }
            for (int k = 0; k < bump[i].length; k++) {
                bump[i][k] *= smooth[i] / Math.sqrt(squares);
            }
        }
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < n; j++) {
                for (int k = 0; k < bump[i].length; k++) {
                    c[i][j] += bump[i][k] * bump[j][k];
                }
            }
            c[i][i] += grain[i] * grain[i];
        }
        return MatrixUtils.createRealMatrix(c);
    }

    /** {@code sum (-1)^k C(4, k) (d + 2 - k)+^3 / 6} (Schoenberg 1946, from memory). */
    private static double spline(double d) {
        double[] choose = {1, -4, 6, -4, 1};
        double sum = 0;
        for (int k = 0; k < choose.length; k++) {
            double power = Math.max(0, d + 2 - k);
            sum += choose[k] * power * power * power / 6;
        }
        return sum;
    }
}
