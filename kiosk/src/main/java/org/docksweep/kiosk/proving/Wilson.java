package org.docksweep.kiosk.proving;

/**
 * Two-sided 95 % limits of a share by Wilson's score interval (Wilson 1927): {@code (p + z^2/2n +- z sqrt(p(1-p)/n +
 * z^2/4n^2)) / (1 + z^2/n)}, z = 1.96.
 *
 * @param low lower limit, 0 to 1
 * @param high upper limit, 0 to 1
 */
public record Wilson(double low, double high) {
    private static final double Z = 1.959963984540054;
    private static final double Z_ONE_SIDED = 1.6448536269514722;

    /**
     * Limits of a count.
     *
     * @param hits how many, 0 to trials
     * @param trials out of how many, at least 1
     * @return the limits
     */
    public static Wilson of(int hits, int trials) {
        return of(hits, trials, Z);
    }

    /**
     * Upper one-sided 95 % limit of a count (z = 1.645).
     *
     * @param hits how many, 0 to trials
     * @param trials out of how many, at least 1
     * @return the share that is not exceeded with a confidence of 95 %
     */
    public static double upperOneSided(int hits, int trials) {
        return of(hits, trials, Z_ONE_SIDED).high();
    }

    private static Wilson of(int hits, int trials, double z) {
        if (!(trials >= 1 && hits >= 0 && hits <= trials)) {
            throw new IllegalArgumentException(
                    "hits must be from 0 to trials, and trials at least 1, but are " + hits + " of " + trials);
        }
        double p = hits / (double) trials;
        double z2n = z * z / trials;
        double centre = (p + z2n / 2) / (1 + z2n);
        double half = z * Math.sqrt(p * (1 - p) / trials + z2n / (4.0 * trials)) / (1 + z2n);
        return new Wilson(Math.max(0, centre - half), Math.min(1, centre + half));
    }
}
