package org.docksweep.sweep;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.TestPointKind;

/** What can be seen in the samples before anything is calculated: clipping, dead and silent channels, length. */
final class RawCheck {
    /** Converters stop one step short of full scale, and some a little earlier. */
    private static final float CLIP_LEVEL = 0.9995f;

    /** A single sample at full scale may be a coincidence. */
    private static final int CLIP_SAMPLES = 3;

    /** Two steps of a 24-bit converter, from top to bottom: a connected input is never so quiet. */
    private static final float DEAD_SPAN = (float) 0x1p-22;

    private static final double FROZEN_S = 0.001;
    private static final double FROZEN_CYCLES = 0.15;

    private RawCheck() {}

    /**
     * Roles a capture of this kind cannot do without.
     *
     * @param kind what was connected
     * @return the roles
     */
    static List<ChannelRole> needed(TestPointKind kind) {
        return kind == TestPointKind.LINE_INPUT
                ? List.of(ChannelRole.MICROPHONE)
                : List.of(ChannelRole.VOLTAGE, ChannelRole.CURRENT);
    }

    /**
     * Looks at the samples.
     *
     * @param capture the capture
     * @return what is wrong, worst first
     */
    static List<SweepAnalysis.Issue> issues(Capture capture) {
        SweepPlan plan = capture.header().plan();
        List<ChannelRole> needed = needed(capture.header().testPointKind());
        List<SweepAnalysis.Issue> issues = new ArrayList<>();
        if (capture.header().channels().stream().allMatch(c -> dead(capture, c.role()))) {
            issues.add(CaptureIssues.issue(QualityIssue.SILENT, "capture-silent"));
            return issues;
        }
        if (capture.frames() < plan.totalFrames() - plan.tailFrames()) {
            issues.add(CaptureIssues.issue(QualityIssue.TOO_SHORT, "capture-too-short"));
        }
        for (ChannelRole role : needed) {
            if (!capture.has(role) || dead(capture, role)) {
                issues.add(CaptureIssues.dead(role));
            }
        }
        for (CaptureChannel channel : capture.header().channels()) {
            if (clipped(capture, channel.role())) {
                issues.add(CaptureIssues.clipped(channel.role()));
            }
        }
        return issues;
    }

    /**
     * What can be said of a channel at a glance.
     *
     * @param dead whether it moves no more than a converter's last steps, or holds what is not a number
     * @param clipped whether it rests at full scale
     */
    record Extent(boolean dead, boolean clipped) {}

    static boolean clipped(Capture capture, ChannelRole role) {
        return capture.extent(role).clipped();
    }

    static boolean dead(Capture capture, ChannelRole role) {
        return capture.extent(role).dead();
    }

    static Extent extent(float[] samples) {
        float lowest = Float.POSITIVE_INFINITY;
        float highest = Float.NEGATIVE_INFINITY;
        boolean notNumbers = false;
        for (float sample : samples) {
            lowest = sample < lowest ? sample : lowest;
            highest = sample > highest ? sample : highest;
            notNumbers |= sample != sample;
        }
        int count = 0;
        if (highest >= CLIP_LEVEL || lowest <= -CLIP_LEVEL) {
            for (float sample : samples) {
                count += Math.abs(sample) >= CLIP_LEVEL ? 1 : 0;
            }
        }
        return new Extent(notNumbers || !(highest - lowest > DEAD_SPAN), count >= CLIP_SAMPLES);
    }

    /**
     * Whether all channels stand still somewhere within a sweep: a buffer that never came.
     *
     * @param capture the capture
     * @param start frame at which the sweep begins
     * @return true if so
     */
    static boolean frozen(Capture capture, int start) {
        SweepSignal signal = capture.header().plan().signal();
        int rate = signal.sampleRateHz();
        float[][] channels = capture.header().channels().stream()
                .map(c -> capture.fullScale(c.role()))
                .toArray(float[][]::new);
        int run = 0;
        int last = Math.min(capture.frames() - 1 - start, (int) ((signal.durationS() - signal.fadeOutS()) * rate));
        for (int n = Math.max(1 - start, (int) (signal.fadeInS() * rate)); n < last; n++) {
            run = still(channels, start + n) ? run + 1 : 0;
            // A coarse converter may rest on one step around the crest of a slow sweep.
            if (run >= FROZEN_S * rate && run >= FROZEN_CYCLES * rate / signal.frequencyHzAt(n / (double) rate)) {
                return true;
            }
        }
        return false;
    }

    private static boolean still(float[][] channels, int frame) {
        for (float[] samples : channels) {
            if (samples[frame] != samples[frame - 1]) {
                return false;
            }
        }
        return true;
    }
}
