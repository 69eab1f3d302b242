package org.docksweep.sweep;

import java.util.Locale;
import org.docksweep.fleet.Reason;

/** The sentences for what can be wrong with a capture; texts in the reasons bundle under keys {@code capture-...}. */
final class CaptureIssues {
    private CaptureIssues() {}

    static SweepAnalysis.Issue clipped(ChannelRole role) {
        return issue(QualityIssue.CLIPPED, "capture-clipped-" + word(role));
    }

    static SweepAnalysis.Issue dead(ChannelRole role) {
        return issue(QualityIssue.CHANNEL_DEAD, "capture-dead-" + word(role));
    }

    static SweepAnalysis.Issue hum(ChannelRole role, double frequencyHz) {
        return issue(QualityIssue.HUM, "capture-hum-" + word(role), String.format(Locale.ROOT, "%.0f", frequencyHz));
    }

    static SweepAnalysis.Issue issue(QualityIssue kind, String key, String... arguments) {
        return new SweepAnalysis.Issue(kind, Reason.of(key, arguments));
    }

    private static String word(ChannelRole role) {
        return role.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
