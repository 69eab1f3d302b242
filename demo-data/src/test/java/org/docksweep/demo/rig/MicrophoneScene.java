package org.docksweep.demo.rig;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.LimitSet;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReferenceTeacher;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.suspect.Priors;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;

/** One test point of one model before a calibrated virtual rig, with a taught reference; for studies of the sound. */
final class MicrophoneScene {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);
    private static final AssetTag TAG = new AssetTag("STUDY-0001");
    private static final ModelBook BOOK = DemoModels.book();
    private static final double AGE_YEARS = 2;
    private static final int GOOD_UNITS = 5;
    private static final int RATE_HZ = 48_000;
    private static final String TEACHING_NOISE_DB = "45";

    private final CabinetModel model;
    private final TestPoint point;
    private final long seed;
    private final SweepAnalyser analyser = SoundEar.analyser();
    private final CurveCorrection correction;
    private final PointReference reference;

    MicrophoneScene(String modelCode, String pointCode, long seed) throws RigException {
        this.model = BOOK.cabinetModel(modelCode);
        this.point = model.testPoint(pointCode);
        this.seed = seed;
        RigCalibration calibration = calibration();
        this.correction = calibration::correct;
        List<ReferenceTeacher.Unit> lessons = new ArrayList<>();
        for (int n = 0; n < GOOD_UNITS; n++) {
            SweepAnalysis read = analyser.analyse(capture("good-" + n, unit(900_000 + n), TEACHING_NOISE_DB, 0));
            lessons.add(new ReferenceTeacher.Unit(corrected(read), read.acoustic(), 20.0));
        }
        this.reference = ReferenceTeacher.teach(BOOK, modelCode, pointCode, lessons);
    }

    VirtualCabinet unit(long number) {
        return VirtualCabinet.produced(BOOK, model.code(), seed * 1_000_003 + number, AGE_YEARS);
    }

    TestPoint point() {
        return point;
    }

    /** A capture of a cabinet; equal names give equal noise. */
    Capture capture(String name, VirtualCabinet cabinet, String noiseDb, double knocksPerS, Disturbance... disturbances)
            throws RigException {
        VirtualRig rig = new VirtualRig(
                RigSettings.of(Map.of(
                        "seed",
                        Long.toString(seed),
                        "hallNoiseDb",
                        noiseDb,
                        "knocksPerS",
                        Double.toString(knocksPerS))),
                CLOCK);
        rig.disturb(disturbances);
        rig.plug(name, cabinet, point.code());
        return rig.play(SweepPlans.dock(point, RATE_HZ), point.kind(), share -> {});
    }

    /** The same capture with more noise and knocks at the microphone. */
    static Capture noisier(Capture capture, double noiseDb, double knocksPerS, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        float[][] samples = new float[capture.header().channels().size()][];
        for (int c = 0; c < samples.length; c++) {
            ChannelRole role = capture.header().channels().get(c).role();
            samples[c] = capture.fullScale(role);
            if (role == ChannelRole.MICROPHONE) {
                double[] noise = new double[samples[c].length];
                Noises.addPink(noise, 20e-6 * Math.pow(10, noiseDb / 20), RATE_HZ, random);
                Playback playback = new Playback(null, null, 0, 0, 0, 0, 0, knocksPerS, Disturbance.NONE, random);
                new HallEvents(RATE_HZ).add(noise, capture.header().plan(), playback);
                samples[c] = samples[c].clone();
                for (int i = 0; i < noise.length; i++) {
                    samples[c][i] += (float) (noise[i] / Electronics.PASCALS_FULL_SCALE);
                }
            }
        }
        return new Capture(capture.header(), samples);
    }

    Baseline baseline(VirtualCabinet cabinet, String name) throws RigException {
        SweepAnalysis read = analyser.analyse(capture(name + "-before", cabinet, TEACHING_NOISE_DB, 0));
        return new Baseline(TAG, point.code(), CLOCK.instant(), 20.0, corrected(read), read.acoustic());
    }

    CabinetJudgement judge(Capture capture, Baseline baseline) {
        return judge(capture, baseline, RigRepeatability.UNKNOWN);
    }

    CabinetJudgement judge(Capture capture, Baseline baseline, RigRepeatability rig) {
        return judge(capture, baseline, rig, Optional.empty());
    }

    CabinetJudgement judge(Capture capture, Baseline baseline, RigRepeatability rig, Optional<Reason> doubt) {
        return Judge.judge(new JudgeRequest(
                BOOK,
                model,
                List.of(new JudgeRequest.PointCapture(point.code(), capture)),
                correction,
                List.of(reference),
                baseline == null ? List.of() : List.of(baseline),
                LimitSet.initial(),
                Priors.USUAL,
                rig,
                doubt));
    }

    VirtualCabinet with(VirtualCabinet cabinet, Fault fault) {
        return fault == null ? cabinet : cabinet.with(fault);
    }

    private ImpedanceCurve corrected(SweepAnalysis read) {
        return read.impedance() == null ? null : correction.correct(read.impedance());
    }

    private RigCalibration calibration() throws RigException {
        return RigCalibration.of(
                "study",
                CLOCK.instant(),
                standard(PracticeStandards.OPEN),
                standard(PracticeStandards.SHORT),
                standard(PracticeStandards.LOAD),
                10,
                2e-4);
    }

    private ImpedanceCurve standard(AssetTag label) throws RigException {
        VirtualRig rig = new VirtualRig(RigSettings.of(Map.of("seed", Long.toString(seed))), CLOCK);
        rig.plug(label, point.code());
        TestPoint wide = BOOK.cabinetModel("SPIN12").testPoint("IN");
        TestPoint swept = point.kind() == org.docksweep.fleet.TestPointKind.LINE_INPUT ? wide : point;
        SweepPlan plan = SweepPlans.dock(swept, RATE_HZ);
        return analyser.analyse(rig.play(plan, swept.kind(), share -> {})).impedance();
    }
}
