package org.docksweep.kiosk.proving;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.docksweep.contract.ProvingFault;
import org.docksweep.contract.ProvingGround;
import org.docksweep.contract.ProvingRig;
import org.docksweep.contract.ProvingUnit;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.Judge;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.JudgeRequest.PointCapture;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.RealGate;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.RecordingException;
import org.docksweep.sweep.RecordingFiles;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.WavFormat;

/** Takes returns through sweep, calibration and judgement. One per thread: it has a rig of its own. */
final class ReturnJudge implements AutoCloseable {
    private static final AssetTag TAG = new AssetTag("PROVE-0001");
    /** A spoiled measurement is repeated so often, then a person decides. */
    private static final int REPEATS = 2;

    private static final double QUIET_HALL_DB = 35;

    private final ProvingGround ground;
    private final ProvingHouse house;
    private final AmbiguityGroups groups;
    private final ProvingRig rig;
    private final RealGate gate = new RealGate();

    ReturnJudge(ProvingGround ground, ProvingHouse house, AmbiguityGroups groups, ProvingOptions options) {
        this.ground = ground;
        this.house = house;
        this.groups = groups;
        this.rig = ground.rig(options.seed(), options.converterNoiseDb());
    }

    /** A judgement and what it took. */
    private record Judged(
            CabinetJudgement judgement, JudgeRequest request, Prompt asked, int sweeps, boolean spoiled) {}

    Outcome take(ReturnCase dealt) throws RigException, RecordingException {
        long started = threadNs();
        CabinetModel model = house.book().cabinetModel(dealt.labelModel());
        List<Baseline> baselines = dealt.knowing() == Knowing.BASELINE ? baselines(dealt, model) : List.of();
        String occasion = "return-" + dealt.index();
        Judged judged = judge(occasion, dealt, dealt.unit(), model, baselines);
        CabinetJudgement judgement = judged.judgement();
        boolean inQuietToo = dealt.healthy()
                && judgement.verdict() == Verdict.FAIL
                && judge(occasion, dealt, quiet(dealt.unit()), model, baselines)
                                .judgement()
                                .verdict()
                        == Verdict.FAIL;
        Boolean agrees = dealt.recorded() ? recordingAgrees(judged) : null;
        List<Suspect> suspects = judgement.suspects();
        return new Outcome(
                dealt,
                judgement.verdict(),
                judgement.prompt(),
                judged.asked() == Prompt.NONE ? judgement.prompt() : judged.asked(),
                judgement.watch(),
                judged.sweeps(),
                judged.spoiled(),
                inQuietToo,
                rightPosition(model, dealt.fault(), suspects),
                naming(dealt, suspects),
                suspects.isEmpty() ? "" : words(suspects.get(0)),
                plain(dealt, judgement),
                agrees,
                (threadNs() - started) / 1e9);
    }

    private static long threadNs() {
        return ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
    }

    private List<Baseline> baselines(ReturnCase dealt, CabinetModel model) throws RigException {
        List<Baseline> baselines = new ArrayList<>();
        for (TestPoint point : model.testPoints()) {
            Measured before =
                    Measured.clean(rig, house.calibration(), "before-" + dealt.index(), dealt.before(), point);
            baselines.add(new Baseline(
                    TAG,
                    point.code(),
                    before.capture().header().capturedAt(),
                    before.ambientCelsius(),
                    before.impedance(),
                    before.acoustic()));
        }
        return baselines;
    }

    private static ProvingUnit quiet(ProvingUnit unit) {
        ProvingUnit.Climate c = unit.climate();
        return new ProvingUnit(
                unit.modelCode(),
                unit.unitSeed(),
                unit.ageYears(),
                unit.fault(),
                unit.severity(),
                new ProvingUnit.Climate(c.coilCelsius(), c.insideCelsius(), c.ambientCelsius(), QUIET_HALL_DB));
    }

    private Judged judge(
            String occasion, ReturnCase dealt, ProvingUnit unit, CabinetModel model, List<Baseline> baselines)
            throws RigException {
        List<PointReference> taught = house.teachings().get(dealt.teaching()).references();
        List<PointReference> references = taught.stream()
                .filter(r -> !dealt.untaught() || !r.cabinetModelCode().equals(model.code()))
                .toList();
        List<PointCapture> captures = new ArrayList<>();
        int sweeps = 0;
        Prompt asked = Prompt.NONE;
        Map<String, Boolean> full = new HashMap<>();
        for (TestPoint point : model.testPoints()) {
            Probe.Answer probed = Probe.of(rig, gate, house, taught, model, point, occasion, unit);
            asked = asked == Prompt.NONE ? probed.prompt() : asked;
            full.put(point.code(), probed.fullLevel());
            captures.add(swept(occasion, unit, point, probed.fullLevel()));
            sweeps++;
        }
        JudgeRequest request = request(model, captures, references, baselines);
        CabinetJudgement judgement = Judge.judge(request);
        boolean spoiled = judgement.prompt() == Prompt.SWEEP_AGAIN;
        for (int repeat = 0; repeat < REPEATS && judgement.prompt() == Prompt.SWEEP_AGAIN; repeat++) {
            for (int i = 0; i < captures.size(); i++) {
                if (judgement.points().get(i).prompt() == Prompt.SWEEP_AGAIN) {
                    TestPoint point = model.testPoint(captures.get(i).testPointCode());
                    captures.set(i, swept(occasion, unit, point, full.get(point.code())));
                    sweeps++;
                }
            }
            request = request(model, captures, references, baselines);
            judgement = Judge.judge(request);
        }
        return new Judged(judgement, request, asked, sweeps, spoiled);
    }

    private PointCapture swept(String occasion, ProvingUnit unit, TestPoint point, boolean fullLevel)
            throws RigException {
        rig.plug(occasion, unit, point.code());
        SweepPlan plan = fullLevel ? gate.sweep(point, rig.sampleRateHz()) : gate.quietSweep(point, rig.sampleRateHz());
        Capture capture = rig.play(plan, point.kind(), share -> {});
        return new PointCapture(point.code(), capture);
    }

    private JudgeRequest request(
            CabinetModel model,
            List<PointCapture> captures,
            List<PointReference> references,
            List<Baseline> baselines) {
        return new JudgeRequest(
                house.book(), model, captures, house.calibration()::correct, references, baselines, house.limits());
    }

    /** The way over a 24-bit recording must change nothing. */
    private static boolean recordingAgrees(Judged judged) throws RecordingException {
        JudgeRequest request = judged.request();
        List<PointCapture> read = new ArrayList<>();
        for (PointCapture point : request.captures()) {
            RecordingFiles.Encoded files = RecordingFiles.encode("return.wav", point.capture(), WavFormat.INT_24);
            Capture copy = RecordingFiles.decode("return.wav", files.wav(), "return.json", files.sidecar());
            if (!sameSamples(copy, point.capture())) {
                return false;
            }
            read.add(new PointCapture(point.testPointCode(), copy));
        }
        CabinetJudgement again = Judge.judge(new JudgeRequest(
                request.book(),
                request.model(),
                read,
                request.correction(),
                request.references(),
                request.baselines(),
                request.limits()));
        return again.verdict() == judged.judgement().verdict()
                && again.reason().equals(judged.judgement().reason())
                && again.suspects().equals(judged.judgement().suspects());
    }

    private static boolean sameSamples(Capture a, Capture b) {
        return a.frames() == b.frames()
                && a.header().channels().stream()
                        .allMatch(c -> sameSamples(a.fullScale(c.role()), b.fullScale(c.role())));
    }

    /** Equal as numbers: whole numbers know no negative zero. */
    private static boolean sameSamples(float[] a, float[] b) {
        for (int i = 0; i < a.length; i++) {
            if (a[i] != b[i]) {
                return false;
            }
        }
        return true;
    }

    /** Of two equal drivers in one box nobody can tell from outside which one; sent to either is sent rightly. */
    private static boolean rightPosition(CabinetModel model, ProvingFault fault, List<Suspect> suspects) {
        if (fault == null || suspects.isEmpty()) {
            return false;
        }
        Suspect first = suspects.get(0);
        String accused = first.positionCode();
        boolean sent = accused != null
                && fault.positionCodes().stream()
                        .anyMatch(right -> right.equals(accused)
                                || model.enclosureOf(right).positionCodes().contains(accused)
                                        && model.position(right)
                                                .driverModelCode()
                                                .equals(model.position(accused).driverModelCode()));
        return sent || FaultNames.says(first, fault);
    }

    private Outcome.Naming naming(ReturnCase dealt, List<Suspect> suspects) {
        if (dealt.fault() == null || suspects.isEmpty()) {
            return Outcome.Naming.NONE;
        }
        boolean[] exact = new boolean[2];
        boolean[] inGroup = new boolean[2];
        for (int i = 0; i < Math.min(2, suspects.size()); i++) {
            exact[i] = FaultNames.says(suspects.get(i), dealt.fault());
            inGroup[i] = exact[i] || groups.together(dealt.labelModel(), suspects.get(i), dealt.fault());
        }
        return new Outcome.Naming(exact[0], exact[0] || exact[1], inGroup[0], inGroup[0] || inGroup[1]);
    }

    private static String words(Suspect suspect) {
        String where = suspect.elementId() != null
                ? suspect.elementId()
                : suspect.positionCode() != null ? suspect.positionCode() : suspect.testPointCode();
        return suspect.kind() + " " + where;
    }

    private Outcome.Plain plain(ReturnCase dealt, CabinetJudgement judgement) {
        boolean applies = false;
        boolean meter = false;
        boolean mask = false;
        boolean stranger = !dealt.labelModel().equals(dealt.unit().modelCode());
        for (PointJudgement point : judgement.points()) {
            TestPoint asked = house.book().cabinetModel(dealt.labelModel()).testPoint(point.testPointCode());
            if (asked.kind() == TestPointKind.LINE_INPUT || stranger) {
                continue;
            }
            applies = true;
            PlainGates gates = house.teachings()
                    .get(dealt.teaching())
                    .plainGates()
                    .get(ProvingHouse.key(dealt.labelModel(), point.testPointCode()));
            meter |= gates.meterFails(PlainGates.meterOhm(ground, dealt.unit(), point.testPointCode()));
            boolean bare = point.impedance() == null && point.prompt() != Prompt.SWEEP_AGAIN;
            mask |= bare || point.impedance() != null && gates.maskFails(point.impedance());
        }
        return new Outcome.Plain(applies, meter, mask);
    }

    @Override
    public void close() {
        rig.close();
    }
}
