package org.docksweep.sweep;

/** Turns a raw impedance curve into a calibrated one. */
@FunctionalInterface
public interface CurveCorrection {
    /** Leaves curves as they are. */
    CurveCorrection NONE = raw -> raw;

    /**
     * Corrects a curve.
     *
     * @param raw curve as the analyser made it
     * @return curve corrected for the rig, its uncertainty widened by the correction's own
     */
    ImpedanceCurve correct(ImpedanceCurve raw);
}
