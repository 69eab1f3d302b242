package org.docksweep.kiosk.rig;

import java.time.Clock;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.Gate;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigCheck;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.PracticeRig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;

/**
 * What is done with a rig before the gate opens: open, short and load at the far plug, then the check standards, which
 * are other parts than the calibration's.
 */
public final class RigDay {
    /** Largest accepted deviation of a check standard: the accuracy promised for cabinets, 0.5 %. */
    public static final double CHECK_LIMIT_SHARE = 0.005;

    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm");

    private final PracticeRig rig;
    private final Gate gate;
    private final StandardSet standards;
    private final Clock clock;

    /**
     * How it went.
     *
     * @param calibration calibration
     * @param checks results of the check standards
     * @param readings the same as they are kept in the rig's book
     * @param standing standing of the rig from now on
     */
    public record Result(
            RigCalibration calibration, List<RigCheck> checks, List<CheckReading> readings, RigStanding standing) {
        public Result {
            checks = List.copyOf(checks);
            readings = List.copyOf(readings);
        }
    }

    /**
     * Prepares.
     *
     * @param rig the rig; a practice rig plugs its standards by itself
     * @param gate measurement
     * @param standards its standards
     * @param clock time
     */
    public RigDay(PracticeRig rig, Gate gate, StandardSet standards, Clock clock) {
        this.rig = rig;
        this.gate = gate;
        this.standards = standards;
        this.clock = clock;
    }

    /**
     * Calibrates and checks.
     *
     * @param zone zone of the site, for the words on the strip
     * @return how it went; a failed check is a result, not an error
     * @throws RigException if the rig cannot measure a standard
     */
    public Result calibrateAndCheck(ZoneId zone) throws RigException {
        ImpedanceCurve open = read(standards.open());
        ImpedanceCurve shorted = read(standards.shorted());
        ImpedanceCurve load = read(standards.load());
        if (shorted == null || load == null) {
            throw new RigException(RigException.Cause.REFUSED, Reason.of("dock-rig-standard-unread"));
        }
        RigCalibration calibration = RigCalibration.of(
                rig.id(),
                clock.instant(),
                open,
                shorted,
                load,
                standards.loadOhm(),
                standards.loadRelativeUncertainty());
        List<RigCheck> checks = new ArrayList<>();
        List<CheckReading> readings = new ArrayList<>();
        for (StandardSet.Check check : standards.checks()) {
            ImpedanceCurve raw = read(check.label());
            if (raw == null) {
                throw new RigException(RigException.Cause.REFUSED, Reason.of("dock-rig-standard-unread"));
            }
            ImpedanceCurve corrected = calibration.correct(raw);
            checks.add(check.standard().check(corrected, CHECK_LIMIT_SHARE));
            readings.add(CheckReading.of(check.standard(), corrected));
        }
        boolean passed = checks.stream().allMatch(RigCheck::passed);
        Reason words = Reason.of(
                passed ? "dock-rig-passed" : "dock-rig-failed",
                TIME.format(clock.instant().atZone(zone)));
        RigStanding standing =
                new RigStanding(words, passed ? ReadingState.OK : ReadingState.FAULT, calibration::correct);
        return new Result(calibration, checks, readings, standing);
    }

    /** At the open end what leaks through the lead; null when the capture is spoiled. */
    private ImpedanceCurve read(AssetTag label) throws RigException {
        TestPoint point = StandardSet.testPoint(standards.loadOhm());
        rig.plug(label, point.code());
        Capture capture = rig.play(gate.sweep(point, rig.sampleRateHz()), TestPointKind.TERMINALS, share -> {});
        SweepAnalysis analysis = gate.analyse(capture);
        return analysis.impedance();
    }
}
