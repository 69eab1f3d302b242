package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** A capture made ready: SI units, delay known, hum taken off, noise read, impulse responses of every sweep. */
final class PreparedCapture {
    /** A capture may start this much later or earlier than the playback, in seconds. */
    static final double EARLIEST_S = -0.35;

    static final double LATEST_S = 0.6;

    /** Silence needed to read the noise, in seconds. */
    static final double LEAST_SILENCE_S = 0.15;

    /** Silence kept away from the sweep, in seconds: the peak of a response is not its first sign. */
    private static final double GUARD_S = 0.01;

    /** What is looked at before the sweep, in seconds. */
    private static final double PAD_S = 0.02;

    /** A peak counts as found when its square exceeds the mean square so many times; noise alone reaches about 25. */
    private static final double FOUND_RATIO = 60;

    final SweepPlan plan;
    final SweepSignal signal;
    final int sampleRateHz;
    final List<ChannelRole> roles;
    final double[][] channels;
    final HumRemover[] hum;
    final double[] noiseVariance;
    final int latency;
    final int silence;
    final NoiseModel noise;
    final Deconvolver deconvolver;
    final int pad;
    /** Impulse responses, by sweep and channel; the linear response of the timing channel sits at {@link #pad}. */
    final double[][][] responses;

    private PreparedCapture(SweepPlan plan, List<ChannelRole> roles, double[][] channels, int latency, int silence) {
        this.plan = plan;
        this.signal = plan.signal();
        this.sampleRateHz = signal.sampleRateHz();
        this.roles = roles;
        this.channels = channels;
        this.latency = latency;
        this.silence = silence;
        this.hum = new HumRemover[channels.length];
        this.noiseVariance = new double[channels.length];
        for (int c = 0; c < channels.length; c++) {
            centre(channels[c], silence);
            hum[c] = HumRemover.fit(channels[c], silence, sampleRateHz);
            hum[c].subtractFrom(channels[c], sampleRateHz);
            for (int i = 0; i < silence; i++) {
                noiseVariance[c] += channels[c][i] * channels[c][i] / silence;
            }
        }
        this.noise = new NoiseModel(channels, silence, sampleRateHz);
        this.pad = (int) (PAD_S * sampleRateHz);
        int length = pad + signal.frames() + plan.tailFrames();
        this.deconvolver = Deconvolver.of(signal, length);
        this.responses = new double[plan.repeats()][channels.length][];
        for (int k = 0; k < plan.repeats(); k++) {
            for (int c = 0; c < channels.length; c++) {
                responses[k][c] = deconvolver.impulseResponse(channels[c], start(k) - pad, length);
            }
        }
    }

    /**
     * Finds the delay of a capture.
     *
     * @param capture the capture
     * @param timing channel to find it in
     * @return frames by which the capture lags behind the playback; empty when the sweep is not in the channel
     */
    static OptionalInt latency(Capture capture, ChannelRole timing) {
        SweepPlan plan = capture.header().plan();
        int rate = plan.signal().sampleRateHz();
        int margin = (int) Math.round(-EARLIEST_S * rate);
        int lags = margin + (int) Math.round(LATEST_S * rate);
        int length = plan.signal().frames() + lags;
        double[] response = Deconvolver.of(plan.signal(), length)
                .impulseResponse(inUnits(capture, timing), plan.startFrame(0) - margin, length);
        int peak = peak(response, 0, lags);
        double meanSquare = 0;
        for (double value : response) {
            meanSquare += value * value / response.length;
        }
        boolean found = response[peak] * response[peak] > FOUND_RATIO * meanSquare;
        return found ? OptionalInt.of(peak - margin) : OptionalInt.empty();
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
     * @return the prepared capture
     */
    static PreparedCapture of(Capture capture, int latency) {
        List<ChannelRole> roles = new ArrayList<>();
        for (ChannelRole role : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT, ChannelRole.MICROPHONE)) {
            if (capture.has(role) && !RawCheck.dead(capture, role)) {
                roles.add(role);
            }
        }
        double[][] channels = new double[roles.size()][];
        for (int c = 0; c < channels.length; c++) {
            channels[c] = inUnits(capture, roles.get(c));
        }
        SweepPlan plan = capture.header().plan();
        return new PreparedCapture(plan, roles, channels, latency, silenceFrames(plan, latency));
    }

    /** Channel number of a role, or -1. */
    int channel(ChannelRole role) {
        return roles.indexOf(role);
    }

    /** Frame of the capture at which a sweep begins. */
    int start(int repeat) {
        return plan.startFrame(repeat) + latency;
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

    private static double[] inUnits(Capture capture, ChannelRole role) {
        float[] samples = capture.fullScale(role);
        double units = capture.unitsPerFullScale(role);
        double[] converted = new double[samples.length];
        for (int i = 0; i < converted.length; i++) {
            converted[i] = samples[i] * units;
        }
        return converted;
    }

    private static void centre(double[] channel, int silence) {
        double mean = 0;
        for (int i = 0; i < silence; i++) {
            mean += channel[i] / silence;
        }
        for (int i = 0; i < channel.length; i++) {
            channel[i] -= mean;
        }
    }
}
