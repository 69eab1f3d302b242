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
    /** Lines worked out side by side: one alone only waits for its own last product. Divides the harmonics. */
    private static final int AT_ONCE = 3;

    private static final double[] NOMINAL_HZ = {50, 60};

    /** Grids hold their frequency far better; oscillators of interfaces add little. */
    private static final double SEARCH_SHARE = 0.01;

    /** A line is taken when its amplitude exceeds its own standard deviation so many times. */
    private static final double SIGNIFICANT = 5;

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
                coarse[i] += samples[i * step + n] / step;
            }
        }
        double coarseRateHz = sampleRateHz / (double) step;
        double[] weighted = new double[coarse.length];
        for (int i = 0; i < weighted.length; i++) {
            weighted[i] = coarse[i] * (0.5 - 0.5 * StrictMath.cos(2 * Math.PI * (i + 0.5) / weighted.length));
        }
        double bestHz = 0;
        double bestPower = -1;
        for (double nominalHz : NOMINAL_HZ) {
            for (int i = 0; i < SEARCH_STEPS; i++) {
                double hz = nominalHz * (1 + 2 * SEARCH_SHARE * (i / (SEARCH_STEPS - 1.0) - 0.5));
                double power = power(weighted, coarseRateHz, hz);
                if (power > bestPower) {
                    bestPower = power;
                    bestHz = hz;
                }
            }
        }
        bestHz = refined(weighted, coarseRateHz, bestHz, bestPower);
        return solve(coarse, coarseRateHz, step, bestHz);
    }

    /** Takes the hum off a channel, in place. */
    void subtractFrom(double[] samples, int sampleRateHz) {
        Line[] lines = new Line[HARMONICS];
        int count = 0;
        for (int h = 0; h < cosine.length; h++) {
            if (cosine[h] != 0 || sine[h] != 0) {
                lines[count++] = new Line(frequencyHz, h + 1, sampleRateHz, cosine[h], sine[h]);
            }
        }
        while (count % AT_ONCE != 0) {
            lines[count++] = new Line(frequencyHz, 1, sampleRateHz, 0, 0);
        }
        for (int k = 0; k < count; k += AT_ONCE) {
            Line a = lines[k].copy();
            Line b = lines[k + 1].copy();
            Line c = lines[k + 2].copy();
            for (int i = 0; i < samples.length; i++) {
                samples[i] = samples[i] - a.next() - b.next() - c.next();
            }
        }
    }

    private static double refined(double[] weighted, double rateHz, double fromHz, double fromPower) {
        double bestHz = fromHz;
        double bestPower = fromPower;
        double reachHz = 2 * SEARCH_SHARE * fromHz / (SEARCH_STEPS - 1);
        for (int i = 0; i < REFINE_STEPS; i++) {
            reachHz /= 2;
            double below = power(weighted, rateHz, bestHz - reachHz);
            double above = power(weighted, rateHz, bestHz + reachHz);
            if (Math.max(below, above) > bestPower) {
                bestPower = Math.max(below, above);
                bestHz += above > below ? reachHz : -reachHz;
            }
        }
        return bestHz;
    }

    /** Power of all harmonics of a fundamental in windowed samples. */
    private static double power(double[] weighted, double rateHz, double fundamentalHz) {
        double power = 0;
        for (int h = 1; h <= HARMONICS; h += AT_ONCE) {
            Line a = new Line(fundamentalHz, h, rateHz, 0, 0);
            Line b = new Line(fundamentalHz, h + 1, rateHz, 0, 0);
            Line c = new Line(fundamentalHz, h + 2, rateHz, 0, 0);
            for (double sample : weighted) {
                a.add(sample);
                b.add(sample);
                c.add(sample);
            }
            power += a.power();
            power += b.power();
            power += c.power();
        }
        return power;
    }

    /** Least squares for a constant and all lines together: in so short a silence they are not quite orthogonal. */
    private static HumRemover solve(double[] coarse, double rateHz, int step, double fundamentalHz) {
        int unknowns = 1 + 2 * HARMONICS;
        double[][] columns = new double[unknowns][coarse.length];
        for (int i = 0; i < coarse.length; i++) {
            columns[0][i] = 1;
            // The mean of a block is the line at the block's centre, lowered by the kernel below.
            double timeS = (i + 0.5) / rateHz - 0.5 / (rateHz * step);
            for (int h = 1; h <= HARMONICS; h++) {
                double angle = 2 * Math.PI * fundamentalHz * h * timeS;
                columns[2 * h - 1][i] = StrictMath.cos(angle) * kernel(fundamentalHz * h, rateHz, step);
                columns[2 * h][i] = StrictMath.sin(angle) * kernel(fundamentalHz * h, rateHz, step);
            }
        }
        RealMatrix normal = MatrixUtils.createRealMatrix(unknowns, unknowns);
        double[] right = new double[unknowns];
        for (int a = 0; a < unknowns; a++) {
            for (int b = a; b < unknowns; b++) {
                double sum = dot(columns[a], columns[b]);
                normal.setEntry(a, b, sum);
                normal.setEntry(b, a, sum);
            }
            right[a] = dot(columns[a], coarse);
        }
        double[] solution = new LUDecomposition(normal)
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
        double left = dot(coarse, coarse);
        for (int a = 0; a < unknowns; a++) {
            left -= solution[a] * right[a];
        }
        double variance = 2 * Math.max(0, left) / Math.max(1, coarse.length - unknowns) / coarse.length;
        return significant(fundamentalHz, solution, variance);
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

    private static double dot(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum;
    }

    /** One harmonic turning from sample to sample. */
    private static final class Line {
        private final double stepRe;
        private final double stepIm;
        private final double cosine;
        private final double sine;
        private double re = 1;
        private double im;
        private double sumRe;
        private double sumIm;

        Line(double fundamentalHz, int harmonic, double rateHz, double cosine, double sine) {
            double angle = 2 * Math.PI * fundamentalHz * harmonic / rateHz;
            this.stepRe = StrictMath.cos(angle);
            this.stepIm = StrictMath.sin(angle);
            this.cosine = cosine;
            this.sine = sine;
        }

        private Line(Line other) {
            this.stepRe = other.stepRe;
            this.stepIm = other.stepIm;
            this.cosine = other.cosine;
            this.sine = other.sine;
        }

        /** A copy made where it is used stays in registers. */
        Line copy() {
            return new Line(this);
        }

        /** The line's own sample. */
        double next() {
            double value = cosine * re + sine * im;
            turn();
            return value;
        }

        void add(double sample) {
            sumRe += sample * re;
            sumIm += sample * im;
            turn();
        }

        double power() {
            return sumRe * sumRe + sumIm * sumIm;
        }

        private void turn() {
            double next = re * stepRe - im * stepIm;
            im = re * stepIm + im * stepRe;
            re = next;
        }
    }
}
