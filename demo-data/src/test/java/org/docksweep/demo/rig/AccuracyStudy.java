package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.DoubleUnaryOperator;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Climate;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Knowledge;
import org.docksweep.gate.Quantities;
import org.docksweep.gate.Quantity;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;

/**
 * How far quantities and curves are from the truth of virtual cabinets, and how often their 95 % intervals hold it. The truth
 * comes from the simulator's own solver: true magnitude at the plug at the level of the sweep, extrema of that magnitude, true coil
 * resistance plus this plug-in's contact, resonance of the box's air with its port. The command is in docs/figures.md.
 *
 * <p>Arguments: cabinets per noise level (default 1000), first seed (default 1), threads (default 1). The result does not depend
 * on the threads.
 */
public final class AccuracyStudy {
    /** Converter noise, rms re full scale: as built; twenty times that; at the edge of what the dock still accepts. */
    static final double[] NOISE_DB_FS = {-106, -80, -72};

    private static final String[][] POINTS = {
        {"DUNE15B", "LF"}, {"UNDR215", "IN"}, {"DUNE15B", "HF"}, {"SPIN12", "IN"}, {"PEBL8", "IN"}, {"HEAD3", "IN"}
    };
    /** The promise of impedance accuracy starts here. */
    private static final double PROMISED_FROM_HZ = 20;

    /** Standard deviation of coil temperature about that of the air, as {@link Quantities} assumes it. */
    private static final double COIL_NEAR_AIR_KELVIN = 8;

    private static final double SEARCH = 1.08;
    private static final int CABINETS_PER_RIG = 50;

    private final ModelBook book = DemoModels.book();
    private final double[] noiseDbFs;
    private final Watch watch;

    /** Sees every comparison, for whoever looks for causes. */
    interface Watch {
        /** One point of a curve: measured magnitude, its standard uncertainty, truth at the sweep's level and at none. */
        void point(
                String unit,
                double noiseDb,
                double hz,
                double ohm,
                double uOhm,
                double truthOhm,
                double smallSignalOhm);

        /** One quantity. */
        void quantity(String unit, double noiseDb, Quantity quantity, double truth);
    }

    AccuracyStudy(double[] noiseDbFs, Watch watch) {
        this.noiseDbFs = noiseDbFs.clone();
        this.watch = watch;
    }

    /**
     * Runs and prints.
     *
     * @param arguments cabinets, seed, threads
     * @throws ExecutionException if a cabinet could not be measured at all
     * @throws InterruptedException if stopped
     */
    public static void main(String[] arguments) throws ExecutionException, InterruptedException {
        int cabinets = arguments.length > 0 ? Integer.parseInt(arguments[0]) : 1000;
        long seed = arguments.length > 1 ? Long.parseLong(arguments[1]) : 1;
        int threads = arguments.length > 2 ? Integer.parseInt(arguments[2]) : 1;
        long start = System.nanoTime();
        List<StudyLevel> levels = new AccuracyStudy(NOISE_DB_FS, null).run(cabinets, seed, threads);
        levels.forEach(StudyLevel::print);
        long points = levels.stream().mapToLong(l -> l.points).sum();
        long held = levels.stream().mapToLong(l -> l.pointsHeld).sum();
        System.out.printf(
                Locale.ROOT,
                "all levels: 95 %% intervals of the curve hold the truth at %d of %d points: %s%n%d cabinets per level,"
                        + " first seed %d, %d threads, %.0f s%n",
                held,
                points,
                StudyLevel.wilson(held, points),
                cabinets,
                seed,
                threads,
                (System.nanoTime() - start) * 1e-9);
    }

    /**
     * Measures cabinets, one test point each, at all noise levels.
     *
     * @param cabinets how many
     * @param seed first seed
     * @param threads threads to use
     * @return a result per level
     */
    List<StudyLevel> run(int cabinets, long seed, int threads) throws ExecutionException, InterruptedException {
        List<StudyLevel> all = levels();
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<List<StudyLevel>>> parts = new ArrayList<>();
            for (int first = 0; first < cabinets; first += CABINETS_PER_RIG) {
                int from = first;
                int to = Math.min(cabinets, first + CABINETS_PER_RIG);
                parts.add(pool.submit(() -> onOneRig(from, to, seed)));
            }
            for (Future<List<StudyLevel>> part : parts) {
                List<StudyLevel> levels = part.get();
                for (int l = 0; l < all.size(); l++) {
                    all.get(l).add(levels.get(l));
                }
            }
        } finally {
            pool.shutdownNow();
        }
        return all;
    }

    private List<StudyLevel> levels() {
        List<StudyLevel> levels = new ArrayList<>();
        for (double noise : noiseDbFs) {
            levels.add(new StudyLevel(noise));
        }
        return levels;
    }

    private List<StudyLevel> onOneRig(int from, int to, long seed) {
        List<StudyLevel> levels = levels();
        StudyRig rig = new StudyRig(seed + from / CABINETS_PER_RIG);
        for (int n = from; n < to; n++) {
            measure(levels, rig, POINTS[n % POINTS.length], seed * 1_000_003 + n);
        }
        return levels;
    }

    private void measure(List<StudyLevel> levels, StudyRig rig, String[] name, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double ageYears = 10 * random.nextDouble();
        double ambientCelsius = 5 + 25 * random.nextDouble();
        double contactOhm = 0.03 + 0.12 * random.nextDouble();
        // Quantities own up to this much between coil and air
        double coilCelsius = ambientCelsius + COIL_NEAR_AIR_KELVIN * random.nextGaussian();
        RigCalibration calibration = rig.calibration(random);
        VirtualCabinet cabinet = VirtualCabinet.produced(book, name[0], seed, ageYears)
                .at(new Climate(coilCelsius, ambientCelsius, ambientCelsius, ambientCelsius));
        Unit unit = new Unit(
                name[0] + " " + name[1] + " " + seed,
                cabinet,
                cabinet.model().testPoint(name[1]),
                ambientCelsius,
                rig,
                rig.plug(cabinet.load(name[1]), cabinet.model().testPoint(name[1]), contactOhm, random),
                contactOhm - PracticeStandards.CONTACT_OHM);
        double[] truthOhm = null;
        double[] start = null;
        for (StudyLevel level : levels) {
            SweepAnalysis analysis = rig.sweep(unit.plugged(), Math.pow(10, level.noiseDbFs / 20), random.split());
            if (!analysis.clean()) {
                level.sweptAgain++;
                continue;
            }
            level.measured++;
            ImpedanceCurve curve = calibration.correct(analysis.impedance());
            truthOhm = truthOhm == null ? unit.truthOhm(curve.frequencyHz()) : truthOhm;
            curve(level, unit, curve, truthOhm);
            // the starting point of a fit is no part of the measurement: found once per cabinet
            start = start == null ? start(unit, curve) : start;
            quantities(level, unit, curve, truthOhm, start);
        }
    }

    /** A cabinet at the rig. */
    private record Unit(
            String name,
            VirtualCabinet cabinet,
            TestPoint point,
            double ambientCelsius,
            StudyRig rig,
            StudyRig.Plugged plugged,
            double contactOhm) {
        CabinetModel model() {
            return cabinet.model();
        }

        double truthOhm(double frequencyHz) {
            return rig.truthOhm(plugged, frequencyHz).norm();
        }

        double[] truthOhm(double[] frequencyHz) {
            return java.util.Arrays.stream(frequencyHz).map(this::truthOhm).toArray();
        }
    }

    private double[] start(Unit unit, ImpedanceCurve curve) {
        Knowledge knowledge = Knowledge.nominal(book, unit.model(), unit.point());
        return CircuitFit.fit(knowledge.circuit(), knowledge.dataOf(curve), knowledge.prior(), null)
                .x();
    }

    private void curve(StudyLevel level, Unit unit, ImpedanceCurve curve, double[] truthOhm) {
        double[] frequencyHz = curve.frequencyHz();
        double[] uncertaintyOhm = curve.standardUncertaintyOhm();
        for (int i = 0; i < curve.size(); i++) {
            double error = curve.magnitudeOhm(i) - truthOhm[i];
            level.point(error, uncertaintyOhm[i]);
            double share = Math.abs(error) / (0.005 * truthOhm[i] + 0.02);
            if (frequencyHz[i] >= PROMISED_FROM_HZ && share > level.worstShareOfLimit) {
                level.worstShareOfLimit = share;
                level.worstShareOfLimitHz = frequencyHz[i];
                level.worstShareOfLimitUnit = unit.name();
            }
            if (watch != null) {
                double small = unit.rig()
                        .smallSignalOhm(unit.plugged(), frequencyHz[i])
                        .norm();
                watch.point(
                        unit.name(),
                        level.noiseDbFs,
                        frequencyHz[i],
                        curve.magnitudeOhm(i),
                        uncertaintyOhm[i],
                        truthOhm[i],
                        small);
            }
        }
    }

    private void quantities(StudyLevel level, Unit unit, ImpedanceCurve curve, double[] truthOhm, double[] start) {
        VirtualCabinet cabinet = unit.cabinet();
        List<Quantity> quantities =
                Quantities.of(book, unit.model(), unit.point(), curve, unit.ambientCelsius(), start);
        level.unfitted += quantities.isEmpty() ? 1 : 0;
        for (Quantity quantity : quantities) {
            switch (quantity.kind()) {
                case LOWER_PEAK, UPPER_PEAK, PEAK ->
                    compare(level, unit, quantity, extremum(unit::truthOhm, quantity, GoalType.MAXIMIZE));
                case DIP -> compare(level, unit, quantity, extremum(unit::truthOhm, quantity, GoalType.MINIMIZE));
                case TUNING -> compare(level, unit, quantity, cabinet.tuningHz(quantity.owner()));
                case TERMINAL_RESISTANCE ->
                    compare(level, unit, quantity, parallelOhm(cabinet, unit.point()) + unit.contactOhm());
                case TERMINAL_RESISTANCE_20C ->
                    compare(
                            level,
                            unit,
                            quantity,
                            parallelOhm(cabinet.at(Climate.even(20)), unit.point()) + unit.contactOhm());
                case LOWEST -> compare(level, unit, quantity, lowest(unit::truthOhm, curve.frequencyHz(), truthOhm));
                default -> {
                    // Qs, K and n are conventions of the fitted law; the simulator has no such truth
                }
            }
        }
    }

    private void compare(StudyLevel level, Unit unit, Quantity quantity, double truth) {
        level.compare(quantity, truth);
        if (watch != null) {
            watch.quantity(unit.name(), level.noiseDbFs, quantity, truth);
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

    /** Lowest magnitude of a curve's band: between the neighbours of its lowest grid point. */
    private static double lowest(DoubleUnaryOperator truth, double[] frequencyHz, double[] truthOhm) {
        int lowest = 0;
        for (int i = 1; i < truthOhm.length; i++) {
            lowest = truthOhm[i] < truthOhm[lowest] ? i : lowest;
        }
        SearchInterval between = new SearchInterval(
                frequencyHz[Math.max(0, lowest - 1)], frequencyHz[Math.min(frequencyHz.length - 1, lowest + 1)]);
        return new BrentOptimizer(1e-8, 1e-7)
                .optimize(
                        new MaxEval(500),
                        new UnivariateObjectiveFunction(truth::applyAsDouble),
                        GoalType.MINIMIZE,
                        between)
                .getValue();
    }
}
