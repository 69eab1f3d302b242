package org.docksweep.sweep;

import java.util.Optional;

/** Whether what is left of the hum could still move a curve. */
final class HumCheck {
    /** The fit leaves about a ninth of the hum in the worst case (0.5 s of silence, found by simulation). */
    private static final double LEFT_SHARE = 0.11;

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
        double worst = 0;
        for (int h = 0; h < hum.cosine().length; h++) {
            double frequencyHz = hum.frequencyHz() * (h + 1);
            if (frequencyHz >= signal.startHz() && frequencyHz <= signal.stopHz()) {
                double line = LEFT_SHARE * Math.hypot(hum.cosine()[h], hum.sine()[h]);
                double gateS = Gate.electrical(frequencyHz, signal, AnalysisSettings.standard())
                        .postS();
                double added = line / amplitude * gateS * Math.sqrt(frequencyHz / signal.rateConstantS());
                worst = Math.max(worst, added);
            }
        }
        return worst > limit ? Optional.of(CaptureIssues.hum(role, hum.frequencyHz())) : Optional.empty();
    }

    private static double sweepAmplitude(PreparedCapture capture, int channel) {
        double sum = 0;
        int from = Math.max(0, capture.start(0));
        int to = Math.min(capture.channels[channel].length, capture.start(0) + capture.signal.frames());
        for (int n = from; n < to; n++) {
            sum += capture.channels[channel][n] * capture.channels[channel][n];
        }
        return Math.sqrt(Math.max(Double.MIN_NORMAL, 2 * sum / Math.max(1, to - from)));
    }
}
