package org.docksweep.rigcal;

import static org.docksweep.fleet.Require.inRange;
import static org.docksweep.fleet.Require.notNegative;

import org.hipparchus.distribution.continuous.TDistribution;

/**
 * How well a rig repeats itself, as its {@link RigStudy} found it: standard deviations of one sweep after one plug-in, repeatability
 * and reproducibility together. What the gate assumes of every rig without a study is never undercut by one: a study says how
 * the rig repeats, not how a cabinet does.
 *
 * <p>Few readings know a spread badly. The widened values are multiplied by t / 1.96, t the two-sided 95 % point of Student's
 * distribution for the degrees of freedom (JCGM 100:2008, G.3): 1.6 at 3, 1.2 at 7, 1.04 at 30.
 *
 * @param impedanceShare relative standard deviation of |Z|, octave by octave, less what a contact does
 * @param contactOhm standard deviation of the contact in series, in ohm
 * @param levelDb standard deviation of the level at the microphone, octave by octave, in decibel; 0 when nothing was heard
 * @param freedom degrees of freedom, the fewer of repeats and plug-ins; 0 without a study
 */
public record RigRepeatability(double impedanceShare, double contactOhm, double levelDb, int freedom) {
    /** No study: the gate takes what it assumes of every rig. */
    public static final RigRepeatability UNKNOWN = new RigRepeatability(0, 0, 0, 0);

    private static final double TWO_SIDED_95 = 0.975;
    private static final double NORMAL_95 = 1.959964;

    public RigRepeatability {
        notNegative("rig repeatability impedanceShare", impedanceShare);
        notNegative("rig repeatability contactOhm", contactOhm);
        notNegative("rig repeatability levelDb", levelDb);
        inRange("rig repeatability freedom", freedom, 0, Integer.MAX_VALUE);
    }

    /**
     * Whether there was a study.
     *
     * @return false for {@link #UNKNOWN}
     */
    public boolean known() {
        return freedom > 0;
    }

    /**
     * Relative standard uncertainty of |Z| of a comparison.
     *
     * @param sweeps sweeps of this rig that differ: 1 against a reference, 2 against a baseline of one sweep
     * @return share, few readings allowed for
     */
    public double impedanceOf(int sweeps) {
        return widened(impedanceShare) * Math.sqrt(sweeps);
    }

    /**
     * Standard uncertainty of the contact in a comparison.
     *
     * @param sweeps as for {@link #impedanceOf}
     * @return ohm, few readings allowed for
     */
    public double contactOf(int sweeps) {
        return widened(contactOhm) * Math.sqrt(sweeps);
    }

    /**
     * Standard uncertainty of a level in a comparison.
     *
     * @param sweeps as for {@link #impedanceOf}
     * @return decibel, few readings allowed for
     */
    public double levelOf(int sweeps) {
        return widened(levelDb) * Math.sqrt(sweeps);
    }

    private double widened(double spread) {
        return freedom == 0
                ? 0
                : spread * new TDistribution(freedom).inverseCumulativeProbability(TWO_SIDED_95) / NORMAL_95;
    }
}
