package org.docksweep.acoustic;

import java.util.concurrent.ConcurrentHashMap;
import org.hipparchus.distribution.continuous.NormalDistribution;

/** The largest of several overlapping strokes of noise on the scale of a single normal deviate. */
final class LargestOf {
    private static final double LOWEST = -4;
    private static final double HIGHEST = 8;
    private static final int STEPS = 240;

    /** Strokes that overlap by half are worth so many independent ones each. */
    private static final double INDEPENDENT = 0.75;

    private static final NormalDistribution NORMAL = new NormalDistribution();
    private static final ConcurrentHashMap<Integer, double[]> TABLES = new ConcurrentHashMap<>();

    private LargestOf() {}

    /**
     * The deviate that is exceeded as rarely as this largest one: {@code P(z') = P(z)^n}.
     *
     * @param largest largest of the strokes' deviates
     * @param count number of strokes, at least 1
     * @return deviate
     */
    static double normal(double largest, int count) {
        if (count == 1) {
            return largest;
        }
        double[] table = TABLES.computeIfAbsent(count, LargestOf::table);
        double position = (largest - LOWEST) / (HIGHEST - LOWEST) * STEPS;
        int at = (int) Math.max(0, Math.min(STEPS - 1, Math.floor(position)));
        double share = Math.max(0, Math.min(1, position - at));
        return table[at] + share * (table[at + 1] - table[at]);
    }

    private static double[] table(int count) {
        double[] table = new double[STEPS + 1];
        double n = Math.max(1, INDEPENDENT * count);
        for (int i = 0; i <= STEPS; i++) {
            double z = LOWEST + (HIGHEST - LOWEST) * i / STEPS;
            // by what is left above, since 1 - 1e-17 is 1
            double above = NORMAL.cumulativeProbability(-z);
            double aboveAll = -StrictMath.expm1(n * StrictMath.log1p(-Math.min(above, 1 - 1e-15)));
            table[i] = -NORMAL.inverseCumulativeProbability(Math.max(1e-300, Math.min(1 - 1e-15, aboveAll)));
        }
        return table;
    }
}
