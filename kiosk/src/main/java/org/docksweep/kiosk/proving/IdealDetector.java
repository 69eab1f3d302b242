package org.docksweep.kiosk.proving;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingFaultKind;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.hipparchus.distribution.continuous.NormalDistribution;
import org.hipparchus.linear.Array2DRowRealMatrix;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.RealMatrix;
import org.hipparchus.linear.RealVector;

/**
 * How much of each soft fault the best possible detector would miss: one that looks for this fault only, at this severity, knows the true
 * distribution of the healthy (drawn from the simulator: production, age, temperatures, plugs, and what the rig is held to) and may spend
 * all false fails allowed on it. The likelihood ratio of two normal distributions of one covariance {@code C} with means {@code delta}
 * apart misses {@code Phi(z - d)}, {@code d = sqrt(delta' C^-1 delta)}, at the false-fail rate {@code 1 - Phi(z)} (Neyman and Pearson 1933);
 * no detector does better on the same data.
 *
 * <p>With a reference the mean is known from a few units only, whose own spread adds {@code C / n}. Their spread is taken as known, which
 * favours the detector. So does a covariance from a finite number of drawn units. The simulator cuts production at two standard deviations;
 * that a value beyond can only be a fault is not used: no house knows such a cut, and real production has none.
 */
final class IdealDetector {
    /** Share of healthy cabinets that may fail. */
    static final double FALSE_FAILS = 0.005;

    private static final Set<ProvingFaultKind> AT_THE_TERMINALS = EnumSet.of(
            ProvingFaultKind.CONTACT_RESISTANCE,
            ProvingFaultKind.SHORTED_TURNS,
            ProvingFaultKind.PART_OFF_VALUE,
            ProvingFaultKind.LEAK,
            ProvingFaultKind.PORT_BLOCKED,
            ProvingFaultKind.MAGNET_WEAK);

    /** Enough for a covariance; d then comes out up to a tenth too large. */
    static final int HEALTHY_UNITS = 300;

    private static final int HURT_UNITS = 4;
    /** As many as the gate looks at. */
    private static final int POINTS_PER_OCTAVE = 8;

    private static final long FIRST_UNIT = 900_000;
    private static final double LEAST_CONTACT_OHM = 0.03;
    private static final double CONTACT_SPAN_OHM = 0.12;
    private static final double QUIET_DB = 45;
    /** Error of a thermometer at the dock, in kelvin. */
    private static final double THERMOMETER_K = 0.5;

    private final ProvingOptions options;
    private final CabinetModel model;
    private final List<ProvingFault> faults;
    private final long sharing;
    private final TerminalCurves terminals;
    private final List<Sweep> now = new ArrayList<>();
    private final List<double[]> changes = new ArrayList<>();
    private final Spread ofUnits;
    private final Spread ofDays;

    /**
     * What is possible for one fault.
     *
     * @param fault the fault
     * @param knowing what is known of the cabinet
     * @param severity its severity, with sign
     * @param deviations d, standard deviations by which it stands out
     * @param missed least share that is missed
     * @param missedShared the same where all faults of the model share the false fails evenly: what one gate for all of them can do
     */
    record Bound(
            ProvingFault fault,
            Knowing knowing,
            double severity,
            double deviations,
            double missed,
            double missedShared) {
        /** Share that is wanted to be missed at most. */
        static double wanted(Knowing knowing) {
            return knowing == Knowing.BASELINE ? 0.01 : 0.02;
        }

        boolean beyond() {
            return missed > wanted(knowing);
        }
    }

    /** One healthy unit on one occasion. */
    private record Sweep(ProvingUnit unit, Map<String, Double> contactOhm, double[] logs) {}

    /** Covariance {@code A A' / (n - 1) + s^2 I}, by Woodbury's formula. */
    private static final class Spread {
        private final RealMatrix scatter;
        private final CholeskyDecomposition inner;
        private final double noise2;

        Spread(List<double[]> drawn, double noise) {
            int n = drawn.size();
            int length = drawn.get(0).length;
            this.noise2 = noise * noise;
            double[] mean = new double[length];
            drawn.forEach(d -> {
                for (int i = 0; i < length; i++) {
                    mean[i] += d[i] / n;
                }
            });
            this.scatter = new Array2DRowRealMatrix(length, n);
            for (int u = 0; u < n; u++) {
                for (int i = 0; i < length; i++) {
                    scatter.setEntry(i, u, drawn.get(u)[i] - mean[i]);
                }
            }
            RealMatrix gram = scatter.transposeMultiply(scatter);
            for (int u = 0; u < n; u++) {
                gram.addToEntry(u, u, (n - 1) * noise2);
            }
            this.inner = new CholeskyDecomposition(gram);
        }

        double deviations(double[] change) {
            RealVector delta = new ArrayRealVector(change, false);
            RealVector seen = scatter.preMultiply(delta);
            double explained = seen.dotProduct(inner.getSolver().solve(seen));
            return Math.sqrt(Math.max(0, (delta.dotProduct(delta) - explained) / noise2));
        }
    }

    /**
     * Draws the healthy units of a model.
     *
     * @param ground simulator
     * @param options models, seed, severities, temperatures and number of good units
     * @param model a model whose test points have terminals
     * @param healthyUnits number of units that tell the covariance, at least 2
     */
    IdealDetector(ProvingGround ground, ProvingOptions options, CabinetModel model, int healthyUnits) {
        this.options = options;
        this.model = model;
        this.faults = ground.faults(model.code()).stream()
                .filter(f -> AT_THE_TERMINALS.contains(f.kind()))
                .toList();
        this.sharing = ground.faults(model.code()).stream()
                .filter(f -> f.kind().group() != ProvingFaultKind.Group.NOT_A_FAULT)
                .count();
        this.terminals = new TerminalCurves(ground, model, POINTS_PER_OCTAVE);
        SplittableRandom random = new SplittableRandom(options.seed() + 29);
        List<double[]> absolute = new ArrayList<>();
        for (int n = 0; n < healthyUnits; n++) {
            long unitSeed = options.seed() * 1_000_003L + FIRST_UNIT + n;
            double ageThen = CaseDealer.MOST_AGE_YEARS * random.nextDouble();
            double age = ageThen + random.nextDouble();
            Sweep then = sweep(unitSeed, ageThen, CaseDealer.calmClimate(random), random);
            Sweep today = sweep(unitSeed, age, CaseDealer.climate(options, random, QUIET_DB), random);
            now.add(today);
            absolute.add(withAir(today.logs(), today));
            changes.add(withAir(withAir(difference(today.logs(), then.logs()), today), then));
        }
        this.ofUnits = new Spread(absolute, Knowledge.RIG_SHARE);
        this.ofDays = new Spread(changes, Math.sqrt(2) * Knowledge.RIG_SHARE);
    }

    private Sweep sweep(long unitSeed, double ageYears, ProvingUnit.Climate climate, SplittableRandom random) {
        ProvingUnit unit = new ProvingUnit(model.code(), unitSeed, ageYears, null, 0, climate);
        Map<String, Double> contact = new HashMap<>();
        for (TestPoint point : model.testPoints()) {
            contact.put(point.code(), LEAST_CONTACT_OHM + CONTACT_SPAN_OHM * random.nextDouble());
        }
        return new Sweep(unit, contact, terminals.logs(unit, p -> contact.get(p.code())));
    }

    /** The thermometer's reading is data like the rest, scaled so that its error is that of a point. */
    private static double[] withAir(double[] logs, Sweep sweep) {
        double[] more = java.util.Arrays.copyOf(logs, logs.length + 1);
        more[logs.length] = sweep.unit().climate().ambientCelsius() / THERMOMETER_K * Knowledge.RIG_SHARE;
        return more;
    }

    private static double[] difference(double[] a, double[] b) {
        double[] difference = new double[a.length];
        for (int i = 0; i < a.length; i++) {
            difference[i] = TerminalCurves.difference(a[i], b[i], i);
        }
        return difference;
    }

    /**
     * What is possible for every fault that shows at the terminals, at the severities of the run.
     *
     * @return bounds
     */
    List<Bound> bounds() {
        List<Bound> bounds = new ArrayList<>();
        for (ProvingFault fault : faults) {
            for (Knowing knowing : Knowing.values()) {
                double severity = options.severities().of(fault.kind(), knowing);
                bounds.add(bound(fault, knowing, severity));
                if (fault.kind() == ProvingFaultKind.PART_OFF_VALUE) {
                    bounds.add(bound(fault, knowing, -severity));
                }
            }
        }
        return bounds;
    }

    Bound bound(ProvingFault fault, Knowing knowing, double severity) {
        double[] mean = new double[now.get(0).logs().length];
        for (Sweep sweep : now.subList(0, HURT_UNITS)) {
            ProvingUnit whole = sweep.unit();
            ProvingUnit hurt = new ProvingUnit(
                    whole.modelCode(), whole.unitSeed(), whole.ageYears(), fault, severity, whole.climate());
            double[] logs = terminals.logs(hurt, p -> sweep.contactOhm().get(p.code()));
            double[] change = difference(logs, sweep.logs());
            for (int i = 0; i < mean.length; i++) {
                mean[i] += change[i] / HURT_UNITS;
            }
        }
        boolean own = knowing == Knowing.BASELINE;
        double[] padded = java.util.Arrays.copyOf(mean, mean.length + (own ? 2 : 1));
        double known =
                own ? ofDays.deviations(padded) : ofUnits.deviations(padded) / Math.sqrt(1 + 1.0 / options.goodUnits());
        return new Bound(
                fault, knowing, severity, known, missed(known, FALSE_FAILS), missed(known, FALSE_FAILS / sharing));
    }

    /**
     * Least share missed.
     *
     * @param deviations standard deviations by which a fault stands out
     * @param falseFails share of healthy cabinets that may fail for it
     * @return share, 0 to 1
     */
    static double missed(double deviations, double falseFails) {
        NormalDistribution normal = new NormalDistribution();
        return normal.cumulativeProbability(normal.inverseCumulativeProbability(1 - falseFails) - deviations);
    }
}
