package org.docksweep.sweep;

import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * Mains hum, fitted in the silence before the sweep and taken off everywhere: a fundamental near 50 or 60 Hz and its
 * harmonics, whose common frequency is searched within one per cent. Only lines that stand out of the noise are taken.
 *
 * @param frequencyHz fundamental; 0 when no hum was found
 * @param cosine cosine parts of the harmonics from the first on, at frame 0 of the capture
 * @param sine sine parts
 * @param amplitude square root of the summed squares of all lines' amplitudes
 */
record HumRemover(double frequencyHz, double[] cosine, double[] sine, double amplitude) {
    private static final int HARMONICS = 12;
    private static final double[] NOMINAL_HZ = {50, 60};

    /** Grids hold their frequency far better; oscillators of interfaces add little. */
    private static final double SEARCH_SHARE = 0.01;

    /** A line is taken when its amplitude exceeds its own standard deviation so many times. */
    private static final double SIGNIFICANT = 5;

    /** Samples over which a line is taken off from one table. */
    private static final int SUBTRACT_BLOCK = 256;

    private static final int SEARCH_STEPS = 11;
    private static final int REFINE_STEPS = 12;

    /** Hum and the harmonics fitted lie below 750 Hz; a coarser rate than this would cut into them. */
    private static final double COARSE_RATE_HZ = 2000;

    /**
     * Fits the hum of a channel.
     *
     * @param samples the channel
     * @param frames number of frames of silence at its start, at least 0.1 s
     * @param sampleRateHz samples per second
     * @return what was found
     */
    static HumRemover fit(double[] samples, int frames, int sampleRateHz) {
        int step = Math.max(1, (int) (sampleRateHz / COARSE_RATE_HZ));
        double[] coarse = new double[frames / step];
        for (int i = 0; i < coarse.length; i++) {
            for (int n = 0; n < step; n++) {
                coarse[i] += samples[i * step + n];
            }
            coarse[i] /= step;
        }
        double coarseRateHz = sampleRateHz / (double) step;
        double[] weighted = Phasors.hann(coarse.length);
        for (int i = 0; i < weighted.length; i++) {
            weighted[i] *= coarse[i];
        }
        double bestHz = 0;
        double bestPower = -1;
        Phasors.Sum sum = new Phasors.Sum();
        for (double nominalHz : NOMINAL_HZ) {
            for (int i = 0; i < SEARCH_STEPS; i++) {
                double hz = nominalHz * (1 + 2 * SEARCH_SHARE * (i / (SEARCH_STEPS - 1.0) - 0.5));
                double power = power(weighted, coarseRateHz, hz, sum);
                if (power > bestPower) {
                    bestPower = power;
                    bestHz = hz;
                }
            }
        }
        bestHz = refined(weighted, coarseRateHz, bestHz, bestPower, sum);
        return solve(coarse, coarseRateHz, step, bestHz, sum);
    }

    /** Takes the hum off a channel, in place. */
    void subtractFrom(double[] samples, int sampleRateHz) {
        for (int h = 0; h < cosine.length; h++) {
            if (cosine[h] != 0 || sine[h] != 0) {
                subtract(samples, 2 * Math.PI * frequencyHz * (h + 1) / sampleRateHz, cosine[h], sine[h]);
            }
        }
    }

    private static void subtract(double[] samples, double angle, double cosine, double sine) {
        double[] tableRe = new double[SUBTRACT_BLOCK];
        double[] tableIm = new double[SUBTRACT_BLOCK];
        Phasors.fill(angle, tableRe, tableIm);
        double turnRe = StrictMath.cos(angle * SUBTRACT_BLOCK);
        double turnIm = StrictMath.sin(angle * SUBTRACT_BLOCK);
        double c = cosine;
        double s = sine;
        for (int from = 0; from < samples.length; from += SUBTRACT_BLOCK) {
            subtract(samples, from, Math.min(SUBTRACT_BLOCK, samples.length - from), tableRe, tableIm, c, s);
            double next = c * turnRe + s * turnIm;
            s = s * turnRe - c * turnIm;
            c = next;
        }
    }

    private static void subtract(
            double[] samples, int from, int length, double[] tableRe, double[] tableIm, double c, double s) {
        for (int i = 0; i < length; i++) {
            samples[from + i] -= c * tableRe[i] + s * tableIm[i];
        }
    }

    private static double refined(double[] weighted, double rateHz, double fromHz, double fromPower, Phasors.Sum sum) {
        double bestHz = fromHz;
        double bestPower = fromPower;
        double reachHz = 2 * SEARCH_SHARE * fromHz / (SEARCH_STEPS - 1);
        for (int i = 0; i < REFINE_STEPS; i++) {
            reachHz /= 2;
            double below = power(weighted, rateHz, bestHz - reachHz, sum);
            double above = power(weighted, rateHz, bestHz + reachHz, sum);
            if (Math.max(below, above) > bestPower) {
                bestPower = Math.max(below, above);
                bestHz += above > below ? reachHz : -reachHz;
            }
        }
        return bestHz;
    }

    /** Power of all harmonics of a fundamental in windowed samples. */
    private static double power(double[] weighted, double rateHz, double fundamentalHz, Phasors.Sum sum) {
        double power = 0;
        for (int h = 1; h <= HARMONICS; h++) {
            sum.turn(2 * Math.PI * fundamentalHz * h / rateHz);
            sum.of(weighted, weighted.length);
            power += sum.re() * sum.re() + sum.im() * sum.im();
        }
        return power;
    }

    /**
     * Least squares for a constant and all lines together: in so short a silence they are not quite orthogonal. Products of two
     * lines add up to sums of single ones, which are known in closed form.
     */
    private static HumRemover solve(double[] coarse, double rateHz, int step, double fundamentalHz, Phasors.Sum sum) {
        int unknowns = 1 + 2 * HARMONICS;
        int n = coarse.length;
        double angle = 2 * Math.PI * fundamentalHz / rateHz;
        // The mean of a block is the line at the block's centre, lowered by the kernel below.
        double first = angle * (0.5 - 0.5 / step);
        double[] cosines = new double[2 * HARMONICS + 1];
        double[] sines = new double[2 * HARMONICS + 1];
        for (int k = 0; k < cosines.length; k++) {
            double size = k == 0 ? n : StrictMath.sin(n * k * angle / 2) / StrictMath.sin(k * angle / 2);
            cosines[k] = size * StrictMath.cos(k * (first + (n - 1) * angle / 2));
            sines[k] = size * StrictMath.sin(k * (first + (n - 1) * angle / 2));
        }
        RealMatrix normal = MatrixUtils.createRealMatrix(unknowns, unknowns);
        double[] right = new double[unknowns];
        normal.setEntry(0, 0, n);
        for (double value : coarse) {
            right[0] += value;
        }
        for (int a = 1; a <= HARMONICS; a++) {
            double lowerA = kernel(fundamentalHz * a, rateHz, step);
            set(normal, 0, 2 * a - 1, lowerA * cosines[a]);
            set(normal, 0, 2 * a, lowerA * sines[a]);
            for (int b = 1; b <= HARMONICS; b++) {
                double both = lowerA * kernel(fundamentalHz * b, rateHz, step) / 2;
                double difference = a < b ? -sines[b - a] : sines[a - b];
                normal.setEntry(2 * a - 1, 2 * b - 1, both * (cosines[Math.abs(a - b)] + cosines[a + b]));
                normal.setEntry(2 * a, 2 * b, both * (cosines[Math.abs(a - b)] - cosines[a + b]));
                set(normal, 2 * a, 2 * b - 1, both * (sines[a + b] + difference));
            }
            sum.turn(a * angle);
            sum.of(coarse, n);
            double startRe = StrictMath.cos(a * first);
            double startIm = StrictMath.sin(a * first);
            right[2 * a - 1] = lowerA * (sum.re() * startRe - sum.im() * startIm);
            right[2 * a] = lowerA * (sum.re() * startIm + sum.im() * startRe);
        }
        double[] solution = new LUDecomposition(normal)
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
        double left = 0;
        for (double value : coarse) {
            left += value * value;
        }
        for (int a = 0; a < unknowns; a++) {
            left -= solution[a] * right[a];
        }
        double variance = 2 * Math.max(0, left) / Math.max(1, n - unknowns) / n;
        return significant(fundamentalHz, solution, variance);
    }

    private static void set(RealMatrix normal, int row, int column, double value) {
        normal.setEntry(row, column, value);
        normal.setEntry(column, row, value);
    }

    private static HumRemover significant(double fundamentalHz, double[] solution, double variance) {
        double[] cosine = new double[HARMONICS];
        double[] sine = new double[HARMONICS];
        double sum = 0;
        for (int h = 0; h < HARMONICS; h++) {
            double square = solution[2 * h + 1] * solution[2 * h + 1] + solution[2 * h + 2] * solution[2 * h + 2];
            if (square > SIGNIFICANT * SIGNIFICANT * variance) {
                cosine[h] = solution[2 * h + 1];
                sine[h] = solution[2 * h + 2];
                sum += square;
            }
        }
        return new HumRemover(sum > 0 ? fundamentalHz : 0, cosine, sine, Math.sqrt(sum));
    }

    private static double kernel(double frequencyHz, double rateHz, int step) {
        double half = Math.PI * frequencyHz / (rateHz * step);
        return StrictMath.sin(half * step) / (step * StrictMath.sin(half));
    }
}
