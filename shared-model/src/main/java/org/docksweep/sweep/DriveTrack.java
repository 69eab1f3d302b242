package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.List;

/**
 * A channel during one sweep, block by block: how much energy it has, and how much of it follows the drive at the
 * drive's own frequency of that moment. Blocks last 5 ms or one and a half cycles, whichever is longer.
 *
 * @param energy sum of squares per block
 * @param re real part of the gain against the drive per block
 * @param im imaginary part of the gain
 * @param following energy that follows the drive per block
 */
record DriveTrack(double[] energy, double[] re, double[] im, double[] following) {
    private static final double BLOCK_S = 0.005;
    private static final double BLOCK_CYCLES = 1.5;

    /**
     * Ends of the blocks of a sweep.
     *
     * @param signal the sweep
     * @return frames from the start of the sweep, first 0
     */
    static int[] blocks(SweepSignal signal) {
        List<Integer> ends = new ArrayList<>(List.of(0));
        int frames = signal.frames();
        int at = 0;
        while (at < frames) {
            double frequencyHz = signal.frequencyHzAt(at / (double) signal.sampleRateHz());
            double lengthS = Math.max(BLOCK_S, BLOCK_CYCLES / frequencyHz);
            at += Math.max(1, (int) Math.round(lengthS * signal.sampleRateHz()));
            ends.add(Math.min(at, frames));
        }
        return ends.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * Follows a channel.
     *
     * @param samples the channel
     * @param start frame at which the sweep begins in it
     * @param blocks ends of blocks
     * @param deconvolver knows the drive
     * @return the track
     */
    static DriveTrack of(double[] samples, int start, int[] blocks, Deconvolver deconvolver) {
        int n = blocks.length - 1;
        DriveTrack track = new DriveTrack(new double[n], new double[n], new double[n], new double[n]);
        double[] drive = deconvolver.drive();
        double[] quadrature = deconvolver.quadrature();
        for (int b = 0; b < n; b++) {
            double square = 0;
            double re = 0;
            double im = 0;
            double reference = 0;
            for (int i = blocks[b]; i < blocks[b + 1] && start + i < samples.length; i++) {
                double sample = samples[start + i];
                square += sample * sample;
                re += sample * drive[i];
                im -= sample * quadrature[i];
                reference += drive[i] * drive[i] + quadrature[i] * quadrature[i];
            }
            track.energy[b] = square;
            if (reference > 0) {
                track.re[b] = 2 * re / reference;
                track.im[b] = 2 * im / reference;
                track.following[b] = Math.min(square, 2 * (re * re + im * im) / reference);
            }
        }
        return track;
    }

    /** Share of a block's energy that follows the drive, 0 to 1. */
    double coherence(int block) {
        return energy[block] > 0 ? following[block] / energy[block] : 0;
    }

    /** How far the phase of the gain turns from a block to the next, in radians from 0 to pi. */
    double phaseStep(int block) {
        double cross = im[block + 1] * re[block] - re[block + 1] * im[block];
        double dot = re[block + 1] * re[block] + im[block + 1] * im[block];
        return Math.abs(StrictMath.atan2(cross, dot));
    }
}
