package org.docksweep.kiosk.rig;

import org.docksweep.fleet.Require;
import org.docksweep.rigcal.CheckStandard;
import org.docksweep.rigcal.RigCheck;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * What the rig read on a check standard. The worst deviation decides; the mean one is charted, because it shows a slow
 * change long before the worst one does.
 *
 * @param standardName standard
 * @param meanShare mean of ln(|Zread| / |Z|) over the band: the relative error of magnitude, with its sign
 * @param worstShare worst |Zread - Z| / |Z|
 * @param worstHz where, in hertz
 * @param limitShare largest accepted worst deviation
 */
public record CheckReading(
        String standardName, double meanShare, double worstShare, double worstHz, double limitShare) {
    public CheckReading {
        Require.text("check standard", standardName);
        Require.inRange("check meanShare", meanShare, -100, 100);
        Require.notNegative("check worstShare", worstShare);
        Require.positive("check limitShare", limitShare);
    }

    /**
     * Reads a standard.
     *
     * @param standard what is known of it
     * @param corrected what the rig read, corrected by its calibration
     * @return the reading
     */
    public static CheckReading of(CheckStandard standard, ImpedanceCurve corrected) {
        RigCheck check = standard.check(corrected, RigDay.CHECK_LIMIT_SHARE);
        double[] frequencyHz = corrected.frequencyHz();
        double sum = 0;
        for (int i = 0; i < frequencyHz.length; i++) {
            sum += Math.log(corrected.magnitudeOhm(i)
                    / standard.impedanceOhm(frequencyHz[i]).norm());
        }
        return new CheckReading(
                standard.name(), sum / frequencyHz.length, check.deviationShare(), check.worstHz(), check.limitShare());
    }

    /**
     * Whether the standard read right; the limit itself passes.
     *
     * @return true if so
     */
    public boolean passed() {
        return worstShare <= limitShare;
    }
}
