package org.docksweep.kiosk.bench;

import java.util.List;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.bench.BenchState.Message;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.Measuring;
import org.docksweep.kiosk.dock.Measuring.Outcome;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;

/**
 * Sweeps slowly for the ear of a person, who stops it where something buzzes and has the octave around that swept again. Nothing is recorded
 * or judged. Blocking; lives on the bench's thread.
 */
final class SlowSweep {
    private static final double PROGRESS_STEP = 0.02;
    /** Half an octave either way. */
    private static final double AROUND = Math.sqrt(2);

    private final DockParts parts;
    private final Measuring measuring;
    private final ProofSubject subject;
    private final AssetTag tag;
    private int index;
    private Double share;
    private double atHz;
    private Double stoppedHz;

    SlowSweep(BenchParts parts, ProofSubject subject, AssetTag tag) {
        this.parts = parts.dock().withLead(subject.lead(parts.dock().lead()));
        this.measuring = new Measuring(this.parts);
        this.subject = subject;
        this.tag = tag;
    }

    /** The whole band of the test point. */
    Message sweep(BooleanSupplier stopped, Runnable publish) {
        return play(0, Double.MAX_VALUE, stopped, publish);
    }

    /** The octave around where it was stopped. */
    Message around(BooleanSupplier stopped, Runnable publish) {
        return play(stoppedHz / AROUND, stoppedHz * AROUND, stopped, publish);
    }

    /** Whether there is a place to go back to. */
    boolean wasStopped() {
        return stoppedHz != null;
    }

    Optional<Double> share() {
        return Optional.ofNullable(share);
    }

    Reason prompt() {
        return Reason.of("bench-slow-at", Long.toString(Math.round(atHz)));
    }

    private Message play(double fromHz, double toHz, BooleanSupplier stopped, Runnable publish) {
        TestPoint point = subject.model().testPoints().get(index);
        SweepPlan plan = SweepPlans.slow(point, parts.rig().sampleRateHz(), fromHz, toHz);
        atHz = plan.signal().startHz();
        share = 0.0;
        publish.run();
        try {
            Optional<Message> not = refused(point, stopped);
            if (not.isPresent()) {
                return not.get();
            }
            parts.rig().play(plan, point.kind(), done -> {
                // A stop pressed between the probe and the first sample must not be missed.
                if (stopped.getAsBoolean()) {
                    parts.rig().stop();
                }
                progress(plan, done, publish);
            });
        } catch (RigException e) {
            return e.kind() == RigException.Cause.STOPPED
                    ? stopped(point)
                    : new Message(ReadingState.FAULT, e.reason());
        } finally {
            share = null;
        }
        return done(point, fromHz > 0);
    }

    /** Half the mask's voltage only into a load that looks as it should. */
    private Optional<Message> refused(TestPoint point, BooleanSupplier stopped) throws RigException {
        Outcome probe = measuring.probe(new Measuring.Order(
                tag, point, parts.gate().probe(point, parts.rig().sampleRateHz()), stopped, done -> {}));
        if (stopped.getAsBoolean()) {
            throw new RigException(RigException.Cause.STOPPED, Reason.of("dock-stopped"));
        }
        if (probe instanceof Outcome.Failed failed) {
            return Optional.of(new Message(ReadingState.WATCH, failed.reason()));
        }
        SweepAnalysis.Load load = ((Outcome.Probed) probe).analysis().load();
        if (point.kind() == TestPointKind.LINE_INPUT || load == SweepAnalysis.Load.PRESENT) {
            return Optional.empty();
        }
        return Optional.of(new Message(
                ReadingState.WATCH,
                load == SweepAnalysis.Load.OPEN
                        ? subject.nothingConnected(tag, point.contacts())
                        : Reason.of("bench-slow-load", point.contacts())));
    }

    private void progress(SweepPlan plan, double done, Runnable publish) {
        double seconds = done * plan.totalFrames() / plan.signal().sampleRateHz() - plan.preRollS();
        atHz = plan.signal().frequencyHzAt(Math.max(0, Math.min(plan.signal().durationS(), seconds)));
        if (done - share >= PROGRESS_STEP) {
            share = done;
            publish.run();
        }
    }

    private Message stopped(TestPoint point) {
        stoppedHz = atHz;
        return new Message(
                ReadingState.OK, Reason.of("bench-slow-stopped", point.contacts(), Long.toString(Math.round(atHz))));
    }

    /** A whole sweep that nobody stopped goes on with the next test point. */
    private Message done(TestPoint point, boolean part) {
        List<TestPoint> points = subject.model().testPoints();
        if (part || points.size() == 1) {
            return new Message(ReadingState.OK, Reason.of("bench-slow-done", point.contacts()));
        }
        stoppedHz = null;
        index = (index + 1) % points.size();
        return new Message(
                ReadingState.OK,
                Reason.of("bench-slow-next", point.contacts(), points.get(index).contacts()));
    }
}
