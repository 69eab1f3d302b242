package org.docksweep.judge;

import java.util.List;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.docksweep.gate.Quantity;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.sweep.ImpedanceCurve;

/** Puts what a fitted model says in the place of what the nearest grid point says. */
final class FittedReadings {
    /** A grid of 24 points per octave is at most this far from a peak; a fit that is further off speaks of another one. */
    private static final double SAME_PLACE = 0.03;

    private static final double SAME_MAGNITUDE = 0.08;

    private FittedReadings() {}

    /**
     * Gives a reading the fit's value and uncertainty where the fit has them.
     *
     * @param quantities quantities of the same point
     * @return the change of one reading
     */
    static UnaryOperator<Reading> sharpenedBy(List<Quantity> quantities) {
        return reading -> {
            double within = reading.kind().unit().equals("Hz") ? SAME_PLACE : SAME_MAGNITUDE;
            return quantities.stream()
                    .filter(q -> kinds(reading.kind()).contains(q.kind()))
                    .filter(q -> Math.abs(q.value() / reading.value() - 1) < within)
                    .findFirst()
                    .map(q -> with(reading, q))
                    .orElse(reading);
        };
    }

    private static Set<Quantity.Kind> kinds(ReadingKind kind) {
        return switch (kind) {
            case PEAK_FREQUENCY -> Set.of(Quantity.Kind.PEAK, Quantity.Kind.LOWER_PEAK, Quantity.Kind.UPPER_PEAK);
            case PEAK_MAGNITUDE -> Set.of(Quantity.Kind.PEAK_MAGNITUDE);
            case TUNING -> Set.of(Quantity.Kind.DIP);
            case MINIMUM -> Set.of(Quantity.Kind.LOWEST);
            default -> Set.of();
        };
    }

    private static Reading with(Reading reading, Quantity quantity) {
        return new Reading(
                reading.kind(),
                reading.testPointCode(),
                reading.positionCode(),
                Rounding.significant(quantity.value()),
                Rounding.significant(quantity.standardUncertainty()),
                reading.reference(),
                reading.lowerLimit(),
                reading.upperLimit(),
                reading.state());
    }

    /** Every second point: the fit costs half, and its uncertainty says so. */
    static ImpedanceCurve thinned(ImpedanceCurve curve) {
        return new ImpedanceCurve(
                half(curve.frequencyHz()),
                half(curve.resistanceOhm()),
                half(curve.reactanceOhm()),
                half(curve.standardUncertaintyOhm()));
    }

    private static double[] half(double[] values) {
        double[] kept = new double[(values.length + 1) / 2];
        for (int i = 0; i < kept.length; i++) {
            kept[i] = values[2 * i];
        }
        return kept;
    }
}
