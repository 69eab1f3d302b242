package org.docksweep.sweep;

import java.util.Optional;

/** Whether what is left of the hum could still move a curve. */
final class HumCheck {
    /**
     * A grid's frequency wanders by so much within seconds, in hertz; after 3 s a ninth of a line is left, which is what
     * a simulation with 0.5 s of silence found.
     */
    private static final double WANDER_HZ = 0.006;

    private static final double BASE_HZ = 50;

    /** Least tail to look at, in seconds. */
    private static final double LEAST_TAIL_S = 0.15;

    /** A line counts when it exceeds its own standard deviation so many times. */
    private static final double SIGNIFICANT = 4;

    /** Distances from a line in units of the resolution, outside the main lobe of the window. */
    private static final double[] BESIDE_WIDTHS = {-4.5, -3, 3, 4.5};

    private static final int PARTS = 3;

    /** Share of its amplitude that a line shows in every part of the tail. */
    private static final double LASTING = 0.5;

    /** Impedance beyond which hum in the current decides nothing, in ohm. */
    private static final double HIGH_OHM = 50;

    private HumCheck() {}

    /**
     * Looks at a channel. A line of amplitude a adds {@code |dH| / |H| = (a / A) Tg sqrt(f / L)} at its frequency, A
     * being the amplitude of the sweep there.
     *
     * @param capture the prepared capture
     * @param role the channel
     * @param limit largest share it may add
     * @return the issue, if any
     */
    static Optional<SweepAnalysis.Issue> issue(PreparedCapture capture, ChannelRole role, double limit) {
        int c = capture.channel(role);
        HumRemover hum = capture.hum[c];
        SweepSignal signal = capture.signal;
        if (hum.frequencyHz() <= 0) {
            return Optional.empty();
        }
        double amplitude = sweepAmplitude(capture, c);
        int v = capture.channel(ChannelRole.VOLTAGE);
        if (role == ChannelRole.CURRENT && v >= 0) {
            // A small current says "high impedance", and so it does with some hum in it.
            amplitude = Math.max(amplitude, sweepAmplitude(capture, v) / HIGH_OHM);
        }
        double worst = 0;
        double[] tail = tail(capture, c);
        for (int h = 0; h < hum.cosine().length; h++) {
            double frequencyHz = hum.frequencyHz() * (h + 1);
            if (frequencyHz >= signal.startHz() && frequencyHz <= signal.stopHz()) {
                double fitted = Math.hypot(hum.cosine()[h], hum.sine()[h]);
                double line = left(capture, c, tail, frequencyHz, fitted);
                double gateS = Gate.electrical(frequencyHz, signal, AnalysisSettings.standard())
                        .postS();
                double added = line / amplitude * gateS * Math.sqrt(frequencyHz / signal.rateConstantS());
                worst = Math.max(worst, added);
            }
        }
        return worst > limit ? Optional.of(CaptureIssues.hum(role, hum.frequencyHz())) : Optional.empty();
    }

    /**
     * Amplitude of a line that is still there, read in the tail of the last sweep where it is worst; without a tail long
     * enough, what a wandering grid would leave of the line.
     */
    private static double left(PreparedCapture capture, int c, double[] tail, double frequencyHz, double fitted) {
        int length = tail.length;
        if (length < LEAST_TAIL_S * capture.sampleRateHz) {
            double agoS = (tailStart(capture) - capture.silence / 2.0) / capture.sampleRateHz;
            return fitted * Math.min(1, 2 * Math.PI * WANDER_HZ * frequencyHz / BASE_HZ * agoS);
        }
        Phasors.Sum sum = new Phasors.Sum();
        sum.turn(2 * Math.PI * frequencyHz / capture.sampleRateHz);
        sum.of(tail, length);
        // The window's mean is a half; a line of amplitude a gives a length / 4.
        double amplitude = 4 * Math.hypot(sum.re(), sum.im()) / length;
        double white = Math.sqrt(6 * capture.noiseVariance[c] / length);
        double noise = Math.max(white, beside(tail, capture.sampleRateHz, frequencyHz));
        return amplitude > SIGNIFICANT * noise && lasts(capture, c, frequencyHz, amplitude) ? amplitude : 0;
    }

    /** Rms of what stands beside a line, where none is: noise of a hall is far from white. */
    private static double beside(double[] tail, int sampleRateHz, double frequencyHz) {
        double widthHz = sampleRateHz / (double) tail.length;
        double squares = 0;
        for (double widths : BESIDE_WIDTHS) {
            Phasors.Sum sum = new Phasors.Sum();
            sum.turn(2 * Math.PI * (frequencyHz + widths * widthHz) / sampleRateHz);
            sum.of(tail, tail.length);
            double amplitude = 4 * Math.hypot(sum.re(), sum.im()) / tail.length;
            squares += amplitude * amplitude / BESIDE_WIDTHS.length;
        }
        return Math.sqrt(squares);
    }

    /** Hum goes on: it is in every third of the tail. A knock is in one, and its answer in the next. */
    private static boolean lasts(PreparedCapture capture, int c, double frequencyHz, double amplitude) {
        int from = tailStart(capture);
        int length = (capture.frames - from) / PARTS;
        for (int part = 0; part < PARTS; part++) {
            double[] samples = Phasors.hann(length);
            for (int n = 0; n < length; n++) {
                samples[n] *= capture.channels[c][from + part * length + n];
            }
            Phasors.Sum sum = new Phasors.Sum();
            sum.turn(2 * Math.PI * frequencyHz / capture.sampleRateHz);
            sum.of(samples, length);
            if (4 * Math.hypot(sum.re(), sum.im()) / length < LASTING * amplitude) {
                return false;
            }
        }
        return true;
    }

    private static int tailStart(PreparedCapture capture) {
        int last = capture.plan.repeats() - 1;
        return capture.start(last) + capture.sweepFrames + (int) (PreparedCapture.RING_OUT_S * capture.sampleRateHz);
    }

    /** The channel after the last sweep, seen through a Hann window. */
    private static double[] tail(PreparedCapture capture, int c) {
        int from = tailStart(capture);
        double[] tail = Phasors.hann(Math.max(0, capture.frames - from));
        for (int n = 0; n < tail.length; n++) {
            tail[n] *= capture.channels[c][from + n];
        }
        return tail;
    }

    private static double sweepAmplitude(PreparedCapture capture, int channel) {
        double mean = capture.energy(channel, capture.start(0), capture.sweepFrames)
                / Math.max(1, capture.framesOf(channel, 0));
        return Math.sqrt(Math.max(Double.MIN_NORMAL, 2 * mean));
    }
}
