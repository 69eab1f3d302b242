package org.docksweep.gate;

import java.util.Arrays;
import java.util.List;
import java.util.Random;

/** Statistics of a handful of units, which one bad unit among them does not spoil. */
final class FewUnits {
    /** A unit whose value is so many spreads from the median does not count for the mean. */
    private static final double NEAR = 2.5;

    private static final long NORMAL_SEED = 4711;
    private static final int TRIMMED_DRAWS = 4000;
    private static final double[] TRIMMED_SQUARES = new double[ReferenceTeacher.MAX_UNITS + 1];
    private static final double[] FREEDOM = new double[ReferenceTeacher.MAX_UNITS + 1];

    static {
        drawNormalValues();
    }

    private FewUnits() {}

    /**
     * Variance that one bad value does not spoil: squares of distances from the median without the largest, divided by what
     * normal values would give.
     */
    static double robustVariance(double[] values) {
        if (values.length < 3) {
            return 0;
        }
        return trimmedSquares(values) / TRIMMED_SQUARES[values.length];
    }

    private static double trimmedSquares(double[] values) {
        double[] distances = distances(values, median(values));
        Arrays.sort(distances);
        double sum = 0;
        for (int i = 0; i < distances.length - 1; i++) {
            sum += distances[i] * distances[i];
        }
        return sum / (distances.length - 1);
    }

    /** What {@link #trimmedSquares} is on average for standard normal values, and how far it scatters, drawn from a named seed. */
    private static void drawNormalValues() {
        Random random = new Random(NORMAL_SEED);
        for (int n = 3; n <= ReferenceTeacher.MAX_UNITS; n++) {
            double sum = 0;
            double squares = 0;
            for (int draw = 0; draw < TRIMMED_DRAWS; draw++) {
                double drawn = trimmedSquares(java.util.stream.DoubleStream.generate(random::nextGaussian)
                        .limit(n)
                        .toArray());
                sum += drawn / TRIMMED_DRAWS;
                squares += drawn * drawn / TRIMMED_DRAWS;
            }
            TRIMMED_SQUARES[n] = sum;
            FREEDOM[n] = 2 * sum * sum / (squares - sum * sum);
        }
    }

    /**
     * Degrees of freedom of {@link #robustVariance}: those of a chi-squared with its relative variance. Fewer than {@code n - 1}, since the largest
     * deviation is not used.
     *
     * @param units number of values, 3 to {@link ReferenceTeacher#MAX_UNITS}
     */
    static double freedom(int units) {
        return FREEDOM[units];
    }

    /**
     * Mean of the values within {@link #NEAR} spreads of their median: a bad unit stays out as it does of a median, whose variance
     * from five normal values is 1.43 times that of their mean (drawn 200,000 times).
     */
    static double meanOfTheNear(double[] values, double spread) {
        double median = median(values);
        return Arrays.stream(values)
                .filter(v -> Math.abs(v - median) <= NEAR * spread)
                .average()
                .orElse(median);
    }

    static double[] medians(List<double[]> rows) {
        double[] result = new double[rows.get(0).length];
        for (int i = 0; i < result.length; i++) {
            result[i] = median(column(rows, i));
        }
        return result;
    }

    static double[] column(List<double[]> rows, int index) {
        return rows.stream().mapToDouble(row -> row[index]).toArray();
    }

    static double[] distances(double[] values, double from) {
        return Arrays.stream(values).map(v -> Math.abs(v - from)).toArray();
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int middle = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[middle] : 0.5 * (sorted[middle - 1] + sorted[middle]);
    }
}
