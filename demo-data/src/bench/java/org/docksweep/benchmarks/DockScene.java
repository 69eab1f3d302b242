package org.docksweep.benchmarks;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.demo.rig.PracticeStandards;
import org.docksweep.demo.rig.RigSettings;
import org.docksweep.demo.rig.VirtualRig;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;
import org.docksweep.sweep.SweepSignal;

/**
 * A calibrated virtual rig and units of one model before it: everything a judgement needs, made from sweeps as a house
 * would make it.
 */
final class DockScene {
    static final int SAMPLE_RATE_HZ = 48_000;

    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);
    private static final AssetTag TAG = new AssetTag("BENCH-0001");
    private static final String POINT = "IN";
    private static final long UNIT_SEED = 4_000;
    private static final int GOOD_UNITS = 6;
    private static final double AGE_YEARS = 2;
    private static final double STANDARD_OHM = 10;
    private static final double STANDARD_RELATIVE = 2e-4;

    private final ModelBook book = DemoModels.book();
    private final VirtualRig rig = new VirtualRig(RigSettings.of(Map.of("seed", "5")), CLOCK);
    private final SweepAnalyser analyser = SoundEar.analyser();
    private final CabinetModel model;
    private final TestPoint point;
    private final VirtualCabinet unit;

    DockScene(String modelCode) {
        this.model = book.cabinetModel(modelCode);
        this.point = model.testPoint(POINT);
        this.unit = VirtualCabinet.produced(book, modelCode, UNIT_SEED, AGE_YEARS);
    }

    /** A capture of exactly the length asked of the figure: 3 s in all, one sweep of about 2 s. */
    Capture threeSeconds() throws RigException {
        return threeSeconds("three", unit);
    }

    private Capture threeSeconds(String name, VirtualCabinet cabinet) throws RigException {
        SweepSignal signal = SweepPlans.dock(point, SAMPLE_RATE_HZ).signal();
        double silenceS = 3 - signal.frames() / (double) SAMPLE_RATE_HZ;
        Capture longer = play(name, cabinet, new SweepPlan(signal, silenceS / 2, silenceS / 2, 1));
        float[][] samples = new float[longer.header().channels().size()][];
        for (int c = 0; c < samples.length; c++) {
            samples[c] = java.util.Arrays.copyOf(
                    longer.fullScale(longer.header().channels().get(c).role()), 3 * SAMPLE_RATE_HZ);
        }
        return new Capture(longer.header(), samples);
    }

    /** A capture as the dock makes it. */
    Capture asTheDock() throws RigException {
        return play("dock", unit, SweepPlans.dock(point, SAMPLE_RATE_HZ));
    }

    /**
     * Everything a judgement of the unit needs.
     *
     * @param fault its fault; null for a healthy unit
     * @param threeSeconds whether it is judged by a capture of 3 s with one sweep instead of the dock's own
     * @return the request
     * @throws RigException never, with the virtual rig
     */
    JudgeRequest request(Fault fault, boolean threeSeconds) throws RigException {
        RigCalibration calibration = calibration();
        List<ReferenceTeacher.Unit> lessons = new ArrayList<>();
        for (int n = 1; n <= GOOD_UNITS; n++) {
            VirtualCabinet good = VirtualCabinet.produced(book, model.code(), UNIT_SEED + n, AGE_YEARS);
            Capture capture = play("good-" + n, good, SweepPlans.dock(point, SAMPLE_RATE_HZ));
            SweepAnalysis read = analyser.analyse(capture);
            lessons.add(new ReferenceTeacher.Unit(
                    calibration.correct(read.impedance()),
                    read.acoustic(),
                    capture.header().ambientCelsius()));
        }
        PointReference reference = ReferenceTeacher.teach(book, model.code(), POINT, lessons);
        Capture before = asTheDock();
        SweepAnalysis read = analyser.analyse(before);
        Baseline baseline = new Baseline(
                TAG,
                POINT,
                before.header().capturedAt(),
                before.header().ambientCelsius(),
                calibration.correct(read.impedance()),
                read.acoustic());
        VirtualCabinet returned = fault == null ? unit : unit.with(fault);
        Capture capture = threeSeconds
                ? threeSeconds("returned", returned)
                : play("returned", returned, SweepPlans.dock(point, SAMPLE_RATE_HZ));
        return new JudgeRequest(
                book,
                model,
                List.of(new JudgeRequest.PointCapture(POINT, capture)),
                calibration::correct,
                List.of(reference),
                List.of(baseline),
                LimitSet.initial());
    }

    private RigCalibration calibration() throws RigException {
        ImpedanceCurve open = standard(PracticeStandards.OPEN);
        ImpedanceCurve shorted = standard(PracticeStandards.SHORT);
        ImpedanceCurve load = standard(PracticeStandards.LOAD);
        return RigCalibration.of(
                rig.id(), CLOCK.instant(), open, shorted, load, STANDARD_OHM, STANDARD_RELATIVE);
    }

    private ImpedanceCurve standard(AssetTag label) throws RigException {
        rig.plug(label, POINT);
        SweepPlan plan = SweepPlans.dock(point, SAMPLE_RATE_HZ);
        return analyser.analyse(rig.play(plan, point.kind(), share -> {})).impedance();
    }

    private Capture play(String name, VirtualCabinet cabinet, SweepPlan plan) throws RigException {
        rig.plug(name, cabinet, POINT);
        return rig.play(plan, point.kind(), share -> {});
    }
}
