package org.docksweep.sweep;

/**
 * Sums and tables of exp(j angle n) without a sine per sample. A turning phasor waits for its own last product; here a table
 * of one block is turned block by block instead, so that neighbouring samples are worked out side by side.
 */
final class Phasors {
    /** Samples in a block. */
    static final int BLOCK = 64;

    private Phasors() {}

    /**
     * Fills in exp(j angle n) for n from 0. Made by doubling, so that rounding grows with the logarithm of the length.
     *
     * @param angle radians per sample
     * @param cosine real parts to fill
     * @param sine imaginary parts to fill
     */
    static void fill(double angle, double[] cosine, double[] sine) {
        cosine[0] = 1;
        sine[0] = 0;
        double re = StrictMath.cos(angle);
        double im = StrictMath.sin(angle);
        for (int done = 1; done < cosine.length; done *= 2) {
            if (done % BLOCK == 0) {
                // squaring a phasor doubles its error, so it is looked up anew now and then
                re = StrictMath.cos(angle * done);
                im = StrictMath.sin(angle * done);
            }
            int more = Math.min(done, cosine.length - done);
            for (int i = 0; i < more; i++) {
                cosine[done + i] = cosine[i] * re - sine[i] * im;
                sine[done + i] = sine[i] * re + cosine[i] * im;
            }
            double square = re * re - im * im;
            im = 2 * re * im;
            re = square;
        }
    }

    /**
     * A window that is a raised cosine over its whole length, {@code 0.5 - 0.5 cos(2 pi (i + 0.5) / n)} (Hann).
     *
     * @param length n
     * @return the window
     */
    static double[] hann(int length) {
        double[] window = new double[length];
        rise(window, 0, length, 2 * Math.PI / length);
        return window;
    }

    /**
     * Fills in {@code 0.5 - 0.5 cos(angle (i + 0.5))}.
     *
     * @param window what to fill
     * @param from first place
     * @param length number of places
     * @param angle radians per place
     */
    static void rise(double[] window, int from, int length, double angle) {
        if (length == 0) {
            return;
        }
        double[] cosine = new double[length];
        double[] sine = new double[length];
        fill(angle, cosine, sine);
        double re = StrictMath.cos(angle / 2);
        double im = StrictMath.sin(angle / 2);
        for (int i = 0; i < length; i++) {
            window[from + i] = 0.5 - 0.5 * (cosine[i] * re - sine[i] * im);
        }
    }

    /** Adds up x(n) exp(j angle n); keeps its tables for the next sum. */
    static final class Sum {
        private final double[] cosine = new double[BLOCK];
        private final double[] sine = new double[BLOCK];
        private final double[] blockRe = new double[BLOCK];
        private final double[] blockIm = new double[BLOCK];
        private double turnRe;
        private double turnIm;
        private double re;
        private double im;

        /**
         * Sets the angle of the sums that follow.
         *
         * @param angle radians per sample
         */
        void turn(double angle) {
            fill(angle, cosine, sine);
            turnRe = StrictMath.cos(angle * BLOCK);
            turnIm = StrictMath.sin(angle * BLOCK);
        }

        /**
         * Adds up.
         *
         * @param samples x(n); n counts from 0 at the start of the array
         * @param length samples to add up
         */
        void of(double[] samples, int length) {
            java.util.Arrays.fill(blockRe, 0);
            java.util.Arrays.fill(blockIm, 0);
            double c = 1;
            double s = 0;
            int from = 0;
            for (; from + 4 * BLOCK <= length; from += 4 * BLOCK) {
                double c1 = c * turnRe - s * turnIm;
                double s1 = c * turnIm + s * turnRe;
                double c2 = c1 * turnRe - s1 * turnIm;
                double s2 = c1 * turnIm + s1 * turnRe;
                double c3 = c2 * turnRe - s2 * turnIm;
                double s3 = c2 * turnIm + s2 * turnRe;
                addFour(blockRe, samples, from, c, c1, c2, c3);
                addFour(blockIm, samples, from, s, s1, s2, s3);
                c = c3 * turnRe - s3 * turnIm;
                s = c3 * turnIm + s3 * turnRe;
            }
            for (; from < length; from += BLOCK) {
                add(samples, from, Math.min(BLOCK, length - from), c, s);
                double next = c * turnRe - s * turnIm;
                s = c * turnIm + s * turnRe;
                c = next;
            }
            re = 0;
            im = 0;
            for (int i = 0; i < BLOCK; i++) {
                re += blockRe[i] * cosine[i] - blockIm[i] * sine[i];
                im += blockRe[i] * sine[i] + blockIm[i] * cosine[i];
            }
        }

        private static void addFour(
                double[] block, double[] samples, int from, double a, double b, double c, double d) {
            for (int i = 0; i < BLOCK; i++) {
                block[i] += samples[from + i] * a
                        + samples[from + BLOCK + i] * b
                        + (samples[from + 2 * BLOCK + i] * c + samples[from + 3 * BLOCK + i] * d);
            }
        }

        private void add(double[] samples, int from, int length, double c, double s) {
            for (int i = 0; i < length; i++) {
                blockRe[i] += samples[from + i] * c;
                blockIm[i] += samples[from + i] * s;
            }
        }

        double re() {
            return re;
        }

        double im() {
            return im;
        }
    }
}
