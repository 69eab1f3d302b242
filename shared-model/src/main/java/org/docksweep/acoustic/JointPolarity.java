package org.docksweep.acoustic;

import java.util.List;

/**
 * Which ways sound the wrong way round, decided over all of them with <em>one</em> delay: a cabinet stands where it
 * stands with all its ways. In a narrow band alone, a way turned over looks much like the same way half a period later;
 * the others say that it did not come later.
 *
 * <p>With signs s and delay tau a band of m independent parts strays from the reference by the mean square {@code d = 2 (1 -
 * s c(tau))}. How much healthy cabinets stray is only roughly known, so the variance is integrated out (inverse gamma
 * prior; Student): {@code ln p = -(a + sum m) ln(a v + sum m d)}.
 */
final class JointPolarity {
    /** Mean square by which a healthy band strays, about 1.5 dB and 8 degrees; common practice, no source. */
    private static final double USUAL_SQUARE = 0.05;

    /** So many observations that guess is worth. */
    private static final double USUAL_WEIGHT = 2;

    /** Thirds of an octave that stray together. */
    private static final double THIRDS_TOGETHER = 2;

    /** Cost of every other way that would have to be reversed as well: the prior of one. */
    private static final double ALSO_REVERSED_LOG = -6;

    private static final double MOST_LOG = 15;

    private final double[][] lobes;
    private final double[] parts;
    private final double all;

    /**
     * Takes the ways together.
     *
     * @param bands bands of the ways
     * @param polarities their correlations; null for a way that is not heard or whose phase is not known
     */
    JointPolarity(List<WayBand> bands, List<Polarity> polarities) {
        int n = bands.size();
        this.lobes = new double[n][];
        this.parts = new double[n];
        double sum = 0;
        for (int w = 0; w < n; w++) {
            if (polarities.get(w) != null) {
                double octaves =
                        StrictMath.log(bands.get(w).toHz() / bands.get(w).fromHz()) / StrictMath.log(2);
                lobes[w] = polarities.get(w).lobes();
                parts[w] = 3 * octaves / THIRDS_TOGETHER;
                sum += parts[w];
            }
        }
        this.all = sum;
    }

    /**
     * Logarithm of the likelihood ratio of a way reversed over not reversed, whatever the others are.
     *
     * @param way number of the way
     * @return logarithm, at most 15 either way; 0 where the phase is not known
     */
    double log(int way) {
        if (lobes[way] == null) {
            return 0;
        }
        return Math.max(-MOST_LOG, Math.min(MOST_LOG, best(way, -1) - best(way, 1)));
    }

    /**
     * Whether no other way tells the delay.
     *
     * @param way number of the way
     * @return true if so
     */
    boolean alone(int way) {
        for (int w = 0; w < lobes.length; w++) {
            if (w != way && lobes[w] != null) {
                return false;
            }
        }
        return true;
    }

    /**
     * How much better the reference fits with the way turned over.
     *
     * @param way number of the way
     * @return ratio of what is left over (rms), above 1 when turned over fits better
     */
    double ratio(int way) {
        return lobes[way] == null ? 1 : StrictMath.exp((best(way, -1) - best(way, 1)) / (2 * (USUAL_WEIGHT + all)));
    }

    private double best(int way, int sign) {
        double best = Double.NEGATIVE_INFINITY;
        for (int others = 0; others < 1 << lobes.length; others++) {
            if ((others >> way & 1) == 0) {
                best = Math.max(best, likelihood(others | (sign < 0 ? 1 << way : 0)) + cost(others));
            }
        }
        return best;
    }

    private double cost(int reversed) {
        for (int w = 0; w < lobes.length; w++) {
            if ((reversed >> w & 1) == 1 && lobes[w] == null) {
                return Double.NEGATIVE_INFINITY;
            }
        }
        return ALSO_REVERSED_LOG * Integer.bitCount(reversed);
    }

    private double likelihood(int reversed) {
        double least = Double.POSITIVE_INFINITY;
        int steps = 0;
        for (double[] one : lobes) {
            steps = one == null ? steps : one.length;
        }
        for (int s = 0; s < steps; s++) {
            double square = 0;
            for (int w = 0; w < lobes.length; w++) {
                if (lobes[w] != null) {
                    double c = (reversed >> w & 1) == 1 ? -lobes[w][s] : lobes[w][s];
                    square += parts[w] * 2 * (1 - c);
                }
            }
            least = Math.min(least, square);
        }
        return -(USUAL_WEIGHT + all) * StrictMath.log(USUAL_WEIGHT * USUAL_SQUARE + least);
    }
}
