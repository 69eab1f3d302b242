package org.docksweep.kiosk.dock;

import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.docksweep.acoustic.BurstCurve;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Finding;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.judge.PointJudgement;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.suspect.PredictedCurve;
import org.docksweep.sweep.AcousticCurve;

/** Makes the picture of a curve over its reference ribbon. Pure functions. */
public final class CurvePictures {
    private static final double[] NOTHING = {};
    /** Half width of the ribbon in standard deviations between healthy units, as on the repair tag. */
    private static final double RIBBON_SPREADS = 2;

    private CurvePictures() {}

    /**
     * The curve that decided: of the first failing test point, or else of the first one with a curve.
     *
     * @param points judgements of the test points
     * @param modelCode cabinet model
     * @param references references, of any models
     * @param baselines baselines of the cabinet
     * @return the picture; empty when no test point has a curve
     */
    public static Optional<CurvePicture> deciding(
            List<PointJudgement> points, String modelCode, List<PointReference> references, List<Baseline> baselines) {
        return points.stream()
                .filter(p -> p.impedance() != null || p.acoustic() != null)
                .min(Comparator.comparing(p -> p.verdict() == Verdict.FAIL ? 0 : 1))
                .map(p -> of(p, modelCode, references, baselines));
    }

    static CurvePicture of(
            PointJudgement point, String modelCode, List<PointReference> references, List<Baseline> baselines) {
        Optional<PointReference> reference = references.stream()
                .filter(r -> r.cabinetModelCode().equals(modelCode)
                        && r.testPointCode().equals(point.testPointCode()))
                .findFirst();
        Optional<Finding> decided = point.findings().stream()
                .filter(f -> f.fromHz() != null && f.toHz() != null)
                .filter(f -> f.severity() == ReadingState.FAULT || f.severity() == ReadingState.WATCH)
                .min(Comparator.comparing(f -> f.severity() == ReadingState.FAULT ? 0 : 1));
        double fromHz = decided.map(Finding::fromHz).orElse(0.0);
        double toHz = decided.map(Finding::toHz).orElse(0.0);
        DecidingCurve shows = DecidingCurve.of(point);
        if (shows != DecidingCurve.IMPEDANCE) {
            Optional<AcousticCurve> own = baselines.stream()
                    .filter(b -> b.testPointCode().equals(point.testPointCode()))
                    .map(Baseline::acoustic)
                    .filter(Objects::nonNull)
                    .findFirst();
            return shows == DecidingCurve.LEVEL
                    ? level(point, reference, own, fromHz, toHz)
                    : bursts(point, own, fromHz, toHz);
        }
        double[] ribbonHz = reference.map(PointReference::frequencyHz).orElse(NOTHING);
        double[] low = new double[ribbonHz.length];
        double[] high = new double[ribbonHz.length];
        for (int i = 0; i < ribbonHz.length; i++) {
            PointReference r = reference.orElseThrow();
            double width = RIBBON_SPREADS * r.spreadLog()[i];
            low[i] = Math.exp(r.meanLogOhm()[i] - width);
            high[i] = Math.exp(r.meanLogOhm()[i] + width);
        }
        double[] baseline = baselines.stream()
                .filter(b -> b.testPointCode().equals(point.testPointCode()) && b.impedance() != null)
                .findFirst()
                .map(b -> onGrid(
                        ribbonHz, b.impedance().frequencyHz(), b.impedance().magnitudesOhm()))
                .orElse(NOTHING);
        return new CurvePicture(
                point.testPointCode(),
                shows,
                point.impedance().frequencyHz(),
                point.impedance().magnitudesOhm(),
                ribbonHz.clone(),
                low,
                high,
                baseline,
                fromHz,
                toHz,
                values(point.predicted().map(PredictedCurve::frequencyHz)),
                values(point.predicted().map(PredictedCurve::magnitudeOhm)));
    }

    private static double[] values(Optional<List<Double>> list) {
        return list.map(l -> l.stream().mapToDouble(Double::doubleValue).toArray())
                .orElse(NOTHING);
    }

    private static CurvePicture level(
            PointJudgement point,
            Optional<PointReference> reference,
            Optional<AcousticCurve> own,
            double fromHz,
            double toHz) {
        double[] ribbonHz = reference.map(PointReference::acousticFrequencyHz).orElse(NOTHING);
        double[] low = new double[ribbonHz.length];
        double[] high = new double[ribbonHz.length];
        for (int i = 0; i < ribbonHz.length; i++) {
            PointReference r = reference.orElseThrow();
            double width = RIBBON_SPREADS * r.spreadLevelDb()[i];
            low[i] = r.meanLevelDb()[i] - width;
            high[i] = r.meanLevelDb()[i] + width;
        }
        return new CurvePicture(
                point.testPointCode(),
                DecidingCurve.LEVEL,
                point.acoustic().frequencyHz(),
                point.acoustic().levelDb(),
                ribbonHz.clone(),
                low,
                high,
                own.map(o -> onGrid(ribbonHz, o.frequencyHz(), o.levelDb())).orElse(NOTHING),
                fromHz,
                toHz);
    }

    /** Below the noise there is nothing to see. */
    private static CurvePicture bursts(PointJudgement point, Optional<AcousticCurve> own, double fromHz, double toHz) {
        BurstCurve heard = BurstCurve.of(point.acoustic().print());
        double[] noise = heard.noiseDb();
        return new CurvePicture(
                point.testPointCode(),
                DecidingCurve.BURSTS,
                heard.frequencyHz(),
                noLessThan(noise, heard.burstDb()),
                heard.frequencyHz(),
                noise,
                heard.noiseReachDb(),
                own.filter(o -> o.print() != null && o.print().bands().size() > 1)
                        .map(o -> BurstCurve.of(o.print()))
                        .map(o -> noLessThan(noise, onGrid(heard.frequencyHz(), o.frequencyHz(), o.burstDb())))
                        .orElse(NOTHING),
                fromHz,
                toHz);
    }

    private static double[] noLessThan(double[] least, double[] values) {
        double[] result = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            result[i] = Math.max(least[i], values[i]);
        }
        return result;
    }

    /** Straight between neighbours on a logarithmic frequency axis; ends are held. */
    private static double[] onGrid(double[] gridHz, double[] frequencyHz, double[] values) {
        double[] result = new double[gridHz.length];
        int k = 0;
        for (int i = 0; i < gridHz.length; i++) {
            while (k < frequencyHz.length - 2 && frequencyHz[k + 1] < gridHz[i]) {
                k++;
            }
            double share = Math.log(gridHz[i] / frequencyHz[k]) / Math.log(frequencyHz[k + 1] / frequencyHz[k]);
            double inside = Math.min(1, Math.max(0, share));
            result[i] = values[k] + inside * (values[k + 1] - values[k]);
        }
        return result;
    }
}
