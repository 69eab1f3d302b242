package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.List;

/**
 * Mains hum, fitted in the silences around the sweeps and taken off everywhere: a fundamental near 50 or 60 Hz and its
 * harmonics, whose common frequency is searched within one per cent. Only lines that stand out of the noise are taken.
 *
 * @param frequencyHz fundamental; 0 when no hum was found
 * @param cosine cosine parts of the harmonics from the first on, at frame 0 of the capture
 * @param sine sine parts
 * @param amplitude square root of the summed squares of all lines' amplitudes
 */
record HumRemover(double frequencyHz, double[] cosine, double[] sine, double amplitude) {
    static final int HARMONICS = 12;
    private static final double[] NOMINAL_HZ = {50, 60};

    /** Grids hold their frequency far better; oscillators of interfaces add little. */
    private static final double SEARCH_SHARE = 0.01;

    /** A line is taken when its amplitude exceeds its own standard deviation so many times. */
    private static final double SIGNIFICANT = 3.5;

    /** How far off a frequency from the first silence may be, in hertz, and steps to look at on each side. */
    private static final double CLOSER_HZ = 0.3;

    private static final int CLOSER_STEPS = 300;

    /** Power left in all silences over that left in the first, from which on there is something else in the others. */
    private static final double OTHERWISE = 2;

    /** A silence so many times as loud as the quietest is no silence. */
    private static final double KNOCKED = 6;

    /** Samples over which a line is taken off from one table. */
    private static final int SUBTRACT_BLOCK = 256;

    private static final int SEARCH_STEPS = 11;
    private static final int REFINE_STEPS = 12;

    /** Hum and the harmonics fitted lie below 750 Hz; a coarser rate than this would cut into them. */
    private static final double COARSE_RATE_HZ = 2000;

    /**
     * Fits the hum of a channel: its frequency in the silence before the sweep, then more closely from how the phase of the
     * lines has moved in the silences behind the sweeps, then the lines in all silences together.
     *
     * @param samples the channel
     * @param silences first frame and frame after the last of every silence, the one before the first sweep first
     * @param sampleRateHz samples per second
     * @return what was found
     */
    static HumRemover fit(double[] samples, int[][] silences, int sampleRateHz) {
        int step = Math.max(1, (int) (sampleRateHz / COARSE_RATE_HZ));
        double rateHz = sampleRateHz / (double) step;
        List<HumSilence> all = new ArrayList<>();
        for (int[] silence : silences) {
            all.add(HumSilence.of(samples, silence[0], silence[1], step));
        }
        all = undisturbed(all);
        HumSilence first = all.get(0);
        Phasors.Sum sum = new Phasors.Sum();
        double hz = searched(first.coarse(), rateHz, sum);
        HumSilence.Lines alone = HumSilence.fit(List.of(first), hz, sampleRateHz, sum);
        if (all.size() > 1) {
            double closer = hz + closer(all, alone, hz, sampleRateHz, sum);
            HumSilence.Lines together = HumSilence.fit(all, closer, sampleRateHz, sum);
            // something else in the silences behind, or a grid that changed: trust the one before alone
            if (together.meanSquareLeft() < OTHERWISE * alone.meanSquareLeft()) {
                return significant(closer, together);
            }
        }
        return significant(hz, alone);
    }

    /** Leaves out silences into which a knock fell: it would be taken for lines, and these taken off everywhere. */
    private static List<HumSilence> undisturbed(List<HumSilence> all) {
        double least = all.stream().mapToDouble(HumSilence::variance).min().orElse(0);
        return all.stream().filter(s -> s.variance() <= KNOCKED * least).toList();
    }

    private static double searched(double[] coarse, double rateHz, Phasors.Sum sum) {
        double[] weighted = Phasors.hann(coarse.length);
        for (int i = 0; i < weighted.length; i++) {
            weighted[i] *= coarse[i];
        }
        double bestHz = 0;
        double bestPower = -1;
        for (double nominalHz : NOMINAL_HZ) {
            for (int i = 0; i < SEARCH_STEPS; i++) {
                double hz = nominalHz * (1 + 2 * SEARCH_SHARE * (i / (SEARCH_STEPS - 1.0) - 0.5));
                double power = power(weighted, rateHz, hz, sum);
                if (power > bestPower) {
                    bestPower = power;
                    bestHz = hz;
                }
            }
        }
        return refined(weighted, rateHz, bestHz, bestPower, sum);
    }

    /**
     * How far the frequency is from one taken from the first silence: where the lines of the later silences, turned back, agree best
     * with those of the first.
     */
    private static double closer(
            List<HumSilence> all, HumSilence.Lines first, double hz, int sampleRateHz, Phasors.Sum sum) {
        double[][] re = new double[all.size()][HARMONICS];
        double[][] im = new double[all.size()][HARMONICS];
        double[] laterS = new double[all.size()];
        for (int k = 1; k < all.size(); k++) {
            HumSilence.Lines lines = HumSilence.fit(List.of(all.get(k)), hz, sampleRateHz, sum);
            laterS[k] = (all.get(k).centre() - all.get(0).centre()) / sampleRateHz;
            for (int h = 0; h < HARMONICS; h++) {
                // cosine - j sine turns as exp(j 2 pi f t)
                re[k][h] = lines.cosine()[h] * first.cosine()[h] + lines.sine()[h] * first.sine()[h];
                im[k][h] = lines.cosine()[h] * first.sine()[h] - lines.sine()[h] * first.cosine()[h];
            }
        }
        double best = Double.NEGATIVE_INFINITY;
        double bestHz = 0;
        for (int i = -CLOSER_STEPS; i <= CLOSER_STEPS; i++) {
            double offHz = i * CLOSER_HZ / CLOSER_STEPS;
            double agreement = 0;
            for (int k = 1; k < all.size(); k++) {
                double turnRe = StrictMath.cos(2 * Math.PI * offHz * laterS[k]);
                double turnIm = StrictMath.sin(2 * Math.PI * offHz * laterS[k]);
                double c = turnRe;
                double s = turnIm;
                for (int h = 0; h < HARMONICS; h++) {
                    agreement += re[k][h] * c + im[k][h] * s;
                    double next = c * turnRe - s * turnIm;
                    s = c * turnIm + s * turnRe;
                    c = next;
                }
            }
            if (agreement > best) {
                best = agreement;
                bestHz = offHz;
            }
        }
        return bestHz;
    }

    /** Takes the hum off a channel, in place. */
    void subtractFrom(double[] samples, int frames, int sampleRateHz) {
        for (int h = 0; h < cosine.length; h++) {
            if (cosine[h] != 0 || sine[h] != 0) {
                subtract(samples, frames, 2 * Math.PI * frequencyHz * (h + 1) / sampleRateHz, cosine[h], sine[h]);
            }
        }
    }

    private static void subtract(double[] samples, int frames, double angle, double cosine, double sine) {
        double[] tableRe = new double[SUBTRACT_BLOCK];
        double[] tableIm = new double[SUBTRACT_BLOCK];
        Phasors.fill(angle, tableRe, tableIm);
        double turnRe = StrictMath.cos(angle * SUBTRACT_BLOCK);
        double turnIm = StrictMath.sin(angle * SUBTRACT_BLOCK);
        double c = cosine;
        double s = sine;
        for (int from = 0; from < frames; from += SUBTRACT_BLOCK) {
            subtract(samples, from, Math.min(SUBTRACT_BLOCK, frames - from), tableRe, tableIm, c, s);
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

    private static HumRemover significant(double fundamentalHz, HumSilence.Lines lines) {
        double[] cosine = new double[HARMONICS];
        double[] sine = new double[HARMONICS];
        double sum = 0;
        for (int h = 0; h < HARMONICS; h++) {
            double square = lines.cosine()[h] * lines.cosine()[h] + lines.sine()[h] * lines.sine()[h];
            if (square > SIGNIFICANT * SIGNIFICANT * lines.variance()) {
                cosine[h] = lines.cosine()[h];
                sine[h] = lines.sine()[h];
                sum += square;
            }
        }
        return new HumRemover(sum > 0 ? fundamentalHz : 0, cosine, sine, Math.sqrt(sum));
    }
}
