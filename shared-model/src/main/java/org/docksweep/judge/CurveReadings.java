package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Way;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.ImpedanceCurve;

/** Reads numbers off an impedance curve and sets them beside the model's reference. */
final class CurveReadings {
    /** A deviation is averaged over a third of an octave: 8 of 24 points per octave. */
    private static final int BAND_POINTS = 8;

    private static final double LOW_PEAK_BELOW_HZ = 250;
    private static final double MID_PEAK_BELOW_HZ = 1200;
    private static final double HIGH_PEAK_BELOW_HZ = 2500;

    /** A peak that moved by less than a third is still the same one. */
    private static final double SAME_PEAK_LOG = 0.29;

    /** Peaks of a vented box whose heights differ by less may change places. */
    private static final double SAME_HEIGHT = 0.6;

    private static final double DB_PER_LOG = 20 / StrictMath.log(10);

    private final TestPoint point;
    private final CabinetModel model;
    private final ImpedanceCurve curve;
    private final PointReference reference;
    private final double[] frequencyHz;
    private final double[] magnitudeOhm;

    CurveReadings(CabinetModel model, TestPoint point, ImpedanceCurve curve, PointReference reference) {
        this.model = model;
        this.point = point;
        this.curve = curve;
        this.reference = reference;
        this.frequencyHz = curve.frequencyHz();
        this.magnitudeOhm = curve.magnitudesOhm();
    }

    /** The band that strays furthest from the reference, measured in healthy spreads. */
    record Deviation(double fromHz, double toHz, double deviationDb, double spreadDb) {}

    List<Reading> readings() {
        List<Reading> readings = new ArrayList<>();
        double[] expected = expectedOhm();
        int expectedPeak = expected == null ? -1 : Math.max(0, largestBelow(expected, peakCeilingHz()));
        int peak = peakLike(expectedPeak);
        if (peak > 0) {
            double expectedHz = expected == null ? Double.NaN : frequencyHz[expectedPeak];
            readings.add(
                    reading(ReadingKind.PEAK_FREQUENCY, frequencyHz[peak], frequencyHz[peak] * 0.01, expectedHz, 0.2));
            readings.add(reading(
                    ReadingKind.PEAK_MAGNITUDE,
                    magnitudeOhm[peak],
                    uncertaintyAt(peak),
                    expected == null ? Double.NaN : expected[expectedPeak],
                    0.45));
        }
        if (vented()) {
            int dip = dipBetweenPeaks(magnitudeOhm);
            int expectedDip = expected == null ? -1 : dipBetweenPeaks(expected);
            if (dip > 0) {
                readings.add(reading(
                        ReadingKind.TUNING,
                        frequencyHz[dip],
                        frequencyHz[dip] * 0.01,
                        expectedDip > 0 ? frequencyHz[expectedDip] : Double.NaN,
                        0.15));
            }
        }
        int lowest = 0;
        for (int i = 1; i < magnitudeOhm.length; i++) {
            lowest = magnitudeOhm[i] < magnitudeOhm[lowest] ? i : lowest;
        }
        readings.add(reading(
                ReadingKind.MINIMUM,
                magnitudeOhm[lowest],
                uncertaintyAt(lowest),
                expected == null
                        ? Double.NaN
                        : java.util.Arrays.stream(expected).min().orElse(Double.NaN),
                0.15));
        return readings;
    }

    /** Worst band against the reference, or null without one on this curve's grid. */
    Deviation deviation() {
        double[] expected = expectedOhm();
        if (expected == null || frequencyHz.length < BAND_POINTS) {
            return null;
        }
        Deviation worst = null;
        for (int from = 0; from + BAND_POINTS <= frequencyHz.length; from += BAND_POINTS / 2) {
            double sum = 0;
            double spread = 0;
            for (int i = from; i < from + BAND_POINTS; i++) {
                sum += DB_PER_LOG * StrictMath.log(magnitudeOhm[i] / expected[i]);
                spread += DB_PER_LOG * reference.spreadLog()[i];
            }
            Deviation band = new Deviation(
                    frequencyHz[from], frequencyHz[from + BAND_POINTS - 1], sum / BAND_POINTS, spread / BAND_POINTS);
            if (worst == null
                    || Math.abs(band.deviationDb()) / band.spreadDb()
                            > Math.abs(worst.deviationDb()) / worst.spreadDb()) {
                worst = band;
            }
        }
        return worst;
    }

    private double[] expectedOhm() {
        if (reference == null || !java.util.Arrays.equals(reference.frequencyHz(), frequencyHz)) {
            return null;
        }
        return java.util.Arrays.stream(reference.meanLogOhm())
                .map(StrictMath::exp)
                .toArray();
    }

    private double uncertaintyAt(int index) {
        return curve.standardUncertaintyOhm()[index];
    }

    private boolean vented() {
        return point.positionCodes().stream().anyMatch(p -> model.enclosureOf(p).kind() == EnclosureKind.VENTED);
    }

    private double peakCeilingHz() {
        boolean low =
                point.positionCodes().stream().anyMatch(p -> model.position(p).way() == Way.LF);
        boolean mid =
                point.positionCodes().stream().anyMatch(p -> model.position(p).way() == Way.MF);
        return low ? LOW_PEAK_BELOW_HZ : mid ? MID_PEAK_BELOW_HZ : HIGH_PEAK_BELOW_HZ;
    }

    /**
     * The largest peak, or the one at the place of the expected peak where that is of nearly its height: of the two peaks of a vented box
     * the higher one is chance, and like is to be held against like.
     */
    private int peakLike(int expectedPeak) {
        int largest = largestBelow(magnitudeOhm, peakCeilingHz());
        if (expectedPeak < 0) {
            return largest;
        }
        int near = -1;
        for (int i = 1; i + 1 < magnitudeOhm.length; i++) {
            boolean atPlace = Math.abs(StrictMath.log(frequencyHz[i] / frequencyHz[expectedPeak])) < SAME_PEAK_LOG;
            boolean top = magnitudeOhm[i] >= magnitudeOhm[i - 1] && magnitudeOhm[i] >= magnitudeOhm[i + 1];
            if (atPlace && top && (near < 0 || magnitudeOhm[i] > magnitudeOhm[near])) {
                near = i;
            }
        }
        return near > 0 && magnitudeOhm[near] > SAME_HEIGHT * magnitudeOhm[largest] ? near : largest;
    }

    private int largestBelow(double[] values, double ceilingHz) {
        int best = -1;
        for (int i = 0; i < values.length && frequencyHz[i] <= ceilingHz; i++) {
            best = best < 0 || values[i] > values[best] ? i : best;
        }
        return best;
    }

    /** Lowest point between the two highest separate maxima of the low range, or -1. */
    private int dipBetweenPeaks(double[] values) {
        int first = -1;
        int second = -1;
        for (int i = 1; i + 1 < values.length && frequencyHz[i] <= LOW_PEAK_BELOW_HZ; i++) {
            if (values[i] >= values[i - 1] && values[i] > values[i + 1]) {
                if (first < 0 || values[i] > values[first]) {
                    second = first;
                    first = i;
                } else if (second < 0 || values[i] > values[second]) {
                    second = i;
                }
            }
        }
        if (second < 0) {
            return -1;
        }
        int dip = Math.min(first, second);
        for (int i = dip; i <= Math.max(first, second); i++) {
            dip = values[i] < values[dip] ? i : dip;
        }
        return dip;
    }

    /** A single reading informs; the verdict rests on the whole curve, so limits here only colour the number. */
    private Reading reading(ReadingKind kind, double value, double uncertainty, double expected, double relativeLimit) {
        boolean known = !Double.isNaN(expected);
        double low = expected * (1 - relativeLimit);
        double high = expected * (1 + relativeLimit);
        ReadingState state =
                !known ? ReadingState.NOT_JUDGED : value >= low && value <= high ? ReadingState.OK : ReadingState.WATCH;
        String position =
                point.positionCodes().size() == 1 ? point.positionCodes().get(0) : null;
        return new Reading(
                kind,
                point.code(),
                position,
                Rounding.significant(value),
                Rounding.significant(uncertainty),
                known ? Rounding.significant(expected) : null,
                known ? Rounding.significant(low) : null,
                known ? Rounding.significant(high) : null,
                state);
    }
}
