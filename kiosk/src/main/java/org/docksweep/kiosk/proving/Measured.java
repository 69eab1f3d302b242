package org.docksweep.kiosk.proving;

import org.docksweep.acoustic.SoundEar;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.TestPoint;
import org.docksweep.kiosk.rig.RigDay;
import org.docksweep.kiosk.rig.StandardSet;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlans;

/**
 * Clean curves of a healthy cabinet at one test point, for references and baselines.
 *
 * @param impedance calibrated impedance, or null for a line input
 * @param acoustic acoustic response, or null without a microphone
 * @param ambientCelsius air temperature
 * @param capture the capture they come from
 */
record Measured(ImpedanceCurve impedance, AcousticCurve acoustic, Double ambientCelsius, Capture capture) {
    private static final int MOST_ATTEMPTS = 3;

    /**
     * Sweeps until a capture is clean, as a house does with a cabinet it knows to be good.
     *
     * @param rig rig
     * @param calibration its calibration
     * @param occasion name of the occasion
     * @param unit the cabinet
     * @param point test point
     * @return curves
     * @throws RigException if the rig refuses
     * @throws IllegalStateException if no capture in three is clean; a promise of the simulator is broken then
     */
    static Measured clean(
            ProvingRig rig, RigCalibration calibration, String occasion, ProvingUnit unit, TestPoint point)
            throws RigException {
        rig.plug(occasion, unit, point.code());
        // what a baseline or a reference sounds like is heard by the same ear as what is judged
        SweepAnalyser analyser = SoundEar.analyser();
        SweepAnalysis last = null;
        for (int attempt = 0; attempt < MOST_ATTEMPTS; attempt++) {
            Capture capture = rig.play(SweepPlans.dock(point, rig.sampleRateHz()), point.kind(), share -> {});
            last = analyser.analyse(capture);
            if (last.clean()) {
                ImpedanceCurve raw = last.impedance();
                return new Measured(
                        raw == null ? null : calibration.correct(raw),
                        last.acoustic(),
                        capture.header().ambientCelsius(),
                        capture);
            }
        }
        throw new IllegalStateException(occasion + ": a healthy " + unit.modelCode() + " cannot be swept at "
                + point.code() + ": " + last.issues().get(0).kind());
    }

    /** Calibrates a rig and checks it; a rig that fails its check proves nothing. */
    static RigCalibration calibrate(ProvingRig rig) throws RigException {
        RigDay.Result day = new RigDay(
                        rig,
                        new org.docksweep.kiosk.dock.RealGate(),
                        StandardSet.practice(),
                        java.time.Clock.fixed(
                                java.time.Instant.parse("2026-03-14T01:00:00Z"), java.time.ZoneOffset.UTC))
                .calibrateAndCheck(java.time.ZoneOffset.UTC);
        if (day.checks().stream().anyMatch(c -> !c.passed())) {
            throw new IllegalStateException("the proving rig fails its check standards: " + day.checks());
        }
        return day.calibration();
    }
}
