package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.List;

/** A capture made ready: SI units, delay known, hum taken off, noise read, impulse responses of every sweep. */
final class PreparedCapture {
    /** Silence needed to read the noise, in seconds. */
    static final double LEAST_SILENCE_S = 0.15;

    /** Silence kept away from the sweep, in seconds: the peak of a response is not its first sign. */
    private static final double GUARD_S = 0.01;

    /** What a cabinet needs to ring out after a sweep, in seconds. */
    static final double RING_OUT_S = 0.05;

    /** What is looked at before the sweep, in seconds. */
    private static final double PAD_S = 0.02;

    final SweepPlan plan;
    final SweepSignal signal;
    final int sampleRateHz;
    /** Frames of one sweep. */
    final int sweepFrames;

    final List<ChannelRole> roles;
    /** Samples by channel, {@link #frames} of them and zeros behind. */
    final double[][] channels;

    /** Frames of the capture. */
    final int frames;

    final HumRemover[] hum;
    final double[] noiseVariance;
    final int latency;
    final int silence;
    private final int[] starts;
    final NoiseModel noise;
    final Deconvolver deconvolver;
    final int pad;
    /** Impulse responses, by sweep and channel; the linear response of the timing channel sits at {@link #pad}. */
    final double[][][] responses;

    final Workspace workspace;

    private PreparedCapture(
            SweepPlan plan,
            List<ChannelRole> roles,
            double[][] channels,
            int frames,
            int latency,
            int silence,
            Workspace workspace) {
        this.workspace = workspace;
        this.plan = plan;
        this.signal = plan.signal();
        this.sampleRateHz = signal.sampleRateHz();
        this.sweepFrames = signal.frames();
        this.starts = new int[plan.repeats()];
        for (int k = 0; k < starts.length; k++) {
            starts[k] = plan.startFrame(k) + latency;
        }
        this.roles = roles;
        this.channels = channels;
        this.frames = frames;
        this.latency = latency;
        this.silence = silence;
        int[][] silences = silences();
        this.hum = new HumRemover[channels.length];
        this.noiseVariance = new double[channels.length];
        for (int c = 0; c < channels.length; c++) {
            hum[c] = HumRemover.fit(channels[c], silences, sampleRateHz);
            hum[c].subtractFrom(channels[c], frames, sampleRateHz);
            noiseVariance[c] = Sums.energy(channels[c], 0, silence) / silence;
        }
        this.noise = new NoiseModel(channels, silence, sampleRateHz);
        this.pad = (int) (PAD_S * sampleRateHz);
        int length = pad + sweepFrames + plan.tailFrames();
        this.deconvolver = Deconvolver.of(signal, length);
        this.responses = new double[plan.repeats()][channels.length][];
        for (int k = 0; k < plan.repeats(); k++) {
            for (int c = 0; c < channels.length; c++) {
                responses[k][c] = deconvolver.impulseResponse(channels[c], start(k) - pad, length, workspace);
            }
        }
    }

    /** Frames of silence at the start of a capture. */
    static int silenceFrames(SweepPlan plan, int latency) {
        return plan.preRollFrames() + latency - (int) (GUARD_S * plan.signal().sampleRateHz());
    }

    /**
     * Prepares a capture.
     *
     * @param capture the capture
     * @param latency its delay in frames
     * @param workspace where it is kept; it is good until that is closed
     * @return the prepared capture
     */
    static PreparedCapture of(Capture capture, int latency, Workspace workspace) {
        List<ChannelRole> roles = new ArrayList<>();
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT, ChannelRole.MICROPHONE)) {
            if (capture.has(role) && !RawCheck.dead(capture, role)) {
                roles.add(role);
            }
        }
        SweepPlan plan = capture.header().plan();
        int silence = silenceFrames(plan, latency);
        double[][] channels = new double[roles.size()][];
        for (int c = 0; c < channels.length; c++) {
            channels[c] = inUnits(capture, roles.get(c), silence, workspace);
        }
        return new PreparedCapture(plan, roles, channels, capture.frames(), latency, silence, workspace);
    }

    /** The silence before the first sweep, and those behind the sweeps that are long enough. */
    private int[][] silences() {
        List<int[]> found = new ArrayList<>();
        found.add(new int[] {0, silence});
        for (int k = 0; k < starts.length; k++) {
            int from = starts[k] + sweepFrames + (int) (RING_OUT_S * sampleRateHz);
            int to = Math.min(frames, k + 1 < starts.length ? starts[k + 1] - (int) (GUARD_S * sampleRateHz) : frames);
            if (to - from >= LEAST_SILENCE_S * sampleRateHz) {
                found.add(new int[] {from, to});
            }
        }
        return found.toArray(int[][]::new);
    }

    /** Whether the linear response of a channel is where the delay said. */
    boolean confirms(ChannelRole timing) {
        double[] response = responses[0][channel(timing)];
        return peak(response, 0, response.length) == pad;
    }

    /** Channel number of a role, or -1. */
    int channel(ChannelRole role) {
        return roles.indexOf(role);
    }

    /** Frame of the capture at which a sweep begins. */
    int start(int repeat) {
        return starts[repeat];
    }

    /** Frames of a channel that a sweep covers. */
    int framesOf(int channel, int repeat) {
        int from = Math.max(0, starts[repeat]);
        return Math.max(0, Math.min(frames, starts[repeat] + sweepFrames) - from);
    }

    /** Sum of squares of a stretch of a channel; parts outside the capture count as silence. */
    double energy(int channel, int from, int length) {
        return Sums.energy(channels[channel], from, Math.min(length, frames - from));
    }

    /** Index of the largest magnitude among some circular lags. */
    static int peak(double[] response, int from, int to) {
        int mask = response.length - 1;
        int best = from;
        for (int i = from; i < to; i++) {
            if (Math.abs(response[i & mask]) > Math.abs(response[best & mask])) {
                best = i;
            }
        }
        return best & mask;
    }

    /** A channel in SI units, without its mean in the silence. */
    private static double[] inUnits(Capture capture, ChannelRole role, int silence, Workspace workspace) {
        float[] samples = capture.fullScale(role);
        double units = capture.unitsPerFullScale(role);
        double mean = 0;
        for (int i = 0; i < silence; i++) {
            mean += samples[i];
        }
        mean *= units / Math.max(1, silence);
        double[] converted = workspace.atLeast(samples.length);
        for (int i = 0; i < samples.length; i++) {
            converted[i] = samples[i] * units - mean;
        }
        return converted;
    }
}
