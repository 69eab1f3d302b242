package org.docksweep.gate;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.docksweep.acoustic.SoundReference;
import org.docksweep.circuit.CircuitFit;
import org.docksweep.circuit.CircuitParameter;
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

    /** Weight of the tolerance model, in units: spread of few units is shrunk towards it (blend of technique notes). */
    private static final double TOLERANCE_WEIGHT = 15;
    /** Error left in a taught model at best. */
    private static final double SIGMA_FLOOR = 0.012;
    /** Factor from median absolute deviation to standard deviation of a normal distribution. */
    private static final double MAD_FACTOR = 1.482602218505602;

    private static final int RIBBON_DRAWS = 80;
    private static final long RIBBON_SEED = 4711;
    /** Level spread between healthy units and placements, in dB, towards which few units are shrunk. */
    private static final double LEVEL_SPREAD_DB = 1.5;

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
        Acoustic acoustic = Acoustic.of(units);
        if (point.kind() == TestPointKind.LINE_INPUT) {
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

    /** Teaching of one test point with terminals. */
    private static final class Lesson {
        private final Knowledge nominal;
        private final List<Unit> units;
        private final double[] grid;

        Lesson(Knowledge nominal, List<Unit> units) {
            this.nominal = nominal;
            this.units = units;
            this.grid = units.get(0).impedance().frequencyHz();
        }

        PointReference teach(CabinetModel model, TestPoint point, Acoustic acoustic) {
            List<double[]> fits = new ArrayList<>();
            List<double[]> logMisses = new ArrayList<>();
            List<double[]> phaseMisses = new ArrayList<>();
            for (Unit unit : units) {
                double[] x = CircuitFit.fit(nominal.circuit(), nominal.dataOf(unit.impedance()), nominal.prior(), null)
                        .x();
                fits.add(x);
                CurveData all = CurveData.of(unit.impedance(), ModelOffsets.none(0), 1);
                double[][] fitted = CircuitFit.predict(nominal.circuit(), grid, x);
                double[] log = new double[grid.length];
                double[] phase = new double[grid.length];
                for (int i = 0; i < grid.length; i++) {
                    log[i] = all.logOhm()[i] - fitted[0][i];
                    phase[i] = Math.IEEEremainder(all.phaseRad()[i] - fitted[1][i], 2 * Math.PI);
                }
                logMisses.add(log);
                phaseMisses.add(phase);
            }
            double[] mean = parameterMeans(fits);
            double[] spread = parameterSpreads(fits, mean);
            PointReference.Taught taught = new PointReference.Taught(
                    nominal.circuit().parameters().stream()
                            .map(CircuitParameter::id)
                            .toList(),
                    mean,
                    spread,
                    medians(logMisses),
                    medians(phaseMisses),
                    missSigma(logMisses, phaseMisses));
            double[][] ribbon = ribbon(mean, spread, taught);
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

        /** Median over units, drawn towards the nominal value as if that were one more unit. */
        private double[] parameterMeans(List<double[]> fits) {
            double[] priorMean = nominal.prior().mean();
            double[] mean = new double[priorMean.length];
            for (int p = 0; p < mean.length; p++) {
                String id = nominal.circuit().parameters().get(p).id();
                mean[p] = Drift.belongsToTheCabinet(id)
                        ? (fits.size() * median(column(fits, p)) + priorMean[p]) / (fits.size() + 1)
                        : priorMean[p];
            }
            return mean;
        }

        private double[] parameterSpreads(List<double[]> fits, double[] mean) {
            double[] tolerance = nominal.prior().spread();
            double[] spread = new double[tolerance.length];
            int n = fits.size();
            for (int p = 0; p < spread.length; p++) {
                double robust = n < 3 ? tolerance[p] : MAD_FACTOR * median(distances(column(fits, p), mean[p]));
                double blended = (TOLERANCE_WEIGHT * tolerance[p] * tolerance[p] + (n - 1) * robust * robust)
                        / (TOLERANCE_WEIGHT + n - 1);
                spread[p] = Math.sqrt(blended);
            }
            return spread;
        }

        private double[] missSigma(List<double[]> logMisses, List<double[]> phaseMisses) {
            double[] sigma = new double[grid.length];
            int n = logMisses.size();
            for (int i = 0; i < grid.length; i++) {
                double[] log = column(logMisses, i);
                double[] phase = column(phaseMisses, i);
                double logSpread = n < 3 ? Knowledge.UNTAUGHT_SIGMA : MAD_FACTOR * median(distances(log, median(log)));
                double phaseSpread =
                        n < 3 ? Knowledge.UNTAUGHT_SIGMA : MAD_FACTOR * median(distances(phase, median(phase)));
                double few = 1 + 1.0 / n;
                sigma[i] = Math.sqrt(
                        SIGMA_FLOOR * SIGMA_FLOOR + few * Math.max(logSpread * logSpread, phaseSpread * phaseSpread));
            }
            return smooth(sigma);
        }

        /** Spread from a handful of units is ragged; the largest of a third of an octave is kept. */
        private static double[] smooth(double[] sigma) {
            int reach = 4;
            double[] smoothed = new double[sigma.length];
            for (int i = 0; i < sigma.length; i++) {
                for (int k = Math.max(0, i - reach); k <= Math.min(sigma.length - 1, i + reach); k++) {
                    smoothed[i] = Math.max(smoothed[i], sigma[k]);
                }
            }
            return smoothed;
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
        static Acoustic of(List<Unit> units) {
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
            double[] mean = medians(levels);
            double[] spread = new double[grid.length];
            int n = levels.size();
            for (int i = 0; i < grid.length; i++) {
                double robust = n < 3 ? LEVEL_SPREAD_DB : MAD_FACTOR * median(distances(column(levels, i), mean[i]));
                spread[i] = Math.sqrt((TOLERANCE_WEIGHT * LEVEL_SPREAD_DB * LEVEL_SPREAD_DB + (n - 1) * robust * robust)
                        / (TOLERANCE_WEIGHT + n - 1));
            }
            return new Acoustic(grid, mean, spread, SoundReference.typical(curves));
        }
    }

    private static double[] medians(List<double[]> rows) {
        double[] result = new double[rows.get(0).length];
        for (int i = 0; i < result.length; i++) {
            result[i] = median(column(rows, i));
        }
        return result;
    }

    private static double[] column(List<double[]> rows, int index) {
        return rows.stream().mapToDouble(row -> row[index]).toArray();
    }

    private static double[] distances(double[] values, double from) {
        return Arrays.stream(values).map(v -> Math.abs(v - from)).toArray();
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }
}
