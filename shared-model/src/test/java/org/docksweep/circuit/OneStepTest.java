package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;
import org.junit.jupiter.api.Test;

/** The first look at a hypothesis against the step worked out in full, in the space of the parameters, by a linear-algebra library. */
class OneStepTest {
    private static final int POINTS = 12;

    private final ModelBook book = SampleCabinets.twoWay();
    private final CabinetModel model = book.cabinetModels().get(0);
    private final PointCircuit circuit =
            CircuitCompiler.compile(book, model, model.testPoints().get(0), CircuitFault.NONE);
    private final CircuitPrior prior = CircuitPrior.nominal(circuit.parameters());

    @Test
    void reachesTheChiSquaredOfTheFullStep() {
        CurveData data = CurveData.of(shifted(), ModelOffsets.none(0.01, 0.003), 1);
        for (double doubt : new double[] {1, 5, 8}) {
            double full = fullStep(data, 1 / (doubt * doubt));
            assertThat(full).isGreaterThan(0.1);
            assertThat(CircuitFit.chi2AfterOneStep(circuit, data, prior, doubt)).isCloseTo(full, within(1e-6 * full));
        }
    }

    /** The curve with every parameter one standard deviation off. */
    private ImpedanceCurve shifted() {
        double[] x = prior.mean().clone();
        for (int j = 0; j < x.length; j++) {
            x[j] += (j % 2 == 0 ? 1 : -1) * prior.spread()[j];
        }
        double[][] curve = new double[4][POINTS];
        for (int i = 0; i < POINTS; i++) {
            curve[0][i] = 30 * Math.pow(2, i * 0.75);
            double[] ohm = circuit.impedanceOhm(curve[0][i], x);
            curve[1][i] = ohm[0];
            curve[2][i] = ohm[1];
            curve[3][i] = 0.01;
        }
        return new ImpedanceCurve(curve[0], curve[1], curve[2], curve[3]);
    }

    private double fullStep(CurveData data, double belief) {
        int n = prior.mean().length;
        double[][] slopes = new double[2 * POINTS][n];
        double[] miss = new double[2 * POINTS];
        double[][] covariance = new double[2 * POINTS][2 * POINTS];
        double[] logarithm = new double[2];
        circuit.prepare(prior.mean());
        for (int i = 0; i < POINTS; i++) {
            circuit.evaluate(data.frequencyHz()[i], logarithm, slopes[i], slopes[POINTS + i]);
            miss[i] = data.logOhm()[i] - logarithm[0];
            miss[POINTS + i] = Math.IEEEremainder(data.phaseRad()[i] - logarithm[1], 2 * Math.PI);
            for (int k = 0; k < POINTS; k++) {
                covariance[i][k] = data.discrepancy().covariance(i, k);
                covariance[POINTS + i][POINTS + k] = covariance[i][k];
            }
        }
        RealMatrix trust = new LUDecomposition(MatrixUtils.createRealMatrix(covariance))
                .getSolver()
                .getInverse()
                .scalarMultiply(belief);
        RealMatrix j = MatrixUtils.createRealMatrix(slopes);
        RealVector r = MatrixUtils.createRealVector(miss);
        RealMatrix normal = j.transpose().multiply(trust).multiply(j);
        for (int k = 0; k < n; k++) {
            normal.addToEntry(k, k, 1 / (prior.spread()[k] * prior.spread()[k]));
        }
        RealVector right = j.transpose().operate(trust.operate(r));
        return r.dotProduct(trust.operate(r))
                - right.dotProduct(new LUDecomposition(normal).getSolver().solve(right));
    }
}
