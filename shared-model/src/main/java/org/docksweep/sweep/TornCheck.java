package org.docksweep.sweep;

/** Whether the audio system lost samples inside a capture: a buffer that stands still, a jump in phase, a sweep that comes late. */
final class TornCheck {
    /** Share of a channel's energy that an undisturbed voltage has at least following the drive. */
    private static final double TORN_COHERENCE = 0.7;

    private static final int TORN_BLOCKS = 3;

    /** No load turns voltage and current alike by so much from one block to the next, in radians. */
    private static final double TORN_PHASE = 0.6;

    /** Relative change of a gain between sweeps that counts as a slip when voltage and current share it. */
    private static final double TORN_CHANGE = 0.15;

    /** How alike the two changes must be, as a share of them. */
    private static final double TORN_LIKENESS = 0.4;

    private final PreparedCapture capture;
    private final int[] blocks;
    private final DriveTrack[][] tracks;

    /**
     * Makes the check.
     *
     * @param capture the capture
     * @param blocks ends of the blocks of a sweep
     * @param tracks channels by sweep and channel, block by block
     */
    TornCheck(PreparedCapture capture, int[] blocks, DriveTrack[][] tracks) {
        this.capture = capture;
        this.blocks = blocks;
        this.tracks = tracks;
    }

    /**
     * Whether samples are missing somewhere.
     *
     * @param raw the samples as captured
     * @return true if so
     */
    boolean torn(Capture raw) {
        for (int k = 0; k < tracks.length; k++) {
            if (RawCheck.frozen(raw, capture.start(k)) || jumps(k) || k > 0 && (shifted(k) || slipped(k))) {
                return true;
            }
        }
        return false;
    }

    private boolean jumps(int k) {
        int c = capture.channel(ChannelRole.VOLTAGE);
        if (c < 0) {
            // Sound from a cabinet in a hall follows no drive closely enough to tell.
            return false;
        }
        int other = capture.channel(ChannelRole.CURRENT);
        DriveTrack track = tracks[k][c];
        int stray = 0;
        for (int b = 1; b < blocks.length - 2; b++) {
            double floor = 4 * RepeatCheck.OVER_NOISE * capture.noiseVariance[c] * (blocks[b + 1] - blocks[b]);
            boolean clear = track.energy()[b] > floor && track.energy()[b + 1] > floor;
            stray = clear && track.coherence(b) < TORN_COHERENCE && (other < 0 || strayToo(k, other, b))
                    ? stray + 1
                    : 0;
            if (stray >= TORN_BLOCKS || clear && turns(k, c, other, b)) {
                return true;
            }
        }
        return false;
    }

    /** Voltage and current changed alike against the first sweep: no load does that, a lost piece of time does. */
    private boolean slipped(int k) {
        int v = capture.channel(ChannelRole.VOLTAGE);
        int i = capture.channel(ChannelRole.CURRENT);
        int count = 0;
        for (int b = 1; v >= 0 && b < blocks.length - 2; b++) {
            double[] voltage = change(tracks[0][v], tracks[k][v], b);
            boolean slipped = clear(v, tracks[0][v], b) && Math.hypot(voltage[0], voltage[1]) > TORN_CHANGE;
            if (slipped && i >= 0 && clear(i, tracks[0][i], b)) {
                double[] current = change(tracks[0][i], tracks[k][i], b);
                slipped = Math.hypot(voltage[0] - current[0], voltage[1] - current[1])
                        < TORN_LIKENESS * Math.hypot(voltage[0], voltage[1]);
            }
            count = slipped ? count + 1 : 0;
            if (count >= TORN_BLOCKS) {
                return true;
            }
        }
        return false;
    }

    /** Relative change of the gain from the first sweep to another. */
    private static double[] change(DriveTrack first, DriveTrack other, int b) {
        double re = other.re()[b] - first.re()[b];
        double im = other.im()[b] - first.im()[b];
        double own = square(first.re()[b]) + square(first.im()[b]);
        return new double[] {
            (re * first.re()[b] + im * first.im()[b]) / own, (im * first.re()[b] - re * first.im()[b]) / own
        };
    }

    private boolean clear(int channel, DriveTrack track, int b) {
        double floor = 4 * RepeatCheck.OVER_NOISE * capture.noiseVariance[channel] * (blocks[b + 1] - blocks[b]);
        return track.energy()[b] > floor;
    }

    private boolean strayToo(int k, int c, int b) {
        double floor = 4 * RepeatCheck.OVER_NOISE * capture.noiseVariance[c] * (blocks[b + 1] - blocks[b]);
        return tracks[k][c].energy()[b] < floor || tracks[k][c].coherence(b) < TORN_COHERENCE;
    }

    private boolean turns(int k, int c, int other, int b) {
        if (tracks[k][c].phaseStep(b) < TORN_PHASE) {
            return false;
        }
        if (other < 0) {
            return true;
        }
        double floor = 4 * RepeatCheck.OVER_NOISE * capture.noiseVariance[other] * (blocks[b + 1] - blocks[b]);
        return tracks[k][other].energy()[b] < floor
                || Math.abs(tracks[k][other].phaseStep(b) - tracks[k][c].phaseStep(b)) < TORN_PHASE / 2;
    }

    /** A later sweep does not begin where it should after the first one. */
    private boolean shifted(int k) {
        int reach = capture.sampleRateHz / 20;
        int peak = PreparedCapture.peak(capture.responses[k][0], capture.pad - reach, capture.pad + reach);
        int first = PreparedCapture.peak(capture.responses[0][0], capture.pad - reach, capture.pad + reach);
        int tolerance = Math.max(1, (int) (capture.sampleRateHz / (8 * capture.signal.stopHz())));
        return Math.abs(peak - first) > tolerance;
    }

    private static double square(double value) {
        return value * value;
    }
}
