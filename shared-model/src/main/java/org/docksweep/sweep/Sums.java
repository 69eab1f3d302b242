package org.docksweep.sweep;

/** Sums over samples, four side by side: one alone only waits for its own last addition. */
final class Sums {
    private Sums() {}

    /**
     * Sum of squares; parts outside the array count as silence.
     *
     * @param samples samples
     * @param from first sample
     * @param length number of samples
     * @return the sum
     */
    static double energy(double[] samples, int from, int length) {
        int at = Math.max(0, from);
        int to = Math.min(samples.length, from + length);
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        for (; at + 3 < to; at += 4) {
            a += samples[at] * samples[at];
            b += samples[at + 1] * samples[at + 1];
            c += samples[at + 2] * samples[at + 2];
            d += samples[at + 3] * samples[at + 3];
        }
        for (; at < to; at++) {
            a += samples[at] * samples[at];
        }
        return a + b + (c + d);
    }

    /**
     * Sum of products of two stretches.
     *
     * @param one samples
     * @param oneFrom first sample of the one
     * @param two other samples
     * @param twoFrom first sample of the other
     * @param length number of samples, all inside both arrays
     * @return the sum
     */
    static double product(double[] one, int oneFrom, double[] two, int twoFrom, int length) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = 0;
        for (; i + 3 < length; i += 4) {
            a += one[oneFrom + i] * two[twoFrom + i];
            b += one[oneFrom + i + 1] * two[twoFrom + i + 1];
            c += one[oneFrom + i + 2] * two[twoFrom + i + 2];
            d += one[oneFrom + i + 3] * two[twoFrom + i + 3];
        }
        for (; i < length; i++) {
            a += one[oneFrom + i] * two[twoFrom + i];
        }
        return a + b + (c + d);
    }

    /**
     * Sum of products of two stretches.
     *
     * @param one samples
     * @param oneFrom first sample of the one
     * @param two other samples
     * @param twoFrom first sample of the other
     * @param length number of samples, all inside both arrays
     * @return the sum
     */
    static double product(float[] one, int oneFrom, double[] two, int twoFrom, int length) {
        double a = 0;
        double b = 0;
        double c = 0;
        double d = 0;
        int i = 0;
        for (; i + 3 < length; i += 4) {
            a += one[oneFrom + i] * two[twoFrom + i];
            b += one[oneFrom + i + 1] * two[twoFrom + i + 1];
            c += one[oneFrom + i + 2] * two[twoFrom + i + 2];
            d += one[oneFrom + i + 3] * two[twoFrom + i + 3];
        }
        for (; i < length; i++) {
            a += one[oneFrom + i] * two[twoFrom + i];
        }
        return a + b + (c + d);
    }

    /**
     * Sum of squared differences of two stretches of a channel; parts outside the array count as silence.
     *
     * @param samples samples
     * @param one first sample of the one
     * @param two first sample of the other
     * @param length number of samples
     * @return the sum
     */
    static double differenceEnergy(double[] samples, int one, int two, int length) {
        double sum = 0;
        double other = 0;
        boolean inside = Math.min(one, two) >= 0 && Math.max(one, two) + length <= samples.length;
        int i = 0;
        for (; inside && i + 1 < length; i += 2) {
            double first = samples[one + i] - samples[two + i];
            double second = samples[one + i + 1] - samples[two + i + 1];
            sum += first * first;
            other += second * second;
        }
        for (; i < length; i++) {
            double difference = at(samples, one + i) - at(samples, two + i);
            sum += difference * difference;
        }
        return sum + other;
    }

    private static double at(double[] samples, int index) {
        return index >= 0 && index < samples.length ? samples[index] : 0;
    }
}
