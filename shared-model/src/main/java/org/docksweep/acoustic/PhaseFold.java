package org.docksweep.acoustic;

import java.util.Arrays;
import org.hipparchus.util.KthSelector;

/**
 * Looks for short events that sit at the same phase of the sweep, period after period, in every sweep. Each period is
 * cut into overlapping cells; the largest energy within a millisecond of a cell against the median cell of its own period, brought to a standard
 * normal scale (Wilson and Hilferty 1931, from memory) and cut off at 4.5, is summed over the periods of a window along
 * straight lines of phase, since the phase of the excursion turns slowly as the sweep passes a resonance. Noise of the
 * hall raises the median as much as the cell; one knock is one cell of one sweep and counts as 4.5 at most; whatever does
 * not come back in the other sweep at the same place does not count at all.
 */
final class PhaseFold {
    /** A cell counts so many standard deviations at most. */
    private static final double CELL_CAP = 4.5;

    /** A cell that every sweep shows is no knock: it counts what the weakest shows, so much at most. */
    static final double SHARED_CAP = 7;

    private static final double CELL_FLOOR = -1.5;

    /** A sweep counts at most so many times what the weakest shows. */
    private static final double OVER_WEAKEST = 1.15;

    /** A touch is over in about a millisecond; a longer stretch of noise would only hide it. */
    private static final double STROKE_S = 0.001;

    /** A cell shows the event from here. */
    private static final double SHOWN = 1.2;

    private static final int LEAST_PERIODS = 4;
    private static final int MOST_PERIODS = 60;
    private static final int LEAST_CELLS = 12;
    private static final int MOST_CELLS = 24;
    private static final double CELL_S = 0.0007;
    /** Neighbours on either side whose cells make the median. */
    private static final int REACH = 2;

    /** The phase may drift over a window by so many cells either way. */
    private static final int MOST_DRIFT = 8;

    /** An event shows in so many periods of every sweep at least: two knocks at one place in both sweeps are one. */
    private static final int LEAST_SHOWN = 2;

    /**
     * Or so many strokes of all sweeps along its line are beyond any noise, and one period shows one in every sweep: a cone that moves most
     * at the sweep's first periods strikes two or three times, and a stroke may stay out of either sweep.
     */
    private static final int LEAST_STRONG = 3;

    /** Score of what shows in fewer periods, at most: not worth a note. */
    private static final double CHANCE = 3.9;

    private static final double HIGHEST_HZ = 700;
    private static final double[] WINDOW_OCTAVES = {0.5, 0.75, 1, 2};

    private static final KthSelector SELECTOR = new KthSelector();

    private final Residue residue;

    /**
     * What a fold found.
     *
     * @param fromHz sweep frequency at the begin of the window
     * @param toHz sweep frequency at its end
     * @param phaseTurns phase in the middle of the window, 0 to 1
     * @param peakPa peak that at least half of the events reach in each sweep
     * @param score deviation of the sum of all sweeps from noise alone, in standard deviations
     * @param weakest the same of the weakest sweep alone
     * @param share share of periods that show it in every sweep
     * @param recurs whether it shows too often for knocks
     */
    record Found(
            double fromHz,
            double toHz,
            double phaseTurns,
            double peakPa,
            double score,
            double weakest,
            double share,
            boolean recurs) {
        Found withScore(double other) {
            return new Found(fromHz, toHz, phaseTurns, peakPa, other, weakest, share, recurs);
        }
    }

    PhaseFold(Residue residue) {
        this.residue = residue;
    }

    /**
     * The fold that stands out most, over all windows.
     *
     * @return the fold; null when the sweep has no window
     */
    Found best() {
        Found best = null;
        double startHz = residue.signal().startHz() * 1.15;
        double stopHz = Math.min(HIGHEST_HZ, residue.highestSweepHz());
        for (double octaves : WINDOW_OCTAVES) {
            double step = StrictMath.pow(2, octaves / 3);
            for (double fromHz = startHz; fromHz * step < stopHz; fromHz *= step) {
                double toHz = Math.min(stopHz, fromHz * StrictMath.pow(2, octaves));
                Found found = fold(fromHz, toHz);
                if (found != null && (best == null || found.score() > best.score())) {
                    best = found;
                }
            }
        }
        return better(best, few());
    }

    /**
     * Strokes that tell for themselves say better than a sum over many periods where they are and how loud; the score is the larger.
     */
    private static Found better(Found fold, Found few) {
        if (few == null || fold == null) {
            return few == null ? fold : few;
        }
        boolean same = few.fromHz() < fold.toHz() && few.toHz() > fold.fromHz();
        if (few.score() >= FewStrokes.TELLING && same) {
            return few.withScore(Math.max(few.score(), fold.score()));
        }
        return few.score() > fold.score() ? few : fold;
    }

    /** Single strokes from the sweep's first period on; null where there are many or nothing speaks for them. */
    Found few() {
        double firstTurn = Math.ceil(residue.turns(residue.signal().startHz()) - 0.01);
        int periods = FewStrokes.periods(firstTurn, residue.turns(residue.highestSweepHz()));
        if (periods == 0) {
            return null;
        }
        double middleHz =
                Math.sqrt(residue.frequencyHzAtTurns(firstTurn) * residue.frequencyHzAtTurns(firstTurn + periods));
        double[][][] scores = new double[residue.sweeps()][][];
        for (int k = 0; k < scores.length; k++) {
            scores[k] = cellScores(k, firstTurn, periods, cells(middleHz), middleHz);
        }
        return new FewStrokes(residue, scores, firstTurn).best();
    }

    private static int cells(double middleHz) {
        return (int) Math.max(LEAST_CELLS, Math.min(MOST_CELLS, 1 / middleHz / CELL_S));
    }

    private Found fold(double fromHz, double toHz) {
        double firstTurn = Math.ceil(residue.turns(fromHz));
        int periods = (int) Math.floor(residue.turns(toHz) - firstTurn);
        if (periods < LEAST_PERIODS || periods > MOST_PERIODS) {
            return null;
        }
        double middleHz = Math.sqrt(fromHz * toHz);
        int cells = cells(middleHz);
        double[][][] scores = new double[residue.sweeps()][][];
        for (int k = 0; k < scores.length; k++) {
            scores[k] = cellScores(k, firstTurn, periods, cells, middleHz);
        }
        Found fold = along(shared(scores), firstTurn, periods, cells);
        double score = Math.max(fold.score(), Coincidence.score(capped(scores)));
        return fold.withScore(fold.recurs() ? score : Math.min(CHANCE, score));
    }

    /** Cut off where one sweep alone shows more; what the others show there or next to it is let through. */
    private static double[][][] shared(double[][][] scores) {
        double[][][] shared = capped(scores);
        for (int k = 0; k < scores.length; k++) {
            for (int j = 0; j < scores[k].length; j++) {
                for (int m = 0; m < scores[k][j].length; m++) {
                    double weakest = scores[k][j][m];
                    for (double[][] other : scores) {
                        weakest = Math.min(weakest, largest(other[j], m));
                    }
                    shared[k][j][m] = scores.length > 1 ? Math.max(shared[k][j][m], weakest) : shared[k][j][m];
                }
            }
        }
        return shared;
    }

    private static double[][][] capped(double[][][] scores) {
        double[][][] capped = new double[scores.length][][];
        for (int k = 0; k < scores.length; k++) {
            capped[k] = new double[scores[k].length][];
            for (int j = 0; j < scores[k].length; j++) {
                capped[k][j] = Arrays.stream(scores[k][j])
                        .map(z -> Math.min(CELL_CAP, z))
                        .toArray();
            }
        }
        return capped;
    }

    private double[][] cellScores(int sweep, double firstTurn, int periods, int cells, double middleHz) {
        int rate = residue.signal().sampleRateHz();
        double stroke = Math.min(STROKE_S, 2.0 / cells / middleHz) * rate;
        double degrees = Math.max(2, 2 * Residue.bandwidthHz(middleHz) * stroke / rate);
        double spread = Math.sqrt(2 / (9 * degrees));
        double medianShare = StrictMath.pow(1 - 2 / (9 * degrees), 3);
        double[][] strokes = new double[periods][];
        for (int j = 0; j < periods; j++) {
            strokes[j] = strokes(sweep, firstTurn + j, stroke);
        }
        double[][] standard = new double[periods][cells];
        for (int j = 0; j < periods; j++) {
            double mean = Math.max(1e-30, Math.max(aroundMedian(strokes, j), median(strokes[j])) / medianShare);
            double start = residue.indexAtTurns(firstTurn + j);
            for (int m = 0; m < cells; m++) {
                double turn = firstTurn + j + m / (double) cells;
                double from = residue.indexAtTurns(turn);
                double to = residue.indexAtTurns(turn + 2.0 / cells);
                int first = (int) Math.rint((from - start) / (stroke / 2));
                int count = Math.max(1, (int) Math.rint((to - from - stroke) / (stroke / 2)) + 1);
                double most = 0;
                for (int k = first; k < first + count; k++) {
                    double[] row = k < strokes[j].length || j + 1 == periods ? strokes[j] : strokes[j + 1];
                    int at = row == strokes[j] ? k : k - strokes[j].length;
                    most = Math.max(most, at < row.length ? row[at] : 0);
                }
                double z = (StrictMath.cbrt(most / mean) - (1 - 2 / (9 * degrees))) / spread;
                standard[j][m] = Math.max(CELL_FLOOR, Math.min(SHARED_CAP, LargestOf.normal(z, count)));
            }
        }
        return standard;
    }

    /** Mean squares of overlapping strokes of noise through one period and a little further. */
    private double[] strokes(int sweep, double turn, double stroke) {
        double from = residue.indexAtTurns(turn);
        double to = residue.indexAtTurns(turn + 1);
        double[] strokes = new double[Math.max(1, (int) Math.rint((to - from) / (stroke / 2)))];
        for (int k = 0; k < strokes.length; k++) {
            double at = from + k * stroke / 2;
            strokes[k] = residue.evenEnergy(sweep, at, at + stroke) / stroke;
        }
        return strokes;
    }

    /** Median stroke of a period and its neighbours: the noise of the moment, whatever the hall does. */
    private static double aroundMedian(double[][] strokes, int period) {
        int first = Math.max(0, Math.min(period - REACH, strokes.length - 2 * REACH - 1));
        int last = Math.min(strokes.length - 1, first + 2 * REACH);
        int count = 0;
        for (int j = first; j <= last; j++) {
            count += strokes[j].length;
        }
        double[] all = new double[count];
        count = 0;
        for (int j = first; j <= last; j++) {
            System.arraycopy(strokes[j], 0, all, count, strokes[j].length);
            count += strokes[j].length;
        }
        return median(all);
    }

    private static double median(double[] values) {
        double[] work = values.clone();
        int upper = work.length / 2;
        double above = SELECTOR.select(work, null, upper);
        double below = above;
        if (work.length % 2 == 0) {
            // what is not above the selected value lies before it now
            below = work[0];
            for (int i = 1; i < upper; i++) {
                below = Math.max(below, work[i]);
            }
        }
        return 0.5 * (below + above);
    }

    private Found along(double[][][] scores, double firstTurn, int periods, int cells) {
        int sweeps = scores.length;
        double best = Double.NEGATIVE_INFINITY;
        double bestWeakest = 0;
        int bestCell = 0;
        int bestDrift = 0;
        double[] each = new double[sweeps];
        for (int drift = -MOST_DRIFT; drift <= MOST_DRIFT; drift += 2) {
            int[] shift = shifts(drift, periods, cells);
            for (int m = 0; m < cells; m++) {
                double weakest = Double.POSITIVE_INFINITY;
                for (int k = 0; k < sweeps; k++) {
                    double one = 0;
                    for (int j = 0; j < periods; j++) {
                        one += scores[k][j][(m + shift[j]) % cells];
                    }
                    each[k] = one / Math.sqrt(periods);
                    weakest = Math.min(weakest, each[k]);
                }
                double score = 0;
                for (double one : each) {
                    // One sweep alone proves nothing, however loud: it counts little more than the weakest.
                    score += Math.min(one, OVER_WEAKEST * weakest) / Math.sqrt(sweeps);
                }
                if (score > best) {
                    best = score;
                    bestWeakest = weakest;
                    bestCell = m;
                    bestDrift = drift;
                }
            }
        }
        return found(scores, firstTurn, periods, cells, bestCell, bestDrift, best, bestWeakest);
    }

    private static int[] shifts(int drift, int periods, int cells) {
        int[] shift = new int[periods];
        for (int j = 0; j < periods; j++) {
            int moved = (int) Math.rint(drift * (j / (double) (periods - 1) - 0.5));
            shift[j] = Math.floorMod(moved, cells);
        }
        return shift;
    }

    private Found found(
            double[][][] scores,
            double firstTurn,
            int periods,
            int cells,
            int cell,
            int drift,
            double score,
            double weakest) {
        int[] shift = shifts(drift, periods, cells);
        double[] peaks = new double[periods];
        int shown = 0;
        int strong = 0;
        boolean strongTogether = false;
        for (int j = 0; j < periods; j++) {
            int m = (cell + shift[j]) % cells;
            boolean all = true;
            int here = 0;
            double peak = Double.POSITIVE_INFINITY;
            for (int k = 0; k < scores.length; k++) {
                double most = largest(scores[k][j], m);
                all &= most >= SHOWN;
                here += most >= CELL_CAP ? 1 : 0;
                double turn = firstTurn + j + m / (double) cells;
                double from = residue.indexAtTurns(turn - 1.0 / cells);
                double to = residue.indexAtTurns(turn + 3.0 / cells);
                peak = Math.min(peak, residue.peak(k, from, to));
            }
            peaks[all ? shown : periods - 1 - (j - shown)] = peak;
            shown += all ? 1 : 0;
            strong += here;
            strongTogether |= scores.length > 1 && here == scores.length;
        }
        // The level of an event is told by the periods that show it: what at least half of them reach. Of two it is the
        // lesser, since
        // one of them may be a knock.
        int told = shown > 0 ? shown : periods;
        Arrays.sort(peaks, 0, told);
        return new Found(
                residue.frequencyHzAtTurns(firstTurn),
                residue.frequencyHzAtTurns(firstTurn + periods),
                (cell + 1) / (double) cells % 1,
                peaks[(told - 1) / 2],
                score,
                weakest,
                shown / (double) periods,
                shown >= LEAST_SHOWN || strongTogether && strong >= LEAST_STRONG);
    }

    private static double largest(double[] row, int m) {
        int cells = row.length;
        return Math.max(row[m], Math.max(row[(m + 1) % cells], row[(m + cells - 1) % cells]));
    }
}
