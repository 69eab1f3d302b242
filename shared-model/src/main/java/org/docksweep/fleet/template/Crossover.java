package org.docksweep.fleet.template;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.Require;

/**
 * Parts of a passive crossover filter between a source of no resistance and a resistive load, as filter handbooks give them:
 * each part is {@code g R / w} (coil) or {@code g / (R w)} (capacitor) with {@code w = 2 pi fc}.
 *
 * <p>Normalised values g of the low-pass, source to load: order 1: 1; order 2 Butterworth: sqrt 2, 1/sqrt 2; order 2
 * Linkwitz-Riley: 2, 1/2; order 3 Butterworth: 3/2, 4/3, 1/2; order 4 Linkwitz-Riley: 1.885618, 1.590990, 0.942809,
 * 0.353553 (continued fraction of the squared second-order Butterworth). The high-pass has the reciprocals, with coils and
 * capacitors exchanged.
 */
public final class Crossover {
    private static final double[][] LOW_PASS = {
        {1},
        {Math.sqrt(2), 1 / Math.sqrt(2)},
        {1.5, 4.0 / 3, 0.5},
        {4 * Math.sqrt(2) / 3, 9 / (4 * Math.sqrt(2)), 2 * Math.sqrt(2) / 3, 1 / (2 * Math.sqrt(2))}
    };
    private static final double[] LINKWITZ_RILEY_2 = {2, 0.5};

    private Crossover() {}

    /** Shape of a filter. */
    public enum Alignment {
        /** Flat power sum; of order 4 not offered. */
        BUTTERWORTH,
        /** Both ways 6 dB down at the crossover; of even order. */
        LINKWITZ_RILEY
    }

    /**
     * One part of a ladder.
     *
     * @param coil whether it is a coil; a capacitor otherwise
     * @param series whether it lies in the way of the current; across it otherwise
     * @param value henry or farad
     */
    public record Part(boolean coil, boolean series, double value) {}

    /**
     * The low-pass of a way.
     *
     * @param order 1 to 4
     * @param alignment shape; order 1 and 3 are Butterworth, order 4 is Linkwitz-Riley
     * @param loadOhm resistance it works into, greater than 0
     * @param crossoverHz crossover frequency, greater than 0
     * @return parts from the contacts to the driver
     * @throws IllegalArgumentException if there is no such filter
     */
    public static List<Part> lowPass(int order, Alignment alignment, double loadOhm, double crossoverHz) {
        return ladder(normalised(order, alignment), true, loadOhm, crossoverHz);
    }

    /**
     * The high-pass of a way.
     *
     * @param order 1 to 4
     * @param alignment shape; order 1 and 3 are Butterworth, order 4 is Linkwitz-Riley
     * @param loadOhm resistance it works into, greater than 0
     * @param crossoverHz crossover frequency, greater than 0
     * @return parts from the contacts to the driver
     * @throws IllegalArgumentException if there is no such filter
     */
    public static List<Part> highPass(int order, Alignment alignment, double loadOhm, double crossoverHz) {
        return ladder(normalised(order, alignment), false, loadOhm, crossoverHz);
    }

    private static double[] normalised(int order, Alignment alignment) {
        Require.inRange("crossover order", order, 1, 4);
        boolean linkwitz = alignment == Alignment.LINKWITZ_RILEY;
        if (linkwitz && order % 2 == 1 || !linkwitz && order == 4) {
            throw new IllegalArgumentException("a crossover of order " + order + " is not made as " + alignment
                    + "; orders 1, 2 and 3 are BUTTERWORTH, orders 2 and 4 LINKWITZ_RILEY");
        }
        return linkwitz && order == 2 ? LINKWITZ_RILEY_2 : LOW_PASS[order - 1];
    }

    private static List<Part> ladder(double[] lowPass, boolean low, double loadOhm, double crossoverHz) {
        Require.positive("crossover load in ohm", loadOhm);
        Require.positive("crossover frequency in hertz", crossoverHz);
        double omega = 2 * Math.PI * crossoverHz;
        List<Part> parts = new ArrayList<>();
        for (int i = 0; i < lowPass.length; i++) {
            boolean series = i % 2 == 0;
            boolean coil = series == low;
            double g = low ? lowPass[i] : 1 / lowPass[i];
            parts.add(new Part(coil, series, coil ? g * loadOhm / omega : g / (loadOhm * omega)));
        }
        return List.copyOf(parts);
    }

    /**
     * The pad that lowers a level and keeps the load: {@code Rs = R (1 - k)}, {@code Rp = R k / (1 - k)},
     * {@code k = 10^(-A/20)}.
     *
     * @param loadOhm load, greater than 0
     * @param lossDb loss A, greater than 0
     * @return series and parallel resistance, in ohm
     */
    public static double[] pad(double loadOhm, double lossDb) {
        Require.positive("pad load in ohm", loadOhm);
        Require.positive("pad loss in dB", lossDb);
        double k = Math.pow(10, -lossDb / 20);
        return new double[] {loadOhm * (1 - k), loadOhm * k / (1 - k)};
    }
}
