package org.docksweep.judge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.docksweep.acoustic.PathChange;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.acoustic.WayBand;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.Way;
import org.docksweep.gate.Finding;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingState;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;

/**
 * Puts what the microphone heard beside what the current said. Both speak to the same list of explanations: each has its
 * prior weight, the likelihood of the curve and the likelihood of the sound. What only one of them can see, the other
 * leaves as it was. The sound alone never overrules a fault of the current, and noise of the hall is never a fault.
 */
final class SoundJudge {
    private static final double SHOWN = 0.01;
    private static final int SHOWN_AT_MOST = 6;
    private static final double PLACEMENT = 0.01;

    private final JudgeRequest request;
    private final TestPoint point;
    private final Capture capture;
    private final SweepAnalysis analysis;

    SoundJudge(JudgeRequest request, TestPoint point, Capture capture, SweepAnalysis analysis) {
        this.request = request;
        this.point = point;
        this.capture = capture;
        this.analysis = analysis;
    }

    /**
     * Brings the sound in.
     *
     * @param current what the current said; for a line input, that nothing speaks against judging the sound
     * @return the evidence of both
     */
    PointEvidence combine(PointEvidence current) {
        Optional<ExpectedSound> expected = ExpectedSound.of(request, point, impedance());
        if (request.microphoneDoubt().isPresent() && capture.has(ChannelRole.MICROPHONE)) {
            return UnprovedMicrophone.judged(
                    current, point, request.microphoneDoubt().get(), expected.isPresent());
        }
        boolean judged = current.judgement().verdict() != Verdict.SWEEP_AGAIN
                && (point.kind() == TestPointKind.LINE_INPUT || analysis.load() == SweepAnalysis.Load.PRESENT);
        if (expected.isEmpty() || !judged || !capture.has(ChannelRole.MICROPHONE)) {
            return current;
        }
        boolean failed = current.judgement().verdict() == Verdict.FAIL;
        if (analysis.acoustic() == null || analysis.acoustic().print() == null) {
            return failed ? current : again(current, List.of(), Reason.of("capture-dead-microphone"));
        }
        SoundEvidence atItsMark = evidence(analysis.acoustic(), expected.get());
        Optional<PathChange> displaced =
                SoundPlacement.displaced(request, point, analysis.acoustic(), expected.get(), atItsMark);
        ExpectedSound sound = displaced
                .map(change -> expected.get().displaced(request, point, change.metres()))
                .orElse(expected.get());
        SoundEvidence evidence = displaced
                .map(change -> evidence(SoundPlacement.arrivedEarlier(analysis.acoustic(), change.delayS()), sound))
                .orElse(atItsMark);
        SoundTrouble trouble = new SoundTrouble(point, sound, analysis.acoustic(), evidence, displaced);
        Optional<Reason> unusable = trouble.unusable();
        if (unusable.isPresent()) {
            return failed ? current : again(current, List.of(), unusable.get());
        }
        SoundHypotheses hypotheses = new SoundHypotheses(
                request.book(),
                request.model(),
                point,
                evidence,
                analysis.acoustic().print());
        List<SoundHypotheses.Weighed> heard = hypotheses.all();
        SoundReadings readings = new SoundReadings(point, sound, analysis.acoustic());
        PointEvidence combined = failed
                ? both(current, evidence, heard, readings)
                : heardAlone(current, evidence, heard, hypotheses, readings, trouble);
        return displaced
                .map(change -> SoundPlacement.told(combined, point, change))
                .orElse(combined);
    }

    private SoundEvidence evidence(AcousticCurve heard, ExpectedSound sound) {
        return new SoundEvidence(
                heard, sound.curve(), WayBand.of(request.model(), point), sound.wayErrorDb(), sound.sharedErrorDb());
    }

    private ImpedanceCurve impedance() {
        return analysis.impedance() == null ? null : request.correction().correct(analysis.impedance());
    }

    /** The current fails the cabinet; the sound may change the order of the suspects, and adds its own. */
    private PointEvidence both(
            PointEvidence current,
            SoundEvidence evidence,
            List<SoundHypotheses.Weighed> heard,
            SoundReadings readings) {
        PointJudgement judgement = current.judgement();
        List<SoundHypotheses.Weighed> all = new ArrayList<>();
        boolean named = true;
        for (Suspect suspect : judgement.suspects()) {
            named &= suspect.kind() != FaultKind.UNKNOWN && suspect.kind() != FaultKind.INTERMITTENT_CONTACT;
            double log = StrictMath.log(Math.max(1e-9, suspect.probability())) + likelihood(evidence, suspect);
            all.add(new SoundHypotheses.Weighed(suspect, log));
        }
        List<Suspect> ranked = named && !all.isEmpty() ? shares(all, Double.NEGATIVE_INFINITY) : judgement.suspects();
        boolean touching = evidence.touching() > 0;
        List<Finding> findings = new ArrayList<>(judgement.findings());
        heard.stream()
                .filter(w -> touching && w.suspect().kind() == FaultKind.LOOSE_PART)
                .forEach(w -> findings.add(finding(w.suspect(), w.suspect().evidence())));
        List<String> weak = evidence.ways().stream()
                .filter(w -> w.quietEnough() && w.changeDb() - evidence.sharedDb() < -6)
                .flatMap(w -> w.band().positionCodes().stream())
                .toList();
        return current.with(
                judgement.verdict(),
                judgement.prompt(),
                judgement.reason(),
                joined(judgement.readings(), readings.of(evidence, weak, touching)),
                findings,
                ranked,
                current.faultProbability());
    }

    /** What a fault that the current names would do to the sound. */
    private static double likelihood(SoundEvidence evidence, Suspect suspect) {
        double healthy = evidence.levelsHealthy(2);
        if (suspect.positionCode() == null) {
            return healthy;
        }
        int way = 0;
        while (way < evidence.ways().size()
                && !evidence.ways().get(way).band().positionCodes().contains(suspect.positionCode())) {
            way++;
        }
        if (way == evidence.ways().size()) {
            return healthy;
        }
        boolean alone = evidence.ways().get(way).band().positionCodes().size() == 1;
        boolean silences = switch (suspect.kind()) {
            case DRIVER_OPEN, DRIVER_SHORTED, COIL_SEIZED -> alone;
            default -> false;
        };
        return silences ? evidence.levelsWith(way, 6) : Math.max(healthy, evidence.levelsWith(way, 0));
    }

    private PointEvidence heardAlone(
            PointEvidence current,
            SoundEvidence evidence,
            List<SoundHypotheses.Weighed> heard,
            SoundHypotheses hypotheses,
            SoundReadings readings,
            SoundTrouble trouble) {
        double electrical = Math.min(0.999, Math.max(0, current.faultProbability()));
        double shift = StrictMath.log((1 - electrical) / SoundHypotheses.HEALTHY);
        double healthy = StrictMath.log(1 - electrical) + evidence.levelsHealthy(1);
        double byCurrent =
                electrical > 0 ? StrictMath.log(electrical) + evidence.levelsHealthy(1) : Double.NEGATIVE_INFINITY;
        double moved = evidence.ways().size() > 1
                        && point.kind() != TestPointKind.LINE_INPUT
                        && hypotheses.all().stream().noneMatch(w -> w.suspect().kind() == FaultKind.WAY_REVERSED)
                ? StrictMath.log(PLACEMENT) + shift + evidence.levelsMoved()
                : Double.NEGATIVE_INFINITY;
        double faults = logSum(heard.stream().mapToDouble(w -> w.log() + shift).toArray());
        double all = logSum(new double[] {healthy, byCurrent, moved, faults});
        double probability = StrictMath.exp(logSum(new double[] {byCurrent, faults}) - all);
        List<Reading> fine = joined(current.judgement().readings(), readings.of(evidence, List.of(), false));
        if (StrictMath.exp(moved - all) > request.limits().failProbability()) {
            return again(current, fine, trouble.moved());
        }
        boolean likely = probability >= request.limits().failProbability();
        if (!likely && !hypotheses.overLimit(request.limits())) {
            double weak = StrictMath.exp(logSum(heard.stream()
                            .filter(w -> w.suspect().kind() == FaultKind.WAY_WEAK)
                            .mapToDouble(w -> w.log() + shift)
                            .toArray())
                    - all);
            // behind an amplifier the level is all that is known of a hard fault: what cannot exclude one is no pass
            return point.kind() == TestPointKind.LINE_INPUT
                            && weak >= request.limits().watchProbability()
                    ? unclear(current, evidence, hypotheses, fine)
                    : passed(current, fine, probability);
        }
        List<Suspect> suspects = shares(
                heard.stream()
                        .filter(w -> likely || w.suspect().kind() == FaultKind.WAY_WEAK)
                        .toList(),
                Double.NEGATIVE_INFINITY);
        Suspect first = suspects.get(0);
        Optional<Reason> placed = trouble.placed(first.kind());
        if (placed.isPresent()) {
            return again(current, fine, placed.get());
        }
        Reason reason = reason(first, hypotheses);
        List<String> weak = first.kind() == FaultKind.WAY_WEAK ? List.of(first.positionCode()) : List.of();
        return current.with(
                Verdict.FAIL,
                Prompt.NONE,
                reason,
                joined(current.judgement().readings(), readings.of(evidence, weak, evidence.touching() > 0)),
                List.of(finding(first, reason)),
                suspects,
                1);
    }

    /** Too near to a wrong part to pass, too near to a healthy cabinet to fail. */
    private PointEvidence unclear(
            PointEvidence current, SoundEvidence evidence, SoundHypotheses hypotheses, List<Reading> readings) {
        if (evidence.noiseHidesLevels()) {
            return again(current, readings, Reason.of("judge-too-noisy"));
        }
        int least = 0;
        for (int w = 1; w < evidence.ways().size(); w++) {
            least = hypotheses.shownDb(w) < hypotheses.shownDb(least) ? w : least;
        }
        String position = evidence.ways().get(least).band().positionCodes().get(0);
        Reason reason = Reason.of(
                "sound-levels-unclear",
                position,
                VerdictWords.wayWord(request.model(), position),
                Rounding.decibel(hypotheses.shownDb(least)));
        return current.with(Verdict.SWEEP_AGAIN, Prompt.PERSON_DECIDES, reason, readings, List.of(), List.of(), 0);
    }

    private PointEvidence passed(PointEvidence current, List<Reading> readings, double probability) {
        PointJudgement judgement = current.judgement();
        boolean watch = probability >= request.limits().watchProbability();
        Reason reason = watch && point.kind() != TestPointKind.LINE_INPUT
                ? Reason.of("verdict-pass-watch")
                : judgement.reason();
        return current.with(
                Verdict.PASS,
                Prompt.NONE,
                reason,
                readings,
                judgement.findings(),
                judgement.suspects(),
                Math.max(probability, current.faultProbability()));
    }

    private Reason reason(Suspect first, SoundHypotheses hypotheses) {
        String position = first.positionCode() == null ? "" : first.positionCode();
        String way = first.positionCode() == null ? "" : VerdictWords.wayWord(request.model(), position);
        var event = analysis.acoustic().print().event();
        return switch (first.kind()) {
            case WAY_WEAK ->
                Reason.of(
                        point.kind() == TestPointKind.LINE_INPUT ? "verdict-way-weak" : "verdict-way-weak-alone",
                        position,
                        way,
                        Rounding.decibel(hypotheses.shownDb(wayOf(position))));
            case WRONG_IMPEDANCE_PART ->
                Reason.of("verdict-way-loud", position, way, Rounding.decibel(hypotheses.shownDb(wayOf(position))));
            case WAY_REVERSED -> Reason.of("verdict-way-reversed", position, way);
            default -> Reason.of("verdict-touching", Rounding.hertz(Math.sqrt(event.fromHz() * event.toHz())));
        };
    }

    private int wayOf(String position) {
        List<WayBand> bands = WayBand.of(request.model(), point);
        for (int w = 0; w < bands.size(); w++) {
            if (bands.get(w).positionCodes().contains(position)) {
                return w;
            }
        }
        throw new IllegalStateException("position " + position + " is not behind " + point.code());
    }

    private Finding finding(Suspect suspect, Reason reason) {
        var event = analysis.acoustic().print().event();
        boolean touching = suspect.kind() == FaultKind.COIL_RUBS || suspect.kind() == FaultKind.LOOSE_PART;
        Way way = suspect.positionCode() == null
                ? null
                : request.model().position(suspect.positionCode()).way();
        WayBand band = touching || suspect.positionCode() == null
                ? null
                : WayBand.of(request.model(), point).get(wayOf(suspect.positionCode()));
        return new Finding(
                ReadingState.FAULT,
                point.code(),
                way,
                touching ? null : suspect.positionCode(),
                touching ? Double.valueOf(event.fromHz()) : band == null ? null : Double.valueOf(band.fromHz()),
                touching ? Double.valueOf(event.toHz()) : band == null ? null : Double.valueOf(band.toHz()),
                reason);
    }

    private static List<Suspect> shares(List<SoundHypotheses.Weighed> weighed, double alsoLog) {
        double[] logs =
                weighed.stream().mapToDouble(SoundHypotheses.Weighed::log).toArray();
        double all = Math.max(alsoLog, logSum(logs));
        return weighed.stream()
                .map(w -> withProbability(w.suspect(), Math.min(1, StrictMath.exp(w.log() - all))))
                .filter(s -> s.probability() >= SHOWN)
                .sorted(Comparator.comparingDouble(Suspect::probability).reversed())
                .limit(SHOWN_AT_MOST)
                .toList();
    }

    private static Suspect withProbability(Suspect s, double probability) {
        return s.withProbability(Math.rint(probability * 1e4) / 1e4);
    }

    private static double logSum(double[] logs) {
        double largest = Double.NEGATIVE_INFINITY;
        for (double log : logs) {
            largest = Math.max(largest, log);
        }
        if (largest == Double.NEGATIVE_INFINITY) {
            return largest;
        }
        double sum = 0;
        for (double log : logs) {
            sum += StrictMath.exp(log - largest);
        }
        return largest + StrictMath.log(sum);
    }

    private static List<Reading> joined(List<Reading> one, List<Reading> other) {
        List<Reading> all = new ArrayList<>(one);
        all.addAll(other);
        return all;
    }

    private PointEvidence again(PointEvidence current, List<Reading> readings, Reason reason) {
        List<Reading> kept = readings.isEmpty() ? current.judgement().readings() : readings;
        return current.with(Verdict.SWEEP_AGAIN, Prompt.SWEEP_AGAIN, reason, kept, List.of(), List.of(), 0);
    }
}
