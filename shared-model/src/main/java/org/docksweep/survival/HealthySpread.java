package org.docksweep.survival;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.docksweep.fleet.Require;

/**
 * How much a healthy quantity scatters from return to return, from many units of one kind: the median of the absolute
 * differences between neighbouring readings (so that units on their way down do not count as scatter), times
 * {@code 1.4826 / sqrt(2)} as for a normal distribution, drawn towards the usual value while units are few.
 */
public final class HealthySpread {
    /** The usual spread counts as much as so many differences. */
    private static final double WORTH = 20;

    private static final double MEDIAN_TO_SIGMA = 1.482602218505602;

    private HealthySpread() {}

    /**
     * Estimates the spread.
     *
     * @param series readings of each unit, oldest first
     * @param usual usual spread, greater than 0
     * @return the spread, greater than 0
     */
    public static double of(List<List<Double>> series, double usual) {
        Require.positive("usual spread", usual);
        List<Double> differences = new ArrayList<>();
        for (List<Double> one : series) {
            for (int i = 1; i < one.size(); i++) {
                differences.add(Math.abs(one.get(i) - one.get(i - 1)));
            }
        }
        int count = differences.size();
        if (count == 0) {
            return usual;
        }
        Collections.sort(differences);
        double median = (differences.get((count - 1) / 2) + differences.get(count / 2)) / 2;
        double seen = median * MEDIAN_TO_SIGMA / Math.sqrt(2);
        return Math.sqrt((count * seen * seen + WORTH * usual * usual) / (count + WORTH));
    }
}
