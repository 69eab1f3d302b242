package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleUnaryOperator;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Quantities;
import org.docksweep.gate.Quantity;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;
import org.hipparchus.complex.Complex;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/**
 * How far quantities and curves are from the truth of virtual cabinets, and how often their 95 % intervals hold it. The truth
 * comes from the simulator's own solver: true magnitude at the plug, extrema of that magnitude, true coil resistance plus
 * this plug-in's contact, resonance of the box's air with its port.
 *
 * <pre>
 * mvn -B -q -pl demo-data -am test-compile
 * mvn -B -q -pl demo-data org.codehaus.mojo:exec-maven-plugin:java -Dexec.classpathScope=test \
 *     -Dexec.mainClass=org.docksweep.demo.rig.AccuracyStudy -Dexec.args="1000 1"
 * </pre>
 *
 * Arguments: cabinets per noise level (default 1000), first seed (default 1).
 */
public final class AccuracyStudy {
    /** Converter noise, rms re full scale: as built; twenty times that; at the edge of what the dock still accepts. */
    static final double[] NOISE_DB_FS = {-106, -80, -72};

    private static final String[][] POINTS = {
        {"DUNE15B", "LF"}, {"UNDR215", "IN"}, {"DUNE15B", "HF"}, {"SPIN12", "IN"}, {"PEBL8", "IN"}, {"HEAD3", "IN"}
    };
    private static final double FACTOR_95 = 1.96;
    /** The promise of impedance accuracy starts here. */
    private static final double PROMISED_FROM_HZ = 20;

    private static final double SEARCH = 1.08;
    private static final int CABINETS_PER_RIG = 50;

    private final ModelBook book = DemoModels.book();

    /** Errors and intervals of one noise level. */
    static final class Level {
        final double noiseDbFs;
        int measured;
        int sweptAgain;
        int unfitted;
        long points;
        long pointsHeld;
        double worstShareOfLimit;
        final Map<Quantity.Kind, List<double[]>> errors = new EnumMap<>(Quantity.Kind.class);

        Level(double noiseDbFs) {
            this.noiseDbFs = noiseDbFs;
        }

        /** 95th percentile of the relative error of some kinds, in per cent; NaN without any. */
        double percentile95(Quantity.Kind... kinds) {
            double[] sorted = all(kinds).stream()
                    .mapToDouble(e -> Math.abs(e[0]))
                    .sorted()
                    .toArray();
            return sorted.length == 0 ? Double.NaN : 100 * sorted[(int) Math.ceil(0.95 * sorted.length) - 1];
        }

        long held(Quantity.Kind... kinds) {
            return all(kinds).stream()
                    .filter(e -> Math.abs(e[0]) < FACTOR_95 * e[1])
                    .count();
        }

        int count(Quantity.Kind... kinds) {
            return all(kinds).size();
        }

        private List<double[]> all(Quantity.Kind... kinds) {
            List<double[]> all = new ArrayList<>();
            for (Quantity.Kind kind : kinds) {
                all.addAll(errors.getOrDefault(kind, List.of()));
            }
            return all;
        }

        private void compare(Quantity quantity, double truth) {
            errors.computeIfAbsent(quantity.kind(), k -> new ArrayList<>())
                    .add(new double[] {quantity.value() / truth - 1, quantity.standardUncertainty() / truth});
        }
    }

    /** Runs and prints. */
    public static void main(String[] arguments) {
        int cabinets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        long start = System.nanoTime();
        long points = 0;
        long held = 0;
        for (double noise : NOISE_DB_FS) {
            Level level = new AccuracyStudy().run(noise, cabinets, seed);
            print(level);
            points += level.points;
            held += level.pointsHeld;
        }
        System.out.printf(
                Locale.ROOT,
                "all levels: 95 %% intervals of the curve hold the truth at %d of %d points: %s%n%d cabinets per level,"
                        + " first seed %d, %.0f s%n",
                held,
                points,
                wilson(held, points),
                cabinets,
                seed,
                (System.nanoTime() - start) * 1e-9);
    }

    private static void print(Level level) {
        System.out.printf(
                Locale.ROOT,
                "noise %.0f dB FS: %d measured, %d swept again, %d not fitted%n  curve: largest error %.2f of the allowed"
                        + " 0.5 %% + 0.02 ohm; intervals hold at %s of %d points%n",
                level.noiseDbFs,
                level.measured,
                level.sweptAgain,
                level.unfitted,
                level.worstShareOfLimit,
                wilson(level.pointsHeld, level.points),
                level.points);
        level.errors.forEach((kind, errors) -> System.out.printf(
                Locale.ROOT,
                "  %-20s n %5d  95th percentile %.3f %%  intervals hold %s%n",
                kind,
                errors.size(),
                level.percentile95(kind),
                wilson(level.held(kind), errors.size())));
    }

    /** Share with its Wilson limits (Wilson 1927). */
    static String wilson(long hits, long trials) {
        double p = hits / (double) trials;
        double z2n = FACTOR_95 * FACTOR_95 / trials;
        double centre = (p + z2n / 2) / (1 + z2n);
        double half = FACTOR_95 * Math.sqrt(p * (1 - p) / trials + z2n / (4.0 * trials)) / (1 + z2n);
        return String.format(
                Locale.ROOT, "%.2f %% (%.2f to %.2f)", 100 * p, 100 * (centre - half), 100 * (centre + half));
    }

    /**
     * Measures cabinets at one noise level.
     *
     * @param noiseDbFs converter noise, rms re full scale
     * @param cabinets how many, one test point each
     * @param seed first seed
     */
    Level run(double noiseDbFs, int cabinets, long seed) {
        Level level = new Level(noiseDbFs);
        StudyRig rig = null;
        for (int n = 0; n < cabinets; n++) {
            if (n % CABINETS_PER_RIG == 0) {
                rig = new StudyRig(seed + n / CABINETS_PER_RIG, noiseDbFs);
            }
            measure(level, rig, POINTS[n % POINTS.length], seed * 1_000_003 + n);
        }
        return level;
    }

    private void measure(Level level, StudyRig rig, String[] name, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double ageYears = 10 * random.nextDouble();
        double ambientCelsius = 5 + 25 * random.nextDouble();
        double contactOhm = 0.03 + 0.12 * random.nextDouble();
        double coilCelsius = ambientCelsius + 10 * (random.nextDouble() - 0.3);
        VirtualCabinet cabinet = VirtualCabinet.produced(book, name[0], seed, ageYears)
                .at(new Climate(coilCelsius, ambientCelsius, ambientCelsius, ambientCelsius));
        CabinetModel model = cabinet.model();
        TestPoint point = model.testPoint(name[1]);
        SweepAnalysis analysis = rig.sweep(cabinet, point, contactOhm, random);
        if (!analysis.clean()) {
            level.sweptAgain++;
            return;
        }
        level.measured++;
        ImpedanceCurve curve = rig.corrected(analysis.impedance());
        Load load = cabinet.load(point.code());
        double contact = contactOhm - PracticeStandards.CONTACT_OHM;
        DoubleUnaryOperator truth =
                hz -> load.at(hz, Complex.ONE).impedanceOhm().add(contact).norm();
        for (int i = 0; i < curve.size(); i++) {
            double trueOhm = truth.applyAsDouble(curve.frequencyHz()[i]);
            double error = Math.abs(curve.magnitudeOhm(i) - trueOhm);
            level.points++;
            level.pointsHeld += error < FACTOR_95 * curve.standardUncertaintyOhm()[i] ? 1 : 0;
            boolean inBand = curve.frequencyHz()[i] >= PROMISED_FROM_HZ;
            level.worstShareOfLimit = !inBand
                    ? level.worstShareOfLimit
                    : Math.max(level.worstShareOfLimit, error / (0.005 * trueOhm + 0.02));
        }
        List<Quantity> quantities = Quantities.of(book, model, point, curve, ambientCelsius, null);
        level.unfitted += quantities.isEmpty() ? 1 : 0;
        for (Quantity quantity : quantities) {
            switch (quantity.kind()) {
                case LOWER_PEAK, UPPER_PEAK, PEAK ->
                    level.compare(quantity, extremum(truth, quantity, GoalType.MAXIMIZE));
                case DIP -> level.compare(quantity, extremum(truth, quantity, GoalType.MINIMIZE));
                case TUNING -> level.compare(quantity, cabinet.tuningHz(quantity.owner()));
                case TERMINAL_RESISTANCE -> level.compare(quantity, parallelOhm(cabinet, point) + contact);
                case TERMINAL_RESISTANCE_20C ->
                    level.compare(quantity, parallelOhm(cabinet.at(Climate.even(20)), point) + contact);
                case LOWEST -> level.compare(quantity, lowest(truth, curve));
                default -> {
                    // Qs, K and n are conventions of the fitted law; the simulator has no such truth
                }
            }
        }
    }

    private static double parallelOhm(VirtualCabinet cabinet, TestPoint point) {
        return 1
                / point.positionCodes().stream()
                        .mapToDouble(p -> 1 / cabinet.dcResistanceOhm(p))
                        .sum();
    }

    private static double extremum(DoubleUnaryOperator truth, Quantity near, GoalType goal) {
        return new BrentOptimizer(1e-10, 1e-9)
                .optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(truth::applyAsDouble),
                        goal,
                        new SearchInterval(near.value() / SEARCH, near.value() * SEARCH, near.value()))
                .getPoint();
    }

    private static double lowest(DoubleUnaryOperator truth, ImpedanceCurve curve) {
        double lowest = Double.POSITIVE_INFINITY;
        double end = curve.frequencyHz()[curve.size() - 1];
        for (double hz = curve.frequencyHz()[0]; hz < end; hz *= 1.002) {
            lowest = Math.min(lowest, truth.applyAsDouble(hz));
        }
        return lowest;
    }
}
