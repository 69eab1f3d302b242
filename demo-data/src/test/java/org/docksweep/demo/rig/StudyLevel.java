package org.docksweep.demo.rig;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.docksweep.gate.Quantity;

/** Errors and intervals of one noise level of the {@link AccuracyStudy}. */
final class StudyLevel {
    private static final double FACTOR_95 = 1.96;

    final double noiseDbFs;
    int measured;
    int sweptAgain;
    int unfitted;
    long points;
    long pointsHeld;
    double worstShareOfLimit;
    double worstShareOfLimitHz;
    String worstShareOfLimitUnit = "";
    final Map<Quantity.Kind, List<double[]>> errors = new EnumMap<>(Quantity.Kind.class);

    StudyLevel(double noiseDbFs) {
        this.noiseDbFs = noiseDbFs;
    }

    /** Counts a point of a curve. */
    void point(double error, double standardUncertainty) {
        points++;
        pointsHeld += Math.abs(error) < FACTOR_95 * standardUncertainty ? 1 : 0;
    }

    void compare(Quantity quantity, double truth) {
        errors.computeIfAbsent(quantity.kind(), k -> new ArrayList<>())
                .add(new double[] {quantity.value() / truth - 1, quantity.standardUncertainty() / truth});
    }

    /** Takes over what another counted at the same level. */
    void add(StudyLevel other) {
        measured += other.measured;
        sweptAgain += other.sweptAgain;
        unfitted += other.unfitted;
        points += other.points;
        pointsHeld += other.pointsHeld;
        if (other.worstShareOfLimit > worstShareOfLimit) {
            worstShareOfLimit = other.worstShareOfLimit;
            worstShareOfLimitHz = other.worstShareOfLimitHz;
            worstShareOfLimitUnit = other.worstShareOfLimitUnit;
        }
        other.errors.forEach((kind, list) ->
                errors.computeIfAbsent(kind, k -> new ArrayList<>()).addAll(list));
    }

    /** 95th percentile of the relative error of some kinds, in per cent; NaN without any. */
    double percentile95(Quantity.Kind... kinds) {
        double[] sorted =
                all(kinds).stream().mapToDouble(e -> Math.abs(e[0])).sorted().toArray();
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

    void print() {
        System.out.printf(
                Locale.ROOT,
                "noise %.0f dB FS: %d measured, %d swept again, %d not fitted%n  curve: largest error %.2f of the allowed"
                        + " 0.5 %% + 0.02 ohm (%s, %.1f Hz); intervals hold at %s of %d points%n",
                noiseDbFs,
                measured,
                sweptAgain,
                unfitted,
                worstShareOfLimit,
                worstShareOfLimitUnit,
                worstShareOfLimitHz,
                wilson(pointsHeld, points),
                points);
        errors.forEach((kind, list) -> System.out.printf(
                Locale.ROOT,
                "  %-20s n %5d  95th percentile %.3f %%  intervals hold %s%n",
                kind,
                list.size(),
                percentile95(kind),
                wilson(held(kind), list.size())));
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
}
