package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
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
    private static final int POINTS_PER_OCTAVE = 12;
    /** Error of a curve point that no healthy unit explains. */
    private static final double POINT_SIGMA = 0.012;
    /** Changes this small in standard deviations are not seen at the terminals. */
    private static final double SEEN = 1;

    private static final double LEAST_CONTACT_OHM = 0.03;
    private static final double CONTACT_SPAN_OHM = 0.12;

    private final ProvingOptions options;
    private final CabinetModel model;
    private final TerminalCurves terminals;
    private final double[] healthy;
    private final RealMatrix scatter;
    private final CholeskyDecomposition inner;

    Sensitivities(ProvingGround ground, ProvingOptions options, CabinetModel model) {
        this.options = options;
        this.model = model;
        this.terminals = new TerminalCurves(ground, model, POINTS_PER_OCTAVE);
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

    /** A change with its product with the inverse covariance. */
    private record Weighed(RealVector change, RealVector weighed, double norm2) {
        /** Correlation that counts the size as well: {@code 2 a'Wb / (a'Wa + b'Wb)}. */
        double likeness(Weighed other) {
            return 2 * change.dotProduct(other.weighed) / (norm2 + other.norm2);
        }

        boolean seen() {
            return norm2 > SEEN * SEEN;
        }
    }

    /**
     * How alike two faults can look, one of them as large as it occurs and the other as large as suits best. Never more than
     * their correlation.
     *
     * @param faults faults
     * @return likeness, 0 where one of the two is not seen at the terminals, 1 on the diagonal
     */
    double[][] likeness(List<ProvingFault> faults) {
        List<List<Weighed>> occurring = new ArrayList<>();
        List<List<Weighed>> possible = new ArrayList<>();
        for (ProvingFault fault : faults) {
            occurring.add(weighed(fault, occurringSeverities(fault.kind())));
            possible.add(weighed(fault, possibleSeverities(fault.kind())));
        }
        double[][] likeness = new double[faults.size()][faults.size()];
        for (int i = 0; i < faults.size(); i++) {
            likeness[i][i] = 1;
            for (int k = 0; k < i; k++) {
                double most =
                        Math.max(most(occurring.get(i), possible.get(k)), most(occurring.get(k), possible.get(i)));
                likeness[i][k] = most;
                likeness[k][i] = most;
            }
        }
        return likeness;
    }

    private List<Weighed> weighed(ProvingFault fault, double... severities) {
        List<Weighed> all = new ArrayList<>();
        for (double severity : severities) {
            RealVector change = change(fault, severity);
            RealVector weighed = weighed(change);
            Weighed one = new Weighed(change, weighed, change.dotProduct(weighed));
            if (electrical(fault) && one.seen()) {
                all.add(one);
            }
        }
        return all;
    }

    private static double most(List<Weighed> some, List<Weighed> others) {
        double most = 0;
        for (Weighed one : some) {
            for (Weighed other : others) {
                most = Math.max(most, one.likeness(other));
            }
        }
        return most;
    }

    private static boolean electrical(ProvingFault fault) {
        return fault.kind() != ProvingFaultKind.WAY_WEAK && fault.kind() != ProvingFaultKind.RUB;
    }

    private RealVector weighed(RealVector change) {
        RealVector shared = inner.getSolver().solve(scatter.preMultiply(change));
        return change.subtract(scatter.operate(shared)).mapDivide(POINT_SIGMA * POINT_SIGMA);
    }

    private RealVector change(ProvingFault fault, double severity) {
        ProvingUnit typical = ProvingHouse.goodUnit(options, model.code(), 0);
        ProvingUnit hurt = new ProvingUnit(
                typical.modelCode(), typical.unitSeed(), typical.ageYears(), fault, severity, typical.climate());
        double[] logs = logs(hurt, 0.09);
        double[] change = new double[logs.length];
        for (int i = 0; i < change.length; i++) {
            change[i] = TerminalCurves.difference(logs[i], healthy[i], i);
        }
        return new ArrayRealVector(change, false);
    }

    private double[] occurringSeverities(ProvingFaultKind kind) {
        if (kind.group() == ProvingFaultKind.Group.HARD) {
            return possibleSeverities(kind);
        }
        double own = options.severities().of(kind, Knowing.BASELINE);
        double model = options.severities().of(kind, Knowing.REFERENCE);
        return kind == ProvingFaultKind.PART_OFF_VALUE
                ? new double[] {own, -own, model, -model}
                : new double[] {own, model};
    }

    private static double[] possibleSeverities(ProvingFaultKind kind) {
        return switch (kind) {
            case TERMINALS_SHORTED, COIL_SHORTED -> new double[] {0.05, 0.2};
            case WRONG_IMPEDANCE -> new double[] {0.5, 2};
            case CONTACT_RESISTANCE -> new double[] {0.05, 0.07, 0.10, 0.14, 0.2, 0.3, 0.45, 0.7, 1, 2};
            case SHORTED_TURNS -> new double[] {0.02, 0.035, 0.05, 0.07, 0.10, 0.15, 0.25, 0.4};
            case PART_OFF_VALUE ->
                new double[] {-0.6, -0.45, -0.35, -0.25, -0.15, -0.1, 0.1, 0.15, 0.25, 0.35, 0.5, 0.8, 1.2};
            case LEAK -> new double[] {0.8, 0.65, 0.5, 0.35, 0.2, 0.1};
            case MAGNET_WEAK -> new double[] {0.03, 0.05, 0.07, 0.10, 0.15, 0.2, 0.3};
            default -> new double[] {0};
        };
    }

    /** ln|Z| and phase in turn, at all test points. */
    private double[] logs(ProvingUnit unit, double contactOhm) {
        return terminals.logs(unit, point -> contactOhm);
    }
}
