package org.docksweep.rigcal;

import java.util.Locale;
import org.docksweep.fleet.Reason;

/**
 * Result of reading a check standard. A rig whose check failed cannot pass a cabinet.
 *
 * @param standardName standard that was read
 * @param passed whether the worst deviation is within the limit
 * @param deviationShare worst |Zread - Z| / |Z|
 * @param worstHz frequency of the worst deviation, in hertz
 * @param limitShare limit, which itself passes
 */
public record RigCheck(String standardName, boolean passed, double deviationShare, double worstHz, double limitShare) {

    /**
     * The result in words.
     *
     * @return key and arguments: standard, deviation in per cent, frequency, limit in per cent
     */
    public Reason reason() {
        return Reason.of(
                passed ? "rig-check-passed" : "rig-check-failed",
                standardName,
                String.format(Locale.ROOT, "%.2f", 100 * deviationShare),
                String.format(Locale.ROOT, "%.0f", worstHz),
                String.format(Locale.ROOT, "%.2f", 100 * limitShare));
    }
}
