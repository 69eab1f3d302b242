package org.docksweep.sweep;

import java.util.List;
import org.hipparchus.linear.ArrayRealVector;
import org.hipparchus.linear.LUDecomposition;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * A silence of a channel at a coarse rate: means of blocks of samples.
 *
 * @param coarse means of blocks
 * @param from first frame
 * @param step frames in a block
 */
record HumSilence(double[] coarse, int from, int step) {

    /**
     * Mains lines fitted to silences.
     *
     * @param cosine cosine parts of the harmonics from the first on, at frame 0 of the capture
     * @param sine sine parts
     * @param variance of one part of one line
     * @param meanSquareLeft what the lines leave of the silences
     */
    record Lines(double[] cosine, double[] sine, double variance, double meanSquareLeft) {}

    static HumSilence of(double[] samples, int from, int to, int step) {
        double[] coarse = new double[(to - from) / step];
        for (int i = 0; i < coarse.length; i++) {
            for (int n = 0; n < step; n++) {
                coarse[i] += samples[from + i * step + n];
            }
            coarse[i] /= step;
        }
        return new HumSilence(coarse, from, step);
    }

    /** Mean square about the mean. */
    double variance() {
        double sum = 0;
        double squares = 0;
        for (double value : coarse) {
            sum += value;
            squares += value * value;
        }
        double mean = sum / Math.max(1, coarse.length);
        return squares / Math.max(1, coarse.length) - mean * mean;
    }

    /** Middle of the silence, in frames. */
    double centre() {
        return from + 0.5 * coarse.length * step;
    }

    /**
     * Least squares for a constant and all lines together: in so short a silence they are not quite orthogonal. Products of two
     * lines add up to sums of single ones, which are known in closed form.
     *
     * @param silences silences, all of one step
     * @param fundamentalHz frequency of the first line
     * @param sampleRateHz frames per second
     * @param sum adds up
     * @return the lines
     */
    static Lines fit(List<HumSilence> silences, double fundamentalHz, int sampleRateHz, Phasors.Sum sum) {
        int harmonics = HumRemover.HARMONICS;
        int unknowns = 1 + 2 * harmonics;
        double[] cosines = new double[2 * harmonics + 1];
        double[] sines = new double[2 * harmonics + 1];
        double[] right = new double[unknowns];
        double square = 0;
        double perFrame = 2 * Math.PI * fundamentalHz / sampleRateHz;
        int step = silences.get(0).step();
        double[] lower = new double[harmonics + 1];
        for (int h = 1; h <= harmonics; h++) {
            lower[h] = kernel(h * perFrame, step);
        }
        int count = 0;
        for (HumSilence silence : silences) {
            int n = silence.coarse().length;
            count += n;
            double angle = perFrame * step;
            // the mean of a block is the line at the block's centre, lowered by the kernel
            double first = perFrame * (silence.from() + (step - 1) / 2.0);
            for (int k = 0; k < cosines.length; k++) {
                double size = k == 0 ? n : StrictMath.sin(n * k * angle / 2) / StrictMath.sin(k * angle / 2);
                cosines[k] += size * StrictMath.cos(k * (first + (n - 1) * angle / 2));
                sines[k] += size * StrictMath.sin(k * (first + (n - 1) * angle / 2));
            }
            for (double value : silence.coarse()) {
                right[0] += value;
            }
            square += Sums.energy(silence.coarse(), 0, n);
            for (int h = 1; h <= harmonics; h++) {
                sum.turn(h * angle);
                sum.of(silence.coarse(), n);
                double startRe = StrictMath.cos(h * first);
                double startIm = StrictMath.sin(h * first);
                right[2 * h - 1] += lower[h] * (sum.re() * startRe - sum.im() * startIm);
                right[2 * h] += lower[h] * (sum.re() * startIm + sum.im() * startRe);
            }
        }
        double[] solution = new LUDecomposition(normal(cosines, sines, lower))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
        double left = square;
        for (int a = 0; a < unknowns; a++) {
            left -= solution[a] * right[a];
        }
        double meanSquare = Math.max(0, left) / Math.max(1, count - unknowns);
        double[] cosine = new double[harmonics];
        double[] sine = new double[harmonics];
        for (int h = 0; h < harmonics; h++) {
            cosine[h] = solution[2 * h + 1];
            sine[h] = solution[2 * h + 2];
        }
        return new Lines(cosine, sine, 2 * meanSquare / count, meanSquare);
    }

    private static RealMatrix normal(double[] cosines, double[] sines, double[] lower) {
        int harmonics = lower.length - 1;
        RealMatrix normal = MatrixUtils.createRealMatrix(1 + 2 * harmonics, 1 + 2 * harmonics);
        normal.setEntry(0, 0, cosines[0]);
        for (int a = 1; a <= harmonics; a++) {
            set(normal, 0, 2 * a - 1, lower[a] * cosines[a]);
            set(normal, 0, 2 * a, lower[a] * sines[a]);
            for (int b = 1; b <= harmonics; b++) {
                double both = lower[a] * lower[b] / 2;
                double difference = a < b ? -sines[b - a] : sines[a - b];
                normal.setEntry(2 * a - 1, 2 * b - 1, both * (cosines[Math.abs(a - b)] + cosines[a + b]));
                normal.setEntry(2 * a, 2 * b, both * (cosines[Math.abs(a - b)] - cosines[a + b]));
                set(normal, 2 * a, 2 * b - 1, both * (sines[a + b] + difference));
            }
        }
        return normal;
    }

    private static void set(RealMatrix normal, int row, int column, double value) {
        normal.setEntry(row, column, value);
        normal.setEntry(column, row, value);
    }

    private static double kernel(double angle, int step) {
        return StrictMath.sin(angle / 2 * step) / (step * StrictMath.sin(angle / 2));
    }
}
