package org.docksweep.sweep;

import static org.docksweep.fleet.Require.inRange;

/**
 * What is played in one go: silence, then one or more equal sweeps, each followed by a tail in which the cabinet rings
 * out. Sweep k (from 0) starts at frame {@link #startFrame(int)}.
 *
 * @param signal the sweep
 * @param preRollS silence before the first sweep, in seconds, 0 to 10; the noise of the hall is read from it
 * @param tailS silence after each sweep, in seconds, 0 to 10
 * @param repeats number of sweeps, 1 to 8
 */
public record SweepPlan(SweepSignal signal, double preRollS, double tailS, int repeats) {
    public SweepPlan {
        if (signal == null) {
            throw new IllegalArgumentException("sweep plan: the sweep is missing");
        }
        inRange("sweep plan preRollS", preRollS, 0, 10);
        inRange("sweep plan tailS", tailS, 0, 10);
        inRange("sweep plan repeats", repeats, 1, 8);
    }

    /**
     * First frame of a sweep.
     *
     * @param repeat sweep number from 0
     * @return frame number from 0
     */
    public int startFrame(int repeat) {
        return preRollFrames() + repeat * (signal.frames() + tailFrames());
    }

    /**
     * Frames of silence before the first sweep.
     *
     * @return frames
     */
    public int preRollFrames() {
        return (int) Math.round(preRollS * signal.sampleRateHz());
    }

    /**
     * Frames of silence after each sweep.
     *
     * @return frames
     */
    public int tailFrames() {
        return (int) Math.round(tailS * signal.sampleRateHz());
    }

    /**
     * All frames of the playback.
     *
     * @return frames
     */
    public int totalFrames() {
        return startFrame(repeats);
    }

    /**
     * The whole playback in volts.
     *
     * @return a new array of {@link #totalFrames()} samples
     */
    public double[] driveVolts() {
        double[] drive = new double[totalFrames()];
        double[] sweep = signal.voltageSamples();
        for (int k = 0; k < repeats; k++) {
            System.arraycopy(sweep, 0, drive, startFrame(k), sweep.length);
        }
        return drive;
    }
}
