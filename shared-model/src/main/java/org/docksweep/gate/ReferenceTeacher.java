package org.docksweep.gate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.docksweep.acoustic.SoundReference;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CircuitParameter;
import org.docksweep.circuit.CircuitPrior;
import org.docksweep.circuit.CurveData;
import org.docksweep.circuit.ModelOffsets;
import org.docksweep.circuit.PointCircuit;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SoundPrint;

/**
 * Learns what healthy units of a model look like from 1 to 20 known-good ones. Works from one unit and improves with
 * each; medians keep one bad unit among the good from spoiling it.
 */
public final class ReferenceTeacher {
    /** Most units taken. */
    public static final int MAX_UNITS = 20;

    /** Weight of the nominal value against the units' median, in units. */
    private static final double NOMINAL_WEIGHT = 0.25;
    /** Rounds of a lesson. */
    private static final int ROUNDS = 3;
    /** What healthy units of one model stray by from their common offset, smooth over frequency. */
    private static final double STRAY_SIGMA = 0.001;
    /** What they may stray by while one or two units say nothing of it. */
    private static final double UNSEEN_STRAY_SIGMA = 0.006;
    /** Weight of the first, in units. */
    private static final double STRAY_WEIGHT = 2;
    /** A band of a third of an octave. */
    private static final int BAND_REACH = 4;

    /** Factor from median absolute deviation to standard deviation of a normal distribution. */
    private static final double MAD_FACTOR = 1.482602218505602;

    private static final int RIBBON_DRAWS = 80;
    private static final long RIBBON_SEED = 4711;
    /**
     * Level spread between healthy units and placements, in dB, towards which few units are shrunk: 0.65 dB of each way and
     * 0.65 dB of all together (common practice, no source).
     */
    private static final double LEVEL_SPREAD_DB = 0.92;

    /**
     * The same behind a line input: drivers of one model agree within 1 dB (common practice, no source), so each spreads by 0.35 dB, and what
     * temperature, plugs and leads add elsewhere an amplifier beside its driver does not.
     */
    private static final double LINE_LEVEL_SPREAD_DB = 0.5;

    /** So many units that spread is worth: it is a guess, while tolerances of parts are data. */
    private static final double LEVEL_WEIGHT = 2;

    private ReferenceTeacher() {}

    /**
     * One known-good unit.
     *
     * @param impedance calibrated impedance, or null for a line input
     * @param acoustic acoustic response, or null without a microphone
     * @param ambientCelsius air temperature, or null
     */
    public record Unit(ImpedanceCurve impedance, AcousticCurve acoustic, Double ambientCelsius) {}

    /**
     * Teaches a reference.
     *
     * @param book models
     * @param cabinetModelCode cabinet model
     * @param testPointCode test point
     * @param units known-good units, 1 to {@link #MAX_UNITS}, all measured on the same frequency grid
     * @return the reference
     * @throws IllegalArgumentException if there are no units, too many, units without the curve the point needs, or
     *     units on different grids
     */
    public static PointReference teach(
            ModelBook book, String cabinetModelCode, String testPointCode, List<Unit> units) {
        if (units.isEmpty() || units.size() > MAX_UNITS) {
            throw new IllegalArgumentException("reference of " + cabinetModelCode + " " + testPointCode + " needs 1 to "
                    + MAX_UNITS + " known-good units, but " + units.size() + " are given");
        }
        CabinetModel model = book.cabinetModel(cabinetModelCode);
        TestPoint point = model.testPoint(testPointCode);
        boolean line = point.kind() == TestPointKind.LINE_INPUT;
        Acoustic acoustic = Acoustic.of(units, line ? LINE_LEVEL_SPREAD_DB : LEVEL_SPREAD_DB);
        if (line) {
            double[] none = new double[0];
            return new PointReference(
                    cabinetModelCode,
                    testPointCode,
                    units.size(),
                    none,
                    none,
                    none,
                    none,
                    acoustic.frequencyHz(),
                    acoustic.meanDb(),
                    acoustic.spreadDb(),
                    null,
                    acoustic.sound());
        }
        checkImpedances(cabinetModelCode, testPointCode, units);
        return new Lesson(Knowledge.nominal(book, model, point), units).teach(model, point, acoustic);
    }

    private static void checkImpedances(String cabinetModelCode, String testPointCode, List<Unit> units) {
        double[] grid = null;
        for (Unit unit : units) {
            if (unit.impedance() == null) {
                throw new IllegalArgumentException("reference of " + cabinetModelCode + " " + testPointCode
                        + ": a known-good unit has no impedance curve; sweep it again");
            }
            double[] other = unit.impedance().frequencyHz();
            if (grid != null && !Arrays.equals(grid, other)) {
                throw new IllegalArgumentException("reference of " + cabinetModelCode + " " + testPointCode
                        + ": known-good units were swept over different bands; sweep all with the same plan");
            }
            grid = other;
        }
    }

    /**
     * Teaching of one test point with terminals, in rounds: what all fits leave over is taken off the curves as offset, then the
     * parameters come out sharper, and so do the next offset and spreads.
     */
    private static final class Lesson {
        private final Knowledge nominal;
        private final List<Unit> units;
        private final double[] grid;
        private final List<double[]> fits = new ArrayList<>();

        Lesson(Knowledge nominal, List<Unit> units) {
            this.nominal = nominal;
            this.units = units;
            this.grid = units.get(0).impedance().frequencyHz();
        }

        PointReference teach(CabinetModel model, TestPoint point, Acoustic acoustic) {
            Knowledge knowledge = nominal;
            PointReference.Taught taught = null;
            for (int round = 0; round < ROUNDS; round++) {
                taught = round(knowledge);
                knowledge = new Knowledge(
                        nominal.circuit(),
                        new CircuitPrior(taught.mean(), taught.spread()),
                        new ModelOffsets(
                                grid,
                                taught.offsetLog(),
                                taught.offsetPhaseRad(),
                                taught.offsetSigma(),
                                Knowledge.UNTAUGHT_SIGMA,
                                Knowledge.TAUGHT_GRAIN,
                                0));
            }
            double[][] ribbon = ribbon(taught.mean(), taught.spread(), taught);
            return new PointReference(
                    model.code(),
                    point.code(),
                    units.size(),
                    grid,
                    ribbon[0],
                    ribbon[1],
                    ribbon[2],
                    acoustic.frequencyHz(),
                    acoustic.meanDb(),
                    acoustic.spreadDb(),
                    taught,
                    acoustic.sound());
        }

        private PointReference.Taught round(Knowledge knowledge) {
            List<double[]> starts = List.copyOf(fits);
            fits.clear();
            double[][] information =
                    new double[nominal.prior().mean().length][nominal.prior().mean().length];
            double[][] offMean = new double[units.size()][];
            List<double[]> logMisses = new ArrayList<>();
            List<double[]> phaseMisses = new ArrayList<>();
            for (int u = 0; u < units.size(); u++) {
                Unit unit = units.get(u);
                CurveData data = knowledge.dataOf(unit.impedance());
                CircuitPrior prior = knowledge.at(unit.ambientCelsius()).prior();
                CircuitFit.Result fit = CircuitFit.fit(
                        knowledge.circuit(), data, prior, starts.isEmpty() ? knowledge.start() : starts.get(u));
                fits.add(fit.x());
                addShare(information, CircuitFit.information(knowledge.circuit(), data, prior, fit.x()), units.size());
                offMean[u] = difference(fit.x(), prior.mean());
                CurveData all = CurveData.of(unit.impedance(), ModelOffsets.none(0, Knowledge.MEASURED_GRAIN), 1);
                double[][] fitted = CircuitFit.predict(knowledge.circuit(), grid, fit.x());
                double[] log = new double[grid.length];
                double[] phase = new double[grid.length];
                for (int i = 0; i < grid.length; i++) {
                    log[i] = all.logOhm()[i] - fitted[0][i];
                    phase[i] = Math.IEEEremainder(all.phaseRad()[i] - fitted[1][i], 2 * Math.PI);
                }
                logMisses.add(log);
                phaseMisses.add(phase);
            }
            List<String> ids = nominal.circuit().parameters().stream()
                    .map(CircuitParameter::id)
                    .toList();
            PointReference.Taught taught = new PointReference.Taught(
                    ids,
                    parameterMeans(knowledge.prior().spread()),
                    nominal.prior().spread(),
                    FewUnits.medians(logMisses),
                    FewUnits.medians(phaseMisses),
                    missSigma(logMisses, phaseMisses),
                    UnitScatter.of(
                            nominal.prior().spread(),
                            information,
                            knowledge.prior().spread(),
                            offMean));
            return taught.withSpread(SharedScatter.alone(taught, units.size()));
        }

        private static void addShare(double[][] sum, double[][] more, int parts) {
            for (int i = 0; i < sum.length; i++) {
                for (int j = 0; j < sum.length; j++) {
                    sum[i][j] += more[i][j] / parts;
                }
            }
        }

        private static double[] difference(double[] a, double[] b) {
            double[] difference = new double[a.length];
            for (int i = 0; i < a.length; i++) {
                difference[i] = a[i] - b[i];
            }
            return difference;
        }

        /** Mean of the units that are near their median, drawn a little towards the nominal value. */
        private double[] parameterMeans(double[] spread) {
            double[] priorMean = nominal.prior().mean();
            double[] mean = new double[priorMean.length];
            for (int p = 0; p < mean.length; p++) {
                mean[p] = isOfTheCabinet(p)
                        ? (fits.size() * FewUnits.meanOfTheNear(FewUnits.column(fits, p), spread[p])
                                        + NOMINAL_WEIGHT * priorMean[p])
                                / (fits.size() + NOMINAL_WEIGHT)
                        : priorMean[p];
            }
            return mean;
        }

        private boolean isOfTheCabinet(int p) {
            return Drift.belongsToTheCabinet(
                    nominal.circuit().parameters().get(p).id());
        }

        /** Strays around the offset, band by band, blended with what healthy units of any model leave over. */
        private double[] missSigma(List<double[]> logMisses, List<double[]> phaseMisses) {
            double[] squares = new double[grid.length];
            int n = logMisses.size();
            for (int i = 0; i < grid.length; i++) {
                squares[i] = 0.5
                        * (FewUnits.robustVariance(FewUnits.column(logMisses, i))
                                + FewUnits.robustVariance(FewUnits.column(phaseMisses, i)));
            }
            double[] sigma = new double[grid.length];
            double few = 1 + 1.0 / n;
            for (int i = 0; i < grid.length; i++) {
                double sum = 0;
                int from = Math.max(0, i - BAND_REACH);
                int to = Math.min(grid.length - 1, i + BAND_REACH);
                for (int k = from; k <= to; k++) {
                    sum += squares[k] / (to - from + 1);
                }
                double blended = n < 3
                        ? UNSEEN_STRAY_SIGMA * UNSEEN_STRAY_SIGMA
                        : (STRAY_WEIGHT * STRAY_SIGMA * STRAY_SIGMA + (n - 1) * sum) / (STRAY_WEIGHT + n - 1);
                sigma[i] = Math.sqrt(few * blended);
            }
            return sigma;
        }

        /** Mean and spread of the curve by drawing healthy units from the taught spreads: resonances are not linear. */
        private double[][] ribbon(double[] mean, double[] spread, PointReference.Taught taught) {
            PointCircuit circuit = nominal.circuit();
            Random random = new Random(RIBBON_SEED);
            double[] sum = new double[grid.length];
            double[] squares = new double[grid.length];
            for (int draw = 0; draw < RIBBON_DRAWS; draw++) {
                double[] x = mean.clone();
                for (int p = 0; p < x.length; p++) {
                    x[p] += spread[p] * random.nextGaussian();
                }
                double[] log = CircuitFit.predict(circuit, grid, x)[0];
                for (int i = 0; i < grid.length; i++) {
                    sum[i] += log[i];
                    squares[i] += log[i] * log[i];
                }
            }
            double[] centre = CircuitFit.predict(circuit, grid, mean)[0];
            double[] phase = CircuitFit.predict(circuit, grid, mean)[1];
            double[] wide = new double[grid.length];
            for (int i = 0; i < grid.length; i++) {
                double drawn = sum[i] / RIBBON_DRAWS;
                double variance = Math.max(0, squares[i] / RIBBON_DRAWS - drawn * drawn);
                centre[i] += taught.offsetLog()[i];
                phase[i] += taught.offsetPhaseRad()[i];
                wide[i] = Math.sqrt(variance + taught.offsetSigma()[i] * taught.offsetSigma()[i]);
            }
            return new double[][] {centre, phase, wide};
        }
    }

    /** Level part of a reference. */
    private record Acoustic(double[] frequencyHz, double[] meanDb, double[] spreadDb, SoundPrint sound) {
        static Acoustic of(List<Unit> units, double usualDb) {
            List<AcousticCurve> curves = units.stream()
                    .map(Unit::acoustic)
                    .filter(java.util.Objects::nonNull)
                    .toList();
            if (curves.isEmpty()) {
                return new Acoustic(new double[0], new double[0], new double[0], null);
            }
            double[] grid = curves.get(0).frequencyHz();
            List<double[]> levels = curves.stream()
                    .filter(c -> Arrays.equals(c.frequencyHz(), grid))
                    .map(AcousticCurve::levelDb)
                    .toList();
            double[] mean = FewUnits.medians(levels);
            double[] spread = new double[grid.length];
            int n = levels.size();
            for (int i = 0; i < grid.length; i++) {
                double usual = usualDb * usualDb;
                double seen = n < 3 ? usual : FewUnits.robustVariance(FewUnits.column(levels, i));
                spread[i] = Math.sqrt((LEVEL_WEIGHT * usual + (n - 1) * seen) / (LEVEL_WEIGHT + n - 1));
            }
            return new Acoustic(grid, mean, spread, SoundReference.typical(curves));
        }
    }
}
