package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.docksweep.acoustic.SoundEar;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;

/** Plays and analyses for the rig page. Not safe for use by several threads. */
final class DeskSweeps {
    private static final double PROGRESS_STEP = 0.02;

    private final Rig rig;
    private final SweepAnalyser analyser = new SweepAnalyser();
    private final SweepAnalyser listener = SoundEar.analyser();
    private List<ChannelLevel> levels = List.of();

    DeskSweeps(Rig rig) {
        this.rig = rig;
    }

    /** Levels of the newest capture. */
    List<ChannelLevel> levels() {
        return levels;
    }

    /**
     * Measures the step at hand of a walk: plugs what a practice rig can, probes where that is due, sweeps.
     *
     * @return what the walk says of it
     */
    RigDeskState.Message take(DeskWalk walk, StandardsHand hand, BooleanSupplier stopped, DoubleConsumer progress)
            throws RigException, IOException {
        walk.plug(hand, Lead.of(rig));
        TestPoint point = walk.point();
        if (walk.probesFirst()) {
            SweepPlan plan = SweepPlans.probe(point, rig.sampleRateHz());
            Optional<RigDeskState.Message> refused = walk.probed(of(plan, point.kind(), analyser, stopped, done -> {}));
            if (refused.isPresent()) {
                return refused.get();
            }
        }
        SweepPlan plan = SweepPlans.dock(point, rig.sampleRateHz());
        int wanted = walk.sweeps();
        List<SweepAnalysis> taken = new ArrayList<>();
        for (int i = 0; i < wanted; i++) {
            int before = i;
            taken.add(of(
                    plan,
                    point.kind(),
                    walk.listens() ? listener : analyser,
                    stopped,
                    done -> progress.accept((before + done) / wanted)));
        }
        return walk.take(taken);
    }

    private SweepAnalysis of(
            SweepPlan plan, TestPointKind kind, SweepAnalyser with, BooleanSupplier stopped, DoubleConsumer progress)
            throws RigException {
        double[] shown = {0};
        Capture capture = rig.play(plan, kind, done -> {
            if (stopped.getAsBoolean()) {
                rig.stop();
            }
            if (done - shown[0] >= PROGRESS_STEP) {
                shown[0] = done;
                progress.accept(done);
            }
        });
        levels = ChannelLevel.of(capture);
        return with.analyse(capture);
    }
}
