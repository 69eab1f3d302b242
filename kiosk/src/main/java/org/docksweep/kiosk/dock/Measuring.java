package org.docksweep.kiosk.dock;

import java.io.IOException;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.JudgeRequest.PointCapture;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;

/** Plays, captures, keeps and judges. Blocking: runs on a rig's thread only, and knows no state of dock or bench. */
public final class Measuring {
    private final DockParts parts;

    /**
     * Measures with what the dock works with.
     *
     * @param parts rig, lead, gate, recordings
     */
    public Measuring(DockParts parts) {
        this.parts = parts;
    }

    /**
     * One thing to play.
     *
     * @param tag label of the cabinet
     * @param point test point
     * @param plan what to play
     * @param stopped whether somebody pressed stop since this was ordered
     * @param progress hears of progress, 0 to 1
     */
    public record Order(
            AssetTag tag, TestPoint point, SweepPlan plan, BooleanSupplier stopped, DoubleConsumer progress) {}

    /** What came of it. */
    public sealed interface Outcome {
        /**
         * A probe was captured.
         *
         * @param analysis what it says
         */
        record Probed(SweepAnalysis analysis) implements Outcome {}

        /**
         * A sweep was captured, kept and is ready for judgement.
         *
         * @param capture the capture
         * @param sha256 content hash of its recording
         */
        record Captured(Capture capture, String sha256) implements Outcome {}

        /**
         * Nothing was captured.
         *
         * @param reason why
         * @param stopped whether somebody pressed stop
         */
        record Failed(Reason reason, boolean stopped) implements Outcome {}
    }

    /**
     * Plays the quiet probe.
     *
     * @param order what to play
     * @return what it says, or why there is nothing
     */
    public Outcome probe(Order order) {
        try {
            if (!order.stopped().getAsBoolean()) {
                parts.lead().plug(order.tag(), order.point().code());
            }
            return new Outcome.Probed(parts.gate().analyse(play(order)));
        } catch (RigException e) {
            return failed(e);
        } catch (IllegalArgumentException e) {
            return new Outcome.Failed(Reason.of("dock-rig-refused", String.valueOf(e.getMessage())), false);
        }
    }

    /**
     * Plays the sweep and keeps its recording.
     *
     * @param order what to play
     * @return the capture, or why there is none
     */
    public Outcome sweep(Order order) {
        try {
            Capture capture = play(order);
            return new Outcome.Captured(capture, parts.recordings().keep(capture));
        } catch (RigException e) {
            return failed(e);
        } catch (IOException e) {
            return new Outcome.Failed(Reason.of("dock-recording-not-kept", String.valueOf(e.getMessage())), false);
        } catch (IllegalArgumentException e) {
            return new Outcome.Failed(Reason.of("dock-rig-refused", String.valueOf(e.getMessage())), false);
        }
    }

    CabinetJudgement judge(LocalFleet fleet, Draft draft, List<PointCapture> captures, RigStanding standing) {
        return parts.gate()
                .judge(new JudgeRequest(
                        fleet.snapshot().book(),
                        draft.model,
                        captures,
                        standing.correction(),
                        fleet.references(),
                        fleet.baselinesOf(draft.cabinet.tag()),
                        fleet.snapshot().limits(),
                        fleet.snapshot().priorsInForce(),
                        standing.repeatability(),
                        standing.microphoneDoubt()));
    }

    private Capture play(Order order) throws RigException {
        if (order.stopped().getAsBoolean()) {
            throw stopped();
        }
        return parts.rig().play(order.plan(), order.point().kind(), share -> {
            // A stop pressed between the check above and the first sample must not be missed.
            if (order.stopped().getAsBoolean()) {
                parts.rig().stop();
            }
            order.progress().accept(share);
        });
    }

    private static RigException stopped() {
        return new RigException(RigException.Cause.STOPPED, Reason.of("dock-stopped"));
    }

    private static Outcome failed(RigException e) {
        boolean stopped = e.kind() == RigException.Cause.STOPPED;
        return new Outcome.Failed(stopped ? Reason.of("dock-stopped") : e.reason(), stopped);
    }
}
