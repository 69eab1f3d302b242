package org.docksweep.demo.drawn;

import java.util.SplittableRandom;

/** Draws by which designers' choices are imitated. */
final class Dice {
    private static final double[] E12 = {1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2, 10};

    private final SplittableRandom random;

    Dice(long seed) {
        random = new SplittableRandom(seed);
    }

    /** Evenly spread over a range, in its logarithm. */
    double between(double low, double high) {
        return low * Math.pow(high / low, random.nextDouble());
    }

    /** True with a probability. */
    boolean chance(double probability) {
        return random.nextDouble() < probability;
    }

    /** One of some, each as likely. */
    @SafeVarargs
    final <T> T oneOf(T... some) {
        return some[random.nextInt(some.length)];
    }

    /** A whole number, both ends included. */
    int wholeBetween(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    /**
     * The preferred value nearest by ratio, of the E12 series (IEC 60063, from memory): what a part can be bought as.
     *
     * @param value greater than 0
     * @return one of E12 times a power of ten
     */
    static double preferred(double value) {
        double decade = Math.pow(10, Math.floor(Math.log10(value)));
        double best = E12[0];
        for (double step : E12) {
            if (Math.abs(Math.log(value / (decade * step))) < Math.abs(Math.log(value / (decade * best)))) {
                best = step;
            }
        }
        return decade * best;
    }
}
