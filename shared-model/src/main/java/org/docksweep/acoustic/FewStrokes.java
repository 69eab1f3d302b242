package org.docksweep.acoustic;

import java.util.Arrays;

/**
 * Looks for a cone that strikes a few times per sweep, at its lowest frequencies only, and whose single strokes stand far
 * out of the noise. A sum over periods (the fold) asks how loud it is; this asks what is the likelier cause of the cells that stand
 * out: strokes that come back on one line of phase in both sweeps, of which one in ten or so stays out, or knocks, which know nothing of
 * the sweep. How often noise and knocks of this hall fill a cell is counted in the same data beside the line.
 *
 * <p>For a window of n periods and a line of phase the logarithm of the likelihood ratio is the sum over periods and sweeps of
 * {@code ln(P(cell | strokes) / P(cell | knocks))} for cells that are clearly filled, somewhat, or not at all. The largest of all windows and
 * lines counts, less the price of so many looks.
 */
final class FewStrokes {
    /** Deviates from which a cell is clearly or somewhat filled. */
    private static final double CLEARLY = 4.5;

    private static final double SOMEWHAT = 2.8;

    /** What a stroke gives: one in ten stays out, some are faint; common practice, no source. */
    private static final double STROKE_CLEARLY = 0.8;

    private static final double STROKE_SOMEWHAT = 0.08;

    /** How often noise alone is somewhat out at one of three overlapping cells: four thousandths each way. */
    private static final double NOISE_SOMEWHAT = 0.01;

    /** Knocks believed in before any is heard: half a cell in a hundred looks. */
    private static final double KNOCKS_BEFORE = 0.5;

    private static final double LOOKS_BEFORE = 100;

    /** A look is a cell with both neighbours; since they overlap, so many cells are one look. */
    private static final int CELLS_PER_LOOK = 4;

    /** A stroke and what the floor throws back fill no more cells than this; a longer run is a knock besides. */
    private static final int LONGEST_STROKE_CELLS = 8;

    private static final int LEAST_PERIODS = 2;
    private static final int MOST_PERIODS = 6;

    /** The phase may drift over a window by so many cells either way. */
    private static final int MOST_DRIFT = 8;

    /**
     * Logarithm of the number of independent looks: some ten windows, eight phases, three drifts, two lengths are 500; they are taken for 1800.
     */
    private static final double LOOKS_LOG = 7.5;

    /** Where a cone needs more periods than this for an octave, strokes are many and the fold hears them. */
    private static final double MOST_TURNS_AT_START = 14;

    private static final int LONGEST_LOOK = 24;

    /** Score from which few strokes alone outweigh the rarity of a rub: half its square less 10 for the looks, less 5. */
    static final double TELLING = 5.5;

    private final Residue residue;
    private final double firstTurn;
    private final int periods;
    private final int cells;
    private final double[][] scores;
    private final int[][] runs;
    private final int[][] runLengths;
    private final double knocks;
    private final double looks;

    /**
     * Prepares a look.
     *
     * @param residue residue
     * @param scores standard normal scores by sweep, period and cell
     * @param firstTurn turn at which the first period begins
     */
    FewStrokes(Residue residue, double[][][] scores, double firstTurn) {
        this.residue = residue;
        this.firstTurn = firstTurn;
        this.periods = scores[0].length;
        this.cells = scores[0][0].length;
        this.scores = new double[scores.length][];
        this.runs = new int[scores.length][];
        this.runLengths = new int[scores.length][];
        double filled = 0;
        for (int k = 0; k < scores.length; k++) {
            this.scores[k] =
                    Arrays.stream(scores[k]).flatMapToDouble(Arrays::stream).toArray();
            filled += findRuns(k);
        }
        this.knocks = filled;
        this.looks = scores.length * periods * cells / (double) CELLS_PER_LOOK;
    }

    /**
     * Periods to be looked at from the sweep's first on.
     *
     * @param turnsAtStart turns of the drive's phase at which the sweep begins
     * @param turnsAtEnd turns at which its residue ends
     * @return number; 0 where a cone strikes often enough for the fold, or the sweep is too short
     */
    static int periods(double turnsAtStart, double turnsAtEnd) {
        int most = (int) Math.min(Math.floor(turnsAtEnd - turnsAtStart), Math.min(LONGEST_LOOK, 2 * turnsAtStart));
        return turnsAtStart > MOST_TURNS_AT_START || most < 2 * LEAST_PERIODS ? 0 : most;
    }

    /** Numbers the runs of clearly filled cells from 1 on; gives how many looks they fill. */
    private double findRuns(int sweep) {
        double[] row = scores[sweep];
        runs[sweep] = new int[row.length];
        runLengths[sweep] = new int[row.length / 2 + 2];
        int number = 0;
        double filled = 0;
        for (int g = 0; g < row.length; g++) {
            if (row[g] >= CLEARLY) {
                number += g == 0 || row[g - 1] < CLEARLY ? 1 : 0;
                runs[sweep][g] = number;
                runLengths[sweep][number]++;
            }
        }
        for (int r = 1; r <= number; r++) {
            filled += looksOf(runLengths[sweep][r]);
        }
        return filled;
    }

    private static double looksOf(int cells) {
        return Math.ceil(cells / (double) CELLS_PER_LOOK);
    }

    /**
     * The few strokes that knocks explain least.
     *
     * @return what was found; null when nothing speaks for strokes
     */
    PhaseFold.Found best() {
        Line best = null;
        for (int count = LEAST_PERIODS; count <= Math.min(MOST_PERIODS, periods); count++) {
            for (int drift = -MOST_DRIFT; drift <= MOST_DRIFT; drift += 2) {
                for (int first = 0; first + count <= periods; first++) {
                    for (int m = 0; m < cells; m++) {
                        Line line = line(first, count, m, drift);
                        best = line.log > 0 && (best == null || line.log > best.log) ? line : best;
                    }
                }
            }
        }
        return best == null ? null : found(best);
    }

    /** A line of phase through a window: its logarithm of the likelihood ratio, that of the strokes of its weakest sweep. */
    private record Line(int first, int count, int cell, int drift, double log, double weakestLog) {}

    /** Cell of a line in a period of its window, counted from the begin of the first period. */
    private int cell(int first, int count, int cell, int drift, int period) {
        return (first + period) * cells + cell + (int) Math.rint(drift * (period / (double) (count - 1) - 0.5));
    }

    private Line line(int first, int count, int m, int drift) {
        int hits = 0;
        int faint = 0;
        double beside = knocks;
        double weakestLog = Double.POSITIVE_INFINITY;
        int[] hitsOf = new int[scores.length];
        for (int k = 0; k < scores.length; k++) {
            int lastRun = 0;
            for (int j = 0; j < count; j++) {
                int at = strongest(k, cell(first, count, m, drift, j));
                double z = scores[k][at];
                if (z >= CLEARLY) {
                    hitsOf[k]++;
                    int run = runs[k][at];
                    if (run != lastRun) {
                        int length = runLengths[k][run];
                        beside -= length <= LONGEST_STROKE_CELLS ? looksOf(length) : 1;
                        lastRun = run;
                    }
                } else if (z >= SOMEWHAT) {
                    faint++;
                }
            }
            hits += hitsOf[k];
            if (hitsOf[k] == 0) {
                // one sweep alone shows nothing
                return new Line(first, count, m, drift, Double.NEGATIVE_INFINITY, 0);
            }
        }
        double share = (KNOCKS_BEFORE + beside) / (LOOKS_BEFORE + looks);
        for (int k = 0; k < scores.length; k++) {
            // strokes that stayed out are in the likelihood of both; of the weakest sweep only what it shows is asked
            weakestLog = Math.min(weakestLog, log(hitsOf[k], 0, hitsOf[k], share));
        }
        return new Line(first, count, m, drift, log(hits, faint, scores.length * count, share), weakestLog);
    }

    private static double log(int hits, int faint, int all, double share) {
        double out = 1 - STROKE_CLEARLY - STROKE_SOMEWHAT;
        double none = Math.max(out, 1 - share - NOISE_SOMEWHAT);
        return hits * StrictMath.log(STROKE_CLEARLY / Math.min(STROKE_CLEARLY, share))
                + faint * StrictMath.log(STROKE_SOMEWHAT / NOISE_SOMEWHAT)
                + (all - hits - faint) * StrictMath.log(out / none);
    }

    /** The cell that is filled most of one and its neighbours. */
    private int strongest(int sweep, int cell) {
        double[] row = scores[sweep];
        int best = Math.max(0, Math.min(row.length - 1, cell));
        for (int g = Math.max(0, cell - 1); g <= Math.min(row.length - 1, cell + 1); g++) {
            best = row[g] > row[best] ? g : best;
        }
        return best;
    }

    private PhaseFold.Found found(Line line) {
        double[] peaks = new double[scores.length * line.count()];
        int hits = 0;
        int together = 0;
        for (int j = 0; j < line.count(); j++) {
            int here = 0;
            for (int k = 0; k < scores.length; k++) {
                int at = strongest(k, cell(line.first(), line.count(), line.cell(), line.drift(), j));
                if (scores[k][at] >= CLEARLY) {
                    double turn = firstTurn + at / (double) cells;
                    double from = residue.indexAtTurns(turn);
                    peaks[hits++] = residue.peak(k, from, residue.indexAtTurns(turn + 2.0 / cells));
                    here++;
                }
            }
            together += here == scores.length ? 1 : 0;
        }
        Arrays.sort(peaks, 0, hits);
        double middle = (line.cell() + 1) / (double) cells;
        return new PhaseFold.Found(
                residue.frequencyHzAtTurns(firstTurn + line.first()),
                residue.frequencyHzAtTurns(firstTurn + line.first() + line.count()),
                middle - Math.floor(middle),
                // at least half of them reach it: the loudest may be a knock
                peaks[(hits - 1) / 2],
                Math.sqrt(2 * Math.max(0, line.log() - LOOKS_LOG + TouchingParts.LOOKS_LOG)),
                Math.sqrt(2 * Math.max(0, line.weakestLog())),
                together / (double) line.count(),
                true);
    }
}
