package org.docksweep.acoustic;

import org.docksweep.sweep.Fourier;
import org.docksweep.sweep.MicrophoneTake;
import org.docksweep.sweep.SweepSignal;

/**
 * Looks for scraping at frequencies where nothing is left above the 10th order: high-frequency drivers move most between
 * half and some kilohertz. Two equal sweeps are taken from each other, which leaves what does not repeat to the last
 * detail: noise, and scraping, whose single strokes never are alike. The energy e of that difference is then held against
 * the phase of the sweep, {@code t = |sum (e - mean) exp(-j phase)|^2 / (rho sum (e - mean)^2)} in blocks of a twelfth of
 * an octave. Noise of whatever course in time gives an exponential t of mean 1, because it knows nothing of the sweep's
 * phase; rho, the colour of e, is read from the same data at rates that belong to nothing. Summed over windows of half, one
 * and two octaves, gamma distributed, and brought to a normal scale (Wilson and Hilferty 1931, from memory).
 */
final class DifferenceFold {
    static final double LOWEST_HZ = 400;
    private static final double HIGHEST_HZ = 6000;

    /** Orders of the sweep that must lie within its own band. */
    private static final double LEAST_ORDERS = 2;

    private static final int BLOCKS_PER_OCTAVE = 12;
    private static final double[] WINDOW_OCTAVES = {0.5, 1, 2};

    /** Rates re the sweep's that no part of a cabinet follows. */
    private static final double[] STRANGE_RATES = {0.618, 0.786, 1.272, 1.618};

    private static final int TABLE = 4096;
    private static final double[] COSINE = cosine();

    /** Peak of strokes that run into each other over their rms, rough (some 6 dB): they have no peak of their own. */
    private static final double CREST = 2;

    private final SweepSignal signal;
    private final int rate;
    private final int arrival;
    /** Squares, {@link #length} of them. */
    private final double[] energy;

    private final int length;
    private final int from;
    private final int blocks;
    private final double[] onRate;
    private final double[] mean;
    private final double[] phaseTurns;
    private final double lowestHz;
    private final double calmMean;
    private double angle;

    private DifferenceFold(MicrophoneTake take, Residue residue) {
        this.signal = take.signal();
        this.rate = signal.sampleRateHz();
        this.arrival = take.arrival() - take.origin();
        this.lowestHz = Math.max(LOWEST_HZ, 1.15 * signal.startHz());
        double highestHz = Math.min(HIGHEST_HZ, signal.stopHz() / LEAST_ORDERS);
        this.blocks = (int) (BLOCKS_PER_OCTAVE * StrictMath.log(highestHz / lowestHz) / StrictMath.log(2));
        this.onRate = new double[Math.max(0, blocks)];
        this.mean = new double[Math.max(0, blocks)];
        this.phaseTurns = new double[Math.max(0, blocks)];
        this.from = (int) (timeS(0) * rate);
        this.length = blocks < 1 ? 0 : (int) (timeS(blocks) * rate) - from + 1;
        this.energy = blocks < 1 ? new double[0] : difference(take, residue);
        this.calmMean = blocks < 1 ? 0 : read();
    }

    /**
     * The window that stands out most.
     *
     * @param take the take
     * @param residue its residue
     * @return what was found; null with a single sweep or where the sweep has no such window
     */
    static PhaseFold.Found best(MicrophoneTake take, Residue residue) {
        if (take.sweeps() < 2) {
            return null;
        }
        DifferenceFold fold = new DifferenceFold(take, residue);
        PhaseFold.Found best = null;
        for (double octaves : WINDOW_OCTAVES) {
            int width = (int) Math.rint(octaves * BLOCKS_PER_OCTAVE);
            for (int first = 0; first + width <= fold.blocks; first += Math.max(1, width / 3)) {
                PhaseFold.Found found = fold.window(first, width);
                best = best == null || found.score() > best.score() ? found : best;
            }
        }
        return best;
    }

    /** Time of the sweep at the begin of a block, in seconds. */
    private double timeS(int block) {
        double hz = lowestHz * StrictMath.pow(2, block / (double) BLOCKS_PER_OCTAVE);
        return signal.rateConstantS() * StrictMath.log(hz / signal.startHz());
    }

    /** Squares of the difference of the first two sweeps, weighed for even noise, scaled to one sweep. */
    private double[] difference(MicrophoneTake take, Residue residue) {
        double[] samples = take.pascals();
        double[] part = take.room(Fourier.sizeFor(length));
        int one = take.start(0) + arrival + from;
        int other = take.start(1) + arrival + from;
        for (int i = 0; i < length; i++) {
            boolean within = one + i >= 0 && other + i < samples.length;
            part[i] = within ? (samples[one + i] - samples[other + i]) * Math.sqrt(0.5) : 0;
        }
        Fourier.forward(part);
        double[][] both = residue.weights(part.length, take);
        double[] weights = both[1];
        part[0] *= weights[0];
        part[1] = 0;
        for (int k = 1; k < weights.length; k++) {
            part[2 * k] *= weights[k];
            part[2 * k + 1] *= weights[k];
        }
        Fourier.inverse(part);
        take.giveBack(both[0]);
        take.giveBack(both[1]);
        for (int i = 0; i < length; i++) {
            part[i] = part[i] * part[i];
        }
        return part;
    }

    /** Fills the blocks; gives the least mean square of any half octave, which is the hall's. */
    private double read() {
        double strange = 0;
        for (int b = 0; b < blocks; b++) {
            int first = (int) (timeS(b) * rate) - from;
            int last = Math.min(length, (int) (timeS(b + 1) * rate) - from);
            double sum = 0;
            for (int i = first; i < last; i++) {
                sum += energy[i];
            }
            mean[b] = sum / (last - first);
            double square = 0;
            for (int i = first; i < last; i++) {
                square += (energy[i] - mean[b]) * (energy[i] - mean[b]);
            }
            square = Math.max(1e-60, square);
            onRate[b] = power(first, last, mean[b], 1) / square;
            phaseTurns[b] = angle;
            for (double strangeRate : STRANGE_RATES) {
                strange += power(first, last, mean[b], strangeRate) / square / STRANGE_RATES.length / blocks;
            }
        }
        for (int b = 0; b < blocks; b++) {
            onRate[b] /= Math.max(1e-12, strange);
        }
        double least = Double.POSITIVE_INFINITY;
        int width = Math.min(blocks, BLOCKS_PER_OCTAVE / 2);
        for (int b = 0; b + width <= blocks; b++) {
            double sum = 0;
            for (int k = 0; k < width; k++) {
                sum += mean[b + k] / width;
            }
            least = Math.min(least, sum);
        }
        return least;
    }

    private double power(int first, int last, double meanSquare, double turnsFactor) {
        double re = 0;
        double im = 0;
        double step = StrictMath.exp(1 / (signal.rateConstantS() * rate));
        double hz = signal.startHz() * StrictMath.exp((from + first) / (signal.rateConstantS() * rate));
        double turns = turnsFactor * signal.rateConstantS() * hz;
        for (int i = first; i < last; i++) {
            int at = (int) ((turns - Math.floor(turns)) * TABLE);
            double value = energy[i] - meanSquare;
            re += value * COSINE[at];
            im += value * COSINE[at + TABLE / 4];
            turns *= step;
        }
        double turn = StrictMath.atan2(-im, re) / (2 * Math.PI);
        angle = turn - Math.floor(turn);
        return re * re + im * im;
    }

    private static double[] cosine() {
        double[] table = new double[TABLE + TABLE / 4 + 1];
        for (int i = 0; i < table.length; i++) {
            table[i] = StrictMath.cos(2 * Math.PI * (i + 0.5) / TABLE);
        }
        return table;
    }

    private PhaseFold.Found window(int first, int width) {
        double sum = 0;
        double square = 0;
        int shown = 0;
        for (int b = first; b < first + width; b++) {
            sum += onRate[b];
            square += mean[b] / width;
            shown += onRate[b] > 2 ? 1 : 0;
        }
        double score = 3 * Math.sqrt(width) * (StrictMath.cbrt(sum / width) - 1 + 1.0 / (9 * width));
        double bursts = CREST * Math.sqrt(Math.max(0, square - calmMean));
        return new PhaseFold.Found(
                hz(first),
                hz(first + width),
                phaseTurns[first + width / 2],
                bursts,
                score,
                score * Math.sqrt(0.5),
                shown / (double) width,
                true);
    }

    private double hz(int block) {
        return lowestHz * StrictMath.pow(2, block / (double) BLOCKS_PER_OCTAVE);
    }
}
