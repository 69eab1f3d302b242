package org.docksweep.judge;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.ImpedanceCurve;

/** How far a curve strays from the model's reference and from the cabinet's own baseline, band by band. */
final class DeviationReadings {
    /** A deviation is averaged over a third of an octave: 8 of 24 points per octave. */
    private static final int BAND_POINTS = 8;
    /** Healthy spreads that a deviation may reach before it is marked. */
    private static final double SPREADS = 4;

    private static final double DB_PER_LOG = 20 / StrictMath.log(10);

    private DeviationReadings() {}

    static List<Reading> of(
            TestPoint point, ImpedanceCurve curve, CurveReadings.Deviation fromReference, Optional<Baseline> own) {
        List<Reading> readings = new ArrayList<>();
        double uncertaintyDb = uncertaintyDb(curve);
        if (fromReference != null) {
            double limitDb = SPREADS * fromReference.spreadDb();
            readings.add(new Reading(
                    ReadingKind.IMPEDANCE_DEVIATION,
                    point.code(),
                    null,
                    Rounding.significant(fromReference.deviationDb()),
                    Rounding.significant(uncertaintyDb),
                    0.0,
                    Rounding.significant(-limitDb),
                    Rounding.significant(limitDb),
                    Math.abs(fromReference.deviationDb()) <= limitDb ? ReadingState.OK : ReadingState.WATCH));
        }
        own.filter(b -> Arrays.equals(b.impedance().frequencyHz(), curve.frequencyHz()))
                .ifPresent(b -> readings.add(new Reading(
                        ReadingKind.BASELINE_DEVIATION,
                        point.code(),
                        null,
                        Rounding.significant(worstDb(curve, b.impedance())),
                        Rounding.significant(Math.sqrt(2) * uncertaintyDb),
                        0.0,
                        null,
                        null,
                        // Temperature moves a healthy curve too; the fit allows for it, this plain number does not.
                        ReadingState.NOT_JUDGED)));
        return readings;
    }

    private static double worstDb(ImpedanceCurve curve, ImpedanceCurve baseline) {
        double worst = 0;
        for (int from = 0; from + BAND_POINTS <= curve.size(); from += BAND_POINTS / 2) {
            double sum = 0;
            for (int i = from; i < from + BAND_POINTS; i++) {
                sum += DB_PER_LOG * StrictMath.log(curve.magnitudeOhm(i) / baseline.magnitudeOhm(i));
            }
            double band = sum / BAND_POINTS;
            worst = Math.abs(band) > Math.abs(worst) ? band : worst;
        }
        return worst;
    }

    /** Mean relative standard uncertainty of the points, in dB; a band of independent points would know more. */
    private static double uncertaintyDb(ImpedanceCurve curve) {
        double sum = 0;
        double[] uncertainty = curve.standardUncertaintyOhm();
        for (int i = 0; i < curve.size(); i++) {
            sum += uncertainty[i] / Math.max(1e-9, curve.magnitudeOhm(i));
        }
        return DB_PER_LOG * sum / curve.size();
    }
}
