package org.docksweep.demo.rig;

import java.time.Instant;
import java.util.List;
import java.util.SplittableRandom;
import org.docksweep.demo.physics.Load;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;

/** A virtual rig whose converter noise is chosen and whose contact of every plug-in is told, calibrated like a real one. */
public final class StudyRig {
    private static final int RATE_HZ = 48_000;
    private static final double HALL_NOISE_DB = 50;
    private static final Instant WHEN = Instant.parse("2026-03-14T01:30:00Z");
    private static final double LOAD_OHM = 10.001;
    private static final double LOAD_RELATIVE = 2e-4;
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(10, 1), new LevelMask.Point(20000, 1)));

    private final CaptureRenderer renderer;
    private final SweepAnalyser analyser = new SweepAnalyser();
    private final RigCalibration calibration;

    /**
     * Opens and calibrates.
     *
     * @param seed the rig's own errors
     * @param noiseDbFs converter noise of a cabinet's sweep, rms re full scale
     */
    public StudyRig(long seed, double noiseDbFs) {
        Electronics e = Electronics.drawn(seed);
        // a rig is calibrated at its own noise, then the hall gets loud
        calibration = new StudyRig(seed, e).calibrate(seed);
        renderer = rendererOf(seed, noisy(e, Math.pow(10, noiseDbFs / 20)));
    }

    private StudyRig(long seed, Electronics electronics) {
        renderer = rendererOf(seed, electronics);
        calibration = null;
    }

    private static CaptureRenderer rendererOf(long seed, Electronics electronics) {
        return new CaptureRenderer(electronics, new Hall(seed, RATE_HZ), RATE_HZ);
    }

    private static Electronics noisy(Electronics e, double noiseFs) {
        return new Electronics(
                e.amplifierGain(),
                e.amplifierOhm(),
                e.senseOhm(),
                e.voltageGain(),
                e.currentGain(),
                e.microphoneGain(),
                e.voltageCornerHz(),
                e.currentCornerHz(),
                e.voltageRollOffHz(),
                e.currentRollOffHz(),
                e.leadOhm(),
                e.leadHenry(),
                e.leadFarad(),
                noiseFs,
                e.humFs(),
                e.distortion());
    }

    private RigCalibration calibrate(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        TestPoint point = new TestPoint(
                "IN",
                TestPointKind.TERMINALS,
                "1+ / 1-",
                List.of("STANDARD"),
                10,
                MASK,
                List.of(new NetworkElement.Resistor("R1", "in", "0", 10, 0.01)));
        return RigCalibration.of(
                "study",
                WHEN,
                sweep(PracticeStandards.all().get(PracticeStandards.OPEN), point, 0, random)
                        .impedance(),
                sweep(
                                PracticeStandards.all().get(PracticeStandards.SHORT),
                                point,
                                PracticeStandards.CONTACT_OHM,
                                random)
                        .impedance(),
                sweep(PracticeStandards.all().get(PracticeStandards.LOAD), point, PracticeStandards.CONTACT_OHM, random)
                        .impedance(),
                LOAD_OHM,
                LOAD_RELATIVE);
    }

    /**
     * Sweeps a cabinet.
     *
     * @param cabinet cabinet
     * @param point test point with terminals
     * @param contactOhm contact of this plug-in
     * @param random noise
     * @return the analysis, not yet corrected
     */
    public SweepAnalysis sweep(VirtualCabinet cabinet, TestPoint point, double contactOhm, SplittableRandom random) {
        return sweep(cabinet.load(point.code()), point, contactOhm, random);
    }

    /**
     * The impedance at the far plug.
     *
     * @param raw raw impedance
     * @return corrected impedance
     */
    public ImpedanceCurve corrected(ImpedanceCurve raw) {
        return calibration.correct(raw);
    }

    private SweepAnalysis sweep(Load load, TestPoint point, double contactOhm, SplittableRandom random) {
        SweepPlan plan = SweepPlans.dock(point, RATE_HZ);
        Playback playback = new Playback(
                load,
                null,
                0,
                contactOhm,
                0,
                0.02 + 0.1 * random.nextDouble(),
                HALL_NOISE_DB,
                0,
                Disturbance.NONE,
                random.split());
        float[][] samples = renderer.render(plan, TestPointKind.TERMINALS, playback);
        CaptureHeader header = new CaptureHeader(
                WHEN, "study", TestPointKind.TERMINALS, CaptureRenderer.channels(TestPointKind.TERMINALS), plan, 20.0);
        return analyser.analyse(new Capture(header, samples));
    }
}
