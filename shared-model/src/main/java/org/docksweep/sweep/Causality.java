package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Whether a curve can belong to one linear load that did not change while it was swept: real and imaginary part of such an
 * impedance hang together (Kramers and Kronig). Tested as B. A. Boukamp does, "A linear Kronig-Kramers transform test for immittance
 * data validation", J. Electrochem. Soc. 142 (1995) 1885: a generous sum of circuits that obey the relation is fitted by linear
 * least squares, and what it leaves does not obey it. His sum has relaxations only; a loudspeaker resonates, so each term here is a damped
 * resonance, {@code (a + b s/w_k) / (1 + s/(Q w_k) + (s/w_k)^2)}, with fixed places and Q, as in the fit with fixed poles of
 * Gustavsen and Semlyen, IEEE Trans. Power Delivery 14 (1999) 1052; beside them R, L and 1/C. (Both from memory.)
 *
 * <p>All terms depend on the frequencies only, so the fit is a projection that is worked out once per plan. A crossover whose
 * driver or coil is open rings sharper than these terms: before a curve is called broken, up to {@value #MOST_SHARP} sharper
 * resonances are offered where it disobeys most. They take up what rings, and not what jumps. A load that
 * changed half way through the sweep, or a channel whose gain slopes without the phase that belongs to it, leaves per cents; drivers,
 * crossovers and cables leave less than half a per cent.
 */
final class Causality {
    private static final double POLES_PER_OCTAVE = 10;
    private static final double POLE_Q = 7;

    /** Terms lie this far beyond both ends of the band: what resonates there shows inside. */
    private static final double BEYOND_OCTAVES = 1.5;

    /** Columns this much smaller after the others were taken out of them are rounding. */
    private static final double RANK = 1e-7;

    /** A point disobeys when it is off by this share of the largest magnitude around it, and by so many standard uncertainties. */
    private static final double SHARE = 0.015;

    private static final double UNCERTAINTIES = 5;
    private static final int SURROUNDINGS = 6;

    /** Share of the largest uncertainty of all that the common terms may carry anywhere; matters for a bare capacitor. */
    private static final double LEAKING = 0.3;

    /** Share of the points that must disobey. */
    private static final double POINTS = 1 / 20.0;

    /** Sharp resonances that a curve may have beyond the common terms. */
    private static final int MOST_SHARP = 3;

    private static final double[] SHARP_QS = {12, 20, 35, 60, 100};

    /** Sharp resonances are looked for on a grid of this, up to so many steps from where the curve disobeys most. */
    private static final double SHARP_STEP_OCTAVES = 1 / 96.0;

    private static final int SHARP_STEPS = 8;

    private static final RecentlyUsed<Key, Causality> KNOWN = new RecentlyUsed<>(6);

    /** Orthonormal directions, each over the real parts and then the imaginary parts of all points. */
    private final double[][] directions;

    private record Key(double firstHz, int points) {}

    /**
     * What the test says.
     *
     * @param relativeRms root mean square of what does not obey, relative to the largest magnitude around each point
     * @param broken whether so many points disobey beyond their uncertainty that the curve is not that of one load
     */
    record Result(double relativeRms, boolean broken) {}

    private Causality(double[] frequencyHz) {
        int n = frequencyHz.length;
        double octaves = StrictMath.log(frequencyHz[n - 1] / frequencyHz[0]) / StrictMath.log(2) + 2 * BEYOND_OCTAVES;
        int poles = (int) Math.ceil(octaves * POLES_PER_OCTAVE) + 1;
        double[][] found = new double[3 + 2 * poles][];
        int count = 0;
        double middleHz = Math.sqrt(frequencyHz[0] * frequencyHz[n - 1]);
        double lowestHz = frequencyHz[0] * StrictMath.pow(2, -BEYOND_OCTAVES);
        for (int c = 0; c < found.length; c++) {
            double[] column = new double[2 * n];
            for (int i = 0; i < n; i++) {
                if (c < 3) {
                    double x = frequencyHz[i] / middleHz;
                    column[i] = c == 0 ? 1 : 0;
                    column[n + i] = c == 0 ? 0 : c == 1 ? x : -1 / x;
                } else {
                    double poleHz = lowestHz * StrictMath.pow(2, (c - 3) / 2 / POLES_PER_OCTAVE);
                    resonance(column, i, frequencyHz[i] / poleHz, POLE_Q, c % 2 == 1);
                }
            }
            double before = Math.sqrt(Sums.energy(column, 0, column.length));
            // twice: once leaves as much of the others as rounding and near dependence let it
            for (int twice = 0; twice < 2; twice++) {
                for (int k = 0; k < count; k++) {
                    takeOut(found[k], column);
                }
            }
            double after = Math.sqrt(Sums.energy(column, 0, column.length));
            if (after > RANK * before) {
                for (int i = 0; i < column.length; i++) {
                    column[i] /= after;
                }
                found[count++] = column;
            }
        }
        directions = Arrays.copyOf(found, count);
    }

    /** One point of {@code 1 / (1 + jx/Q - x^2)}, or of {@code jx} times that. */
    private static void resonance(double[] column, int i, double x, double q, boolean plain) {
        int n = column.length / 2;
        double re = 1 - x * x;
        double im = x / q;
        double norm = re * re + im * im;
        column[i] = plain ? re / norm : x * im / norm;
        column[n + i] = plain ? -im / norm : x * re / norm;
    }

    private static void takeOut(double[] direction, double[] from) {
        double share = Sums.product(direction, 0, from, 0, from.length);
        for (int i = 0; i < from.length; i++) {
            from[i] -= share * direction[i];
        }
    }

    /**
     * Tests a curve.
     *
     * @param frequencyHz frequencies on the grid
     * @param resistanceOhm real parts
     * @param reactanceOhm imaginary parts
     * @param uncertaintyOhm standard uncertainty of both
     * @return what it says
     */
    static Result test(double[] frequencyHz, double[] resistanceOhm, double[] reactanceOhm, double[] uncertaintyOhm) {
        int n = frequencyHz.length;
        Causality known = KNOWN.get(new Key(frequencyHz[0], n), k -> new Causality(frequencyHz));
        double[] left = Arrays.copyOf(resistanceOhm, 2 * n);
        System.arraycopy(reactanceOhm, 0, left, n, n);
        for (double[] direction : known.directions) {
            takeOut(direction, left);
        }
        Left now = Left.of(left, resistanceOhm, reactanceOhm, uncertaintyOhm);
        List<double[]> sharp = new ArrayList<>();
        for (int k = 0; k < MOST_SHARP && now.broken(); k++) {
            known.takeOutSharpest(frequencyHz, left, now.worst(), sharp);
            now = Left.of(left, resistanceOhm, reactanceOhm, uncertaintyOhm);
        }
        return new Result(now.relativeRms(), now.broken());
    }

    /** Takes out the sharp resonance near a point that explains most of what is left. */
    private void takeOutSharpest(double[] frequencyHz, double[] left, int worst, List<double[]> sharp) {
        double[][] best = null;
        double bestEnergy = 0;
        for (double q : SHARP_QS) {
            for (int step = -SHARP_STEPS; step <= SHARP_STEPS; step++) {
                double poleHz = frequencyHz[worst] * StrictMath.pow(2, step * SHARP_STEP_OCTAVES);
                double[][] pair = pair(frequencyHz, poleHz, q, sharp);
                double energy = 0;
                for (double[] direction : pair) {
                    double share = Sums.product(direction, 0, left, 0, left.length);
                    energy += share * share;
                }
                if (energy > bestEnergy) {
                    bestEnergy = energy;
                    best = pair;
                }
            }
        }
        if (best != null) {
            for (double[] direction : best) {
                takeOut(direction, left);
                sharp.add(direction);
            }
        }
    }

    private double[][] pair(double[] frequencyHz, double poleHz, double q, List<double[]> sharp) {
        List<double[]> pair = new ArrayList<>();
        for (boolean plain : new boolean[] {true, false}) {
            double[] column = new double[2 * frequencyHz.length];
            for (int i = 0; i < frequencyHz.length; i++) {
                resonance(column, i, frequencyHz[i] / poleHz, q, plain);
            }
            double before = Math.sqrt(Sums.energy(column, 0, column.length));
            for (double[] direction : directions) {
                takeOut(direction, column);
            }
            sharp.forEach(direction -> takeOut(direction, column));
            pair.forEach(direction -> takeOut(direction, column));
            double after = Math.sqrt(Sums.energy(column, 0, column.length));
            if (after > RANK * before) {
                for (int i = 0; i < column.length; i++) {
                    column[i] /= after;
                }
                pair.add(column);
            }
        }
        return pair.toArray(double[][]::new);
    }

    /**
     * What the terms left of a curve.
     *
     * @param relativeRms root mean square, relative to the largest magnitude around each point
     * @param broken whether too many points disobey
     * @param worst the point that disobeys most
     */
    private record Left(double relativeRms, boolean broken, int worst) {
        static Left of(double[] left, double[] resistanceOhm, double[] reactanceOhm, double[] uncertaintyOhm) {
            int n = resistanceOhm.length;
            double sum = 0;
            int disobeying = 0;
            int worst = 0;
            double most = 0;
            double leaking = LEAKING * Arrays.stream(uncertaintyOhm).max().orElse(0);
            for (int i = 0; i < n; i++) {
                double off = Math.hypot(left[i], left[n + i]);
                // what a neighbour does not fit is partly left here
                double magnitude = 0;
                double uncertainty = 0;
                for (int k = Math.max(0, i - SURROUNDINGS); k <= Math.min(n - 1, i + SURROUNDINGS); k++) {
                    magnitude = Math.max(magnitude, Math.hypot(resistanceOhm[k], reactanceOhm[k]));
                    uncertainty = Math.max(uncertainty, uncertaintyOhm[k]);
                }
                sum += off * off / Math.max(Double.MIN_NORMAL, magnitude * magnitude);
                disobeying += off > Math.max(SHARE * magnitude, Math.max(UNCERTAINTIES * uncertainty, leaking)) ? 1 : 0;
                if (off > most) {
                    most = off;
                    worst = i;
                }
            }
            return new Left(Math.sqrt(sum / n), disobeying > POINTS * n, worst);
        }
    }
}
