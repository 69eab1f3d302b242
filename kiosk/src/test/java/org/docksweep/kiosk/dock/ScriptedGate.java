package org.docksweep.kiosk.dock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Function;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.QualityIssue;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;

/** A gate that answers only what the test wrote down, in that order; anything more is an error. */
final class ScriptedGate implements Gate {
    static final Reason GOOD = Reason.of("dock-scan-read", "nothing out of limits");
    static final Reason BROKEN = Reason.of("dock-scan-read", "HF open");
    static final Reason SPOILED = Reason.of("dock-scan-read", "hall too loud");
    static final Reason DOUBT = Reason.of("dock-scan-read", "in doubt");

    final Queue<SweepAnalysis> probes = new ConcurrentLinkedQueue<>();
    final Queue<Function<JudgeRequest, CabinetJudgement>> judgements = new ConcurrentLinkedQueue<>();
    final List<JudgeRequest> asked = new CopyOnWriteArrayList<>();
    final Queue<String> plans = new ConcurrentLinkedQueue<>();

    ScriptedGate probe(SweepAnalysis.Load load, QualityIssue... issues) {
        List<SweepAnalysis.Issue> list = Arrays.stream(issues)
                .map(i -> new SweepAnalysis.Issue(i, Reason.of("dock-scan-read", i.name())))
                .toList();
        probes.add(new SweepAnalysis(null, null, load, 0.1, 0.01, List.of(), list));
        return this;
    }

    ScriptedGate judge(Verdict verdict, Prompt prompt, Reason reason) {
        judgements.add(request -> judgement(request, verdict, prompt, reason));
        return this;
    }

    ScriptedGate pass() {
        return probe(SweepAnalysis.Load.PRESENT).judge(Verdict.PASS, Prompt.NONE, GOOD);
    }

    /** A pass whose curve told the contact of the plug. */
    ScriptedGate passWithContact(double ohm) {
        probe(SweepAnalysis.Load.PRESENT);
        judgements.add(request -> judgement(request, Verdict.PASS, Prompt.NONE, GOOD, ohm));
        return this;
    }

    /** A failure whose likeliest cause is the contact of the plug. */
    ScriptedGate failByContact() {
        probe(SweepAnalysis.Load.PRESENT);
        judgements.add(request -> byContact(judgement(request, Verdict.FAIL, Prompt.NONE, BROKEN)));
        return this;
    }

    private static CabinetJudgement byContact(CabinetJudgement j) {
        Suspect plug = new Suspect(
                FaultKind.CONTACT_RESISTANCE, j.points().get(0).testPointCode(), null, null, 0.9, BROKEN, BROKEN);
        return new CabinetJudgement(
                j.verdict(),
                j.prompt(),
                j.watch(),
                j.reason(),
                j.points(),
                j.positions(),
                List.of(plug),
                j.judgeVersion(),
                j.limitsVersion());
    }

    ScriptedGate fail() {
        return probe(SweepAnalysis.Load.PRESENT).judge(Verdict.FAIL, Prompt.NONE, BROKEN);
    }

    private static CabinetJudgement judgement(JudgeRequest request, Verdict verdict, Prompt prompt, Reason reason) {
        return judgement(request, verdict, prompt, reason, null);
    }

    private static CabinetJudgement judgement(
            JudgeRequest request, Verdict verdict, Prompt prompt, Reason reason, Double contactOhm) {
        String newest = request.captures().get(request.captures().size() - 1).testPointCode();
        List<Suspect> suspects = verdict == Verdict.FAIL
                ? List.of(new Suspect(FaultKind.DRIVER_OPEN, newest, lastPosition(request), null, 1, BROKEN, BROKEN))
                : List.of();
        List<PointJudgement> points = new ArrayList<>();
        for (JudgeRequest.PointCapture capture : request.captures()) {
            points.add(new PointJudgement(
                    capture.testPointCode(),
                    verdict,
                    prompt,
                    reason,
                    new ImpedanceCurve(new double[] {100, 1000}, new double[] {8, 8}, new double[2], new double[2]),
                    null,
                    contactOhm == null ? List.of() : List.of(contact(capture.testPointCode(), contactOhm)),
                    List.of(),
                    suspects));
        }
        List<PositionState> positions = request.model().positions().stream()
                .map(p -> new PositionState(p.code(), ReadingState.OK, reason, null))
                .toList();
        return new CabinetJudgement(verdict, prompt, false, reason, points, positions, suspects, "test", 1);
    }

    private static String lastPosition(JudgeRequest request) {
        List<DriverPosition> positions = request.model().positions();
        return positions.get(positions.size() - 1).code();
    }

    private static Reading contact(String point, double ohm) {
        return new Reading(ReadingKind.PLUG_CONTACT, point, null, ohm, 0.02, 0.06, null, null, ReadingState.OK);
    }

    @Override
    public SweepPlan probe(TestPoint point, int sampleRateHz) {
        return plan("probe", point, sampleRateHz, 0.1);
    }

    @Override
    public SweepPlan sweep(TestPoint point, int sampleRateHz) {
        return plan("sweep", point, sampleRateHz, 1);
    }

    @Override
    public SweepPlan quietSweep(TestPoint point, int sampleRateHz) {
        return plan("quiet", point, sampleRateHz, 0.1);
    }

    private SweepPlan plan(String what, TestPoint point, int sampleRateHz, double voltageVrms) {
        plans.add(what + " " + point.code());
        LevelMask mask =
                new LevelMask(List.of(new LevelMask.Point(100, voltageVrms), new LevelMask.Point(1000, voltageVrms)));
        return new SweepPlan(SweepSignal.synchronised(100, 1000, 0.05, sampleRateHz, mask), 0, 0, 1);
    }

    @Override
    public SweepAnalysis analyse(Capture probe) {
        return next(probes, "probe");
    }

    @Override
    public CabinetJudgement judge(JudgeRequest request) {
        asked.add(request);
        return next(judgements, "judgement").apply(request);
    }

    private static <T> T next(Queue<T> script, String what) {
        T next = script.poll();
        if (next == null) {
            throw new IllegalStateException("the test scripted no further " + what);
        }
        return next;
    }

    void assertAllUsed() {
        if (!probes.isEmpty() || !judgements.isEmpty()) {
            throw new AssertionError(
                    probes.size() + " probes and " + judgements.size() + " judgements of the script were never asked");
        }
    }
}
