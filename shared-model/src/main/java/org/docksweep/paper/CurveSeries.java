package org.docksweep.paper;

import java.util.Arrays;
import java.util.Optional;
import org.docksweep.acoustic.BurstCurve;
import org.docksweep.gate.PointReference;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.suspect.PredictedCurve;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.jfree.data.xy.XYDataset;
import org.jfree.data.xy.XYSeries;
import org.jfree.data.xy.XYSeriesCollection;
import org.jfree.data.xy.YIntervalSeries;
import org.jfree.data.xy.YIntervalSeriesCollection;

/**
 * What a curve plot draws, and the ranges it needs. The ribbon reaches two standard deviations of healthy units to each
 * side of their mean.
 *
 * @param measured measured curve
 * @param mean mean of the reference, may be empty
 * @param ribbon ribbon of the reference, may be empty
 * @param predicted what the first suspect predicts, may be empty
 * @param lowestHz lower end of the frequency axis
 * @param highestHz upper end of the frequency axis
 * @param lowestValue lower end of the value axis
 * @param highestValue upper end of the value axis
 */
record CurveSeries(
        XYDataset measured,
        XYDataset mean,
        XYDataset ribbon,
        XYDataset predicted,
        double lowestHz,
        double highestHz,
        double lowestValue,
        double highestValue) {
    private static final double RIBBON_SPREADS = 2;
    /** An open circuit is drawn against the upper edge: more decades would flatten what can be read. */
    private static final double LARGEST_OHM = 2000;

    private static final double SMALLEST_OHM = 0.05;
    private static final double LEVEL_MARGIN_DB = 3;

    static CurveSeries of(CurveChoice choice) {
        PointReference reference = choice.reference();
        if (choice.shows() == DecidingCurve.BURSTS) {
            return bursts(BurstCurve.of(choice.judgement().acoustic().print()));
        }
        if (choice.shows() == DecidingCurve.IMPEDANCE) {
            ImpedanceCurve curve = choice.judgement().impedance();
            double[] ohm = Arrays.stream(curve.magnitudesOhm())
                    .map(z -> Math.min(LARGEST_OHM, Math.max(SMALLEST_OHM, z)))
                    .toArray();
            double[][] band = reference == null
                    ? new double[4][0]
                    : band(reference.frequencyHz(), reference.meanLogOhm(), reference.spreadLog(), true);
            double[] ends = ends(ohm, band);
            return build(
                    curve.frequencyHz(),
                    ohm,
                    band,
                    predicted(choice.judgement().predicted()),
                    ends[0] / 1.25,
                    ends[1] * 1.25);
        }
        AcousticCurve curve = choice.judgement().acoustic();
        double[][] band = reference == null
                ? new double[4][0]
                : band(reference.acousticFrequencyHz(), reference.meanLevelDb(), reference.spreadLevelDb(), false);
        double[] ends = ends(curve.levelDb(), band);
        return build(
                curve.frequencyHz(),
                curve.levelDb(),
                band,
                predicted(Optional.empty()),
                ends[0] - LEVEL_MARGIN_DB,
                ends[1] + LEVEL_MARGIN_DB);
    }

    /** Over what noise alone would show; below its rms there is nothing to see. */
    private static CurveSeries bursts(BurstCurve heard) {
        double[] noise = heard.noiseDb();
        double[] shown = heard.burstDb();
        for (int i = 0; i < shown.length; i++) {
            shown[i] = Math.max(noise[i], shown[i]);
        }
        double[][] band = {heard.frequencyHz(), heard.noiseReachDb(), noise, heard.noiseReachDb()};
        double[] ends = ends(shown, band);
        return build(
                heard.frequencyHz(),
                shown,
                band,
                predicted(Optional.empty()),
                ends[0] - LEVEL_MARGIN_DB,
                ends[1] + LEVEL_MARGIN_DB);
    }

    private static XYDataset predicted(Optional<PredictedCurve> curve) {
        XYSeries series = new XYSeries("predicted", false);
        curve.ifPresent(c -> {
            for (int i = 0; i < c.frequencyHz().size(); i++) {
                double ohm = Math.min(
                        LARGEST_OHM, Math.max(SMALLEST_OHM, c.magnitudeOhm().get(i)));
                series.add(c.frequencyHz().get(i).doubleValue(), ohm, false);
            }
        });
        return new XYSeriesCollection(series);
    }

    /** Frequencies, mean, lower and upper edge. */
    private static double[][] band(double[] frequencyHz, double[] mean, double[] spread, boolean logarithms) {
        double[][] band = new double[4][frequencyHz.length];
        for (int i = 0; i < frequencyHz.length; i++) {
            double reach = RIBBON_SPREADS * spread[i];
            band[0][i] = frequencyHz[i];
            band[1][i] = logarithms ? Math.exp(mean[i]) : mean[i];
            band[2][i] = logarithms ? Math.exp(mean[i] - reach) : mean[i] - reach;
            band[3][i] = logarithms ? Math.exp(mean[i] + reach) : mean[i] + reach;
        }
        return band;
    }

    private static double[] ends(double[] values, double[][] band) {
        double lowest = Math.min(
                Arrays.stream(values).min().orElseThrow(),
                Arrays.stream(band[2]).min().orElse(Double.POSITIVE_INFINITY));
        double highest = Math.max(
                Arrays.stream(values).max().orElseThrow(),
                Arrays.stream(band[3]).max().orElse(Double.NEGATIVE_INFINITY));
        return new double[] {lowest, highest};
    }

    private static CurveSeries build(
            double[] frequencyHz,
            double[] values,
            double[][] band,
            XYDataset predicted,
            double lowest,
            double highest) {
        XYSeries measured = new XYSeries("measured", false);
        for (int i = 0; i < frequencyHz.length; i++) {
            measured.add(frequencyHz[i], values[i], false);
        }
        XYSeries mean = new XYSeries("mean", false);
        YIntervalSeries ribbon = new YIntervalSeries("ribbon", false, true);
        for (int i = 0; i < band[0].length; i++) {
            mean.add(band[0][i], band[1][i], false);
            ribbon.add(band[0][i], band[1][i], band[2][i], band[3][i]);
        }
        YIntervalSeriesCollection ribbons = new YIntervalSeriesCollection();
        ribbons.addSeries(ribbon);
        return new CurveSeries(
                new XYSeriesCollection(measured),
                new XYSeriesCollection(mean),
                ribbons,
                predicted,
                frequencyHz[0],
                frequencyHz[frequencyHz.length - 1],
                lowest,
                highest);
    }
}
