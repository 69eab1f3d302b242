package org.docksweep.kiosk.dock;

import org.docksweep.acoustic.SoundEar;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPoint;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;
import org.docksweep.sweep.SweepSignal;

/** Measurement and judgement as the shared model has them. */
public final class RealGate implements Gate {
    private final SweepAnalyser analyser = SoundEar.analyser();

    @Override
    public SweepPlan probe(TestPoint point, int sampleRateHz) {
        return SweepPlans.probe(point, sampleRateHz);
    }

    @Override
    public SweepPlan sweep(TestPoint point, int sampleRateHz) {
        return SweepPlans.dock(point, sampleRateHz);
    }

    @Override
    public SweepPlan quietSweep(TestPoint point, int sampleRateHz) {
        double ceilingVrms = probe(point, sampleRateHz).signal().level().points().stream()
                .mapToDouble(LevelMask.Point::voltageVrms)
                .max()
                .orElseThrow();
        SweepPlan full = sweep(point, sampleRateHz);
        SweepSignal loud = full.signal();
        LevelMask quiet = new LevelMask(loud.level().points().stream()
                .map(p -> new LevelMask.Point(p.frequencyHz(), Math.min(p.voltageVrms(), ceilingVrms)))
                .toList());
        SweepSignal signal = new SweepSignal(
                loud.startHz(),
                loud.stopHz(),
                loud.rateConstantS(),
                loud.sampleRateHz(),
                quiet,
                loud.fadeInS(),
                loud.fadeOutS());
        return new SweepPlan(signal, full.preRollS(), full.tailS(), full.repeats());
    }

    @Override
    public SweepAnalysis analyse(Capture probe) {
        return analyser.analyse(probe);
    }

    @Override
    public CabinetJudgement judge(JudgeRequest request) {
        return Judge.judge(request);
    }
}
