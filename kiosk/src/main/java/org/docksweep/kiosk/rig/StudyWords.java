package org.docksweep.kiosk.rig;

import java.util.Locale;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.Knowledge;
import org.docksweep.rigcal.RepeatabilityStudy;
import org.docksweep.rigcal.RigStudy;

/** A repeatability study in words. */
public final class StudyWords {
    /** The gate's comparisons are with a baseline of one sweep. */
    private static final int SWEEPS = 2;

    private StudyWords() {}

    /**
     * Whether the gate believes curves less because of it.
     *
     * @param study the study
     * @return true if so
     */
    public static boolean widens(RigStudy study) {
        return study.summary().impedanceOf(SWEEPS) > Knowledge.RIG_SHARE;
    }

    /**
     * The study in words.
     *
     * @param study the study
     * @return a sentence: repeatability and reproducibility of |Z| in per cent, share of the plug-ins in the variance in per cent,
     *     contact in milliohm, level in decibel, what the gate holds in per cent
     */
    public static Reason of(RigStudy study) {
        RepeatabilityStudy z = study.impedance();
        double variance = z.gaugeSpread() * z.gaugeSpread();
        double share = variance == 0 ? 0 : 100 * z.reproducibility() * z.reproducibility() / variance;
        double held = Math.max(Knowledge.RIG_SHARE, study.summary().impedanceOf(SWEEPS));
        String key = widens(study) ? "rigpage-study-wide" : "rigpage-study-good";
        return Reason.of(
                study.level() == null ? key : key + "-heard",
                percent(z.repeatability()),
                percent(z.reproducibility()),
                String.format(Locale.ROOT, "%.0f", share),
                String.format(Locale.ROOT, "%.1f", 1000 * study.contact().gaugeSpread()),
                percent(held),
                study.level() == null
                        ? ""
                        : String.format(Locale.ROOT, "%.2f", study.level().gaugeSpread()));
    }

    private static String percent(double share) {
        return String.format(Locale.ROOT, "%.3f", 100 * share);
    }
}
