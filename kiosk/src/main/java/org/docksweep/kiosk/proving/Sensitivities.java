package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * How faults change the logarithm of the impedance at all test points of a model, and how alike two such changes are once
 * everything is allowed for that healthy units do too. The covariance of the healthy comes from drawn units
 * ({@code C = A A' / N + s^2 I}, inverted by Woodbury's formula), because resonances are far from linear.
 */
final class Sensitivities {
    private static final int HEALTHY_UNITS = 60;
    private static final double POINTS_PER_OCTAVE = 12;
    /** Error of a curve point that no healthy unit explains. */
    private static final double POINT_SIGMA = 0.012;
    /** Changes this small in standard deviations are not seen at the terminals. */
    private static final double SEEN = 1;

    private static final double LEAST_CONTACT_OHM = 0.03;
    private static final double CONTACT_SPAN_OHM = 0.12;

    private final ProvingGround ground;
    private final ProvingOptions options;
    private final CabinetModel model;
    private final double[] healthy;
    private final RealMatrix scatter;
    private final CholeskyDecomposition inner;

    Sensitivities(ProvingGround ground, ProvingOptions options, CabinetModel model) {
        this.ground = ground;
        this.options = options;
        this.model = model;
        ProvingUnit typical = ProvingHouse.goodUnit(options, model.code(), 0);
        this.healthy = logs(typical, 0.09);
        SplittableRandom random = new SplittableRandom(options.seed() + 17);
        double[][] drawn = new double[HEALTHY_UNITS][];
        double[] mean = new double[healthy.length];
        for (int n = 0; n < HEALTHY_UNITS; n++) {
            double celsius = 6 + 28 * random.nextDouble();
            ProvingUnit unit = new ProvingUnit(
                    model.code(),
                    options.seed() * 1_000_003L + 500 + n,
                    8 * random.nextDouble(),
                    null,
                    0,
                    new ProvingUnit.Climate(celsius, celsius, celsius, 45));
            drawn[n] = logs(unit, LEAST_CONTACT_OHM + CONTACT_SPAN_OHM * random.nextDouble());
            for (int i = 0; i < mean.length; i++) {
                mean[i] += drawn[n][i] / HEALTHY_UNITS;
            }
        }
        this.scatter = new Array2DRowRealMatrix(healthy.length, HEALTHY_UNITS);
        for (int n = 0; n < HEALTHY_UNITS; n++) {
            for (int i = 0; i < mean.length; i++) {
                scatter.setEntry(i, n, drawn[n][i] - mean[i]);
            }
        }
        RealMatrix gram = scatter.transposeMultiply(scatter);
        for (int n = 0; n < HEALTHY_UNITS; n++) {
            gram.addToEntry(n, n, HEALTHY_UNITS * POINT_SIGMA * POINT_SIGMA);
        }
        this.inner = new CholeskyDecomposition(gram);
    }

    /** Correlations without sign; 0 where one of the two is not seen at the terminals, 1 on the diagonal. */
    double[][] correlations(List<ProvingFault> faults) {
        List<RealVector> changes = new ArrayList<>();
        List<RealVector> weighed = new ArrayList<>();
        for (ProvingFault fault : faults) {
            RealVector change = change(fault);
            changes.add(change);
            weighed.add(weighed(change));
        }
        int n = faults.size();
        double[][] correlation = new double[n][n];
        double[] norm = new double[n];
        for (int i = 0; i < n; i++) {
            norm[i] = Math.sqrt(changes.get(i).dotProduct(weighed.get(i)));
        }
        for (int i = 0; i < n; i++) {
            correlation[i][i] = 1;
            for (int k = 0; k < i; k++) {
                boolean seen =
                        norm[i] > SEEN && norm[k] > SEEN && electrical(faults.get(i)) && electrical(faults.get(k));
                double value = seen ? Math.abs(changes.get(i).dotProduct(weighed.get(k))) / norm[i] / norm[k] : 0;
                correlation[i][k] = value;
                correlation[k][i] = value;
            }
        }
        return correlation;
    }

    private static boolean electrical(ProvingFault fault) {
        return fault.kind() != ProvingFaultKind.WAY_WEAK && fault.kind() != ProvingFaultKind.RUB;
    }

    private RealVector weighed(RealVector change) {
        RealVector shared = inner.getSolver().solve(scatter.preMultiply(change));
        return change.subtract(scatter.operate(shared)).mapDivide(POINT_SIGMA * POINT_SIGMA);
    }

    private RealVector change(ProvingFault fault) {
        ProvingUnit typical = ProvingHouse.goodUnit(options, model.code(), 0);
        ProvingUnit hurt = new ProvingUnit(
                typical.modelCode(), typical.unitSeed(), typical.ageYears(), fault, severity(fault), typical.climate());
        double[] logs = logs(hurt, 0.09);
        double[] change = new double[logs.length];
        for (int i = 0; i < change.length; i++) {
            // every second entry is a phase
            boolean phase = i % 2 == 1;
            double difference = logs[i] - healthy[i];
            change[i] = phase ? Math.IEEEremainder(difference, 2 * Math.PI) : difference;
        }
        return new ArrayRealVector(change, false);
    }

    private double severity(ProvingFault fault) {
        return switch (fault.kind()) {
            case TERMINALS_SHORTED, COIL_SHORTED -> 0.1;
            case WRONG_IMPEDANCE -> 2;
            case DRIVER_OPEN, ONE_OF_TWO_OPEN, SEIZED, PART_OPEN, PART_SHORTED -> 0;
            default -> options.severities().of(fault.kind(), Knowing.REFERENCE);
        };
    }

    /** ln|Z| and phase in turn, at all test points. */
    private double[] logs(ProvingUnit unit, double contactOhm) {
        List<double[]> parts = new ArrayList<>();
        int length = 0;
        for (TestPoint point : model.testPoints()) {
            double[] grid = grid(point);
            double[][] ohm = ground.impedanceOhm(unit, point.code(), grid);
            double[] logs = new double[2 * grid.length];
            for (int i = 0; i < grid.length; i++) {
                double real = ohm[0][i] + contactOhm;
                logs[2 * i] = Math.log(Math.hypot(real, ohm[1][i]));
                logs[2 * i + 1] = Math.atan2(ohm[1][i], real);
            }
            parts.add(logs);
            length += logs.length;
        }
        double[] all = new double[length];
        int at = 0;
        for (double[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }

    private static double[] grid(TestPoint point) {
        double low = point.levelMask().lowestHz();
        double high = Math.min(20_000, point.levelMask().highestHz());
        int count = (int) (POINTS_PER_OCTAVE * Math.log(high / low) / Math.log(2));
        double[] grid = new double[count];
        for (int i = 0; i < count; i++) {
            grid[i] = low * Math.pow(high / low, i / (count - 1.0));
        }
        return grid;
    }
}
