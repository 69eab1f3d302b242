package org.docksweep.kiosk.bench;

import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.BooleanSupplier;
import java.util.function.DoubleConsumer;
import org.docksweep.contract.MeasurementBody;
import org.docksweep.contract.OrderedId;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.JudgeRequest.PointCapture;
import org.docksweep.kiosk.dock.DockParts;
import org.docksweep.kiosk.dock.Measuring;
import org.docksweep.kiosk.dock.Measuring.Outcome;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.listening.Listening;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;

/**
 * One sweep of the bench proof over all test points of its subject, point by point. Blocking; lives on the bench's thread.
 */
final class ProofRun {
    private final DockParts parts;
    private final Measuring measuring;
    private final LocalFleet fleet;
    private final AssetTag tag;
    private final ProofSubject subject;
    private final List<PointCapture> captures = new ArrayList<>();
    private final List<String> recordings = new ArrayList<>();

    /**
     * Begins a sweep.
     *
     * @param parts what is measured with
     * @param fleet fleet as known now
     * @param tag cabinet
     * @param subject what of it
     */
    ProofRun(DockParts parts, LocalFleet fleet, AssetTag tag, ProofSubject subject) {
        this.parts = parts.withLead(subject.lead(parts.lead()));
        this.measuring = new Measuring(this.parts);
        this.fleet = fleet;
        this.tag = tag;
        this.subject = subject;
    }

    /** What became of a test point. */
    sealed interface Result {
        /** It was swept; the next one may follow. */
        record Swept() implements Result {}

        /**
         * It was not.
         *
         * @param reason why
         */
        record Not(Reason reason) implements Result {}
    }

    boolean complete() {
        return captures.size() == subject.model().testPoints().size();
    }

    /** The test point to plug in and sweep next. */
    TestPoint next() {
        return subject.model().testPoints().get(captures.size());
    }

    Result sweepNext(BooleanSupplier stopped, DoubleConsumer progress) {
        TestPoint point = next();
        int sampleRateHz = parts.rig().sampleRateHz();
        Outcome probe = measuring.probe(
                new Measuring.Order(tag, point, parts.gate().probe(point, sampleRateHz), stopped, share -> {}));
        if (probe instanceof Outcome.Failed failed) {
            return new Result.Not(failed.reason());
        }
        SweepAnalysis analysis = ((Outcome.Probed) probe).analysis();
        if (analysis.load() == SweepAnalysis.Load.OPEN && point.kind() != TestPointKind.LINE_INPUT) {
            return new Result.Not(subject.nothingConnected(tag, point.contacts()));
        }
        boolean ordinary = analysis.load() == SweepAnalysis.Load.PRESENT || point.kind() == TestPointKind.LINE_INPUT;
        SweepPlan plan = ordinary
                ? parts.gate().sweep(point, sampleRateHz)
                : parts.gate().quietSweep(point, sampleRateHz);
        Outcome sweep = measuring.sweep(new Measuring.Order(tag, point, plan, stopped, progress));
        if (sweep instanceof Outcome.Captured captured) {
            captures.add(new PointCapture(point.code(), captured.capture()));
            recordings.add(captured.sha256());
            return new Result.Swept();
        }
        return new Result.Not(((Outcome.Failed) sweep).reason());
    }

    CabinetJudgement judge() {
        RigStanding standing = parts.standing().get();
        return parts.gate()
                .judge(new JudgeRequest(
                        subject.book(),
                        subject.model(),
                        captures,
                        standing.correction(),
                        subject.references(),
                        subject.baselines(),
                        fleet.snapshot().limits(),
                        fleet.snapshot().priorsInForce(),
                        standing.repeatability(),
                        standing.microphoneDoubt()));
    }

    /** The sweep of the test point at which there is most to hear. */
    Listening.Sweep loudest(CabinetJudgement judgement) {
        String code = judgement.points().stream()
                .max(Comparator.comparingDouble(BenchEar::tells))
                .orElseThrow()
                .testPointCode();
        PointCapture taken = captures.stream()
                .filter(c -> c.testPointCode().equals(code))
                .findFirst()
                .orElseThrow();
        return new Listening.Sweep(tag, code, taken.capture());
    }

    List<MeasurementBody> measurements(CabinetJudgement judgement) {
        List<MeasurementBody> measurements = new ArrayList<>();
        for (int i = 0; i < captures.size(); i++) {
            PointCapture taken = captures.get(i);
            var header = taken.capture().header();
            measurements.add(new MeasurementBody(
                    OrderedId.next(),
                    header.capturedAt().truncatedTo(ChronoUnit.MICROS),
                    1,
                    recordings.get(i),
                    header.ambientCelsius(),
                    judgement.points().stream()
                            .filter(p -> p.testPointCode().equals(taken.testPointCode()))
                            .findFirst()
                            .orElseThrow(() -> new IllegalStateException(
                                    "the gate gave no judgement of test point " + taken.testPointCode()))));
        }
        return measurements;
    }
}
