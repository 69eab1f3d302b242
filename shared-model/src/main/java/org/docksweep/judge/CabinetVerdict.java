package org.docksweep.judge;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverPosition;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Finding;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.SweepAnalysis;

/** Brings the test points of a cabinet together. */
final class CabinetVerdict {
    private final JudgeRequest request;
    private final List<PointEvidence> points;

    CabinetVerdict(JudgeRequest request, List<PointEvidence> points) {
        this.request = request;
        this.points = resolveOpen(request, points);
    }

    CabinetJudgement combine() {
        List<PointJudgement> judgements =
                points.stream().map(PointEvidence::judgement).toList();
        PointJudgement deciding = deciding(judgements);
        boolean watch = deciding.verdict() == Verdict.PASS
                && points.stream()
                        .anyMatch(p -> p.faultProbability() >= request.limits().watchProbability());
        List<Suspect> suspects = deciding.verdict() == Verdict.FAIL ? suspects(judgements) : List.of();
        return new CabinetJudgement(
                deciding.verdict(),
                deciding.prompt(),
                watch,
                deciding.reason(),
                judgements,
                positions(judgements, suspects),
                suspects,
                Judge.VERSION,
                request.limits().version());
    }

    /**
     * A point that looks open while another point of the same cabinet shows a load, measured and good, is an open driver
     * and not a forgotten plug.
     */
    private static List<PointEvidence> resolveOpen(JudgeRequest request, List<PointEvidence> points) {
        boolean plugged = points.stream()
                .anyMatch(p -> p.load() == SweepAnalysis.Load.PRESENT
                        && (p.judgement().verdict() == Verdict.PASS
                                || p.judgement().verdict() == Verdict.FAIL));
        return points.stream()
                .map(p -> plugged && p.load() == SweepAnalysis.Load.OPEN ? openDriver(request.model(), p) : p)
                .toList();
    }

    private static PointEvidence openDriver(CabinetModel model, PointEvidence open) {
        TestPoint point = model.testPoint(open.judgement().testPointCode());
        List<Suspect> suspects = point.positionCodes().stream()
                .map(position -> new Suspect(
                        FaultKind.DRIVER_OPEN,
                        point.code(),
                        position,
                        null,
                        1.0 / point.positionCodes().size(),
                        Reason.of("suspect-driver-open", position, ""),
                        Reason.of("next-driver-open", position)))
                .toList();
        String position = point.positionCodes().get(0);
        Reason reason = Reason.of("verdict-driver-open", position, VerdictWords.wayWord(model, position), "");
        PointJudgement old = open.judgement();
        return new PointEvidence(
                new PointJudgement(
                        point.code(),
                        Verdict.FAIL,
                        Prompt.NONE,
                        reason,
                        old.impedance(),
                        old.acoustic(),
                        old.readings(),
                        List.of(new Finding(
                                ReadingState.FAULT,
                                point.code(),
                                model.position(position).way(),
                                position,
                                null,
                                null,
                                reason)),
                        suspects),
                open.load(),
                1);
    }

    /**
     * A label that is not the cabinet's outweighs all: under it, nothing that was found is a fault. A fault outweighs a spoiled sweep of
     * another point; a spoiled sweep outweighs a pass.
     */
    private static PointJudgement deciding(List<PointJudgement> judgements) {
        return judgements.stream()
                .min(Comparator.comparingInt(j -> switch (j.verdict()) {
                    case FAIL -> 1;
                    case SWEEP_AGAIN -> j.prompt() == Prompt.CHECK_LABEL ? 0 : 2;
                    case PASS -> j.reason().key().equals("verdict-pass-watch") ? 3 : 4;
                }))
                .orElseThrow();
    }

    /** Points by their first suspect; within a point the order of its groups stays. */
    private static List<Suspect> suspects(List<PointJudgement> judgements) {
        return judgements.stream()
                .filter(j -> !j.suspects().isEmpty())
                .sorted(Comparator.comparingDouble(j -> -j.suspects().get(0).probability()))
                .flatMap(j -> j.suspects().stream())
                .toList();
    }

    private List<PositionState> positions(List<PointJudgement> judgements, List<Suspect> suspects) {
        Map<String, Reason> accused = new HashMap<>();
        for (PointJudgement judgement : judgements) {
            if (judgement.verdict() == Verdict.FAIL && !judgement.suspects().isEmpty()) {
                accuse(accused, judgement);
            }
        }
        return request.model().positions().stream()
                .map(position -> state(position, judgements, accused.get(position.code())))
                .toList();
    }

    private void accuse(Map<String, Reason> accused, PointJudgement judgement) {
        Suspect first = judgement.suspects().get(0);
        List<String> behind =
                request.model().testPoint(judgement.testPointCode()).positionCodes();
        if (first.positionCode() != null) {
            Suspect twin = VerdictWords.twin(first, judgement.suspects());
            if (twin == null) {
                accused.put(first.positionCode(), word(first));
            } else {
                // One of the two is at fault; neither may be called so by itself.
                accused.put(first.positionCode(), Reason.of("word-either", twin.positionCode()));
                accused.put(twin.positionCode(), Reason.of("word-either", first.positionCode()));
            }
        } else if (behind.size() == 1) {
            // Whatever it is, there is only one driver behind these contacts to be looked at.
            accused.put(behind.get(0), word(first));
        }
    }

    private static Reason word(Suspect suspect) {
        return Reason.of("word-"
                + suspect.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', '-'));
    }

    private PositionState state(DriverPosition position, List<PointJudgement> judgements, Reason fault) {
        Optional<PointJudgement> judgement = judgements.stream()
                .filter(j -> request.model()
                        .testPoint(j.testPointCode())
                        .positionCodes()
                        .contains(position.code()))
                .findFirst();
        if (fault != null) {
            return new PositionState(position.code(), ReadingState.FAULT, fault, null);
        }
        boolean judged = judgement.isPresent() && saysSomethingOf(position, judgement.get());
        if (!judged) {
            return new PositionState(position.code(), ReadingState.NOT_JUDGED, Reason.of("word-not-judged"), null);
        }
        boolean watch = judgement.get().reason().key().equals("verdict-pass-watch");
        return new PositionState(
                position.code(),
                watch ? ReadingState.WATCH : ReadingState.OK,
                Reason.of(watch ? "word-watch" : "word-ok"),
                headline(position.code(), judgement.get().readings()));
    }

    /** A spoiled point, or one that failed without a curve (a short), says nothing good of any driver behind it. */
    private static boolean saysSomethingOf(DriverPosition position, PointJudgement judgement) {
        return switch (judgement.verdict()) {
            case PASS -> true;
            case SWEEP_AGAIN -> false;
            case FAIL ->
                judgement.impedance() != null
                        || judgement.readings().stream()
                                .anyMatch(r -> position.code().equals(r.positionCode()));
        };
    }

    private static String headline(String position, List<Reading> readings) {
        return readings.stream()
                .filter(r -> position.equals(r.positionCode()))
                .filter(r -> r.kind() == ReadingKind.DC_RESISTANCE_20C || r.kind() == ReadingKind.WAY_LEVEL)
                .map(r -> r.kind() == ReadingKind.WAY_LEVEL ? Rounding.decibel(r.value()) : Rounding.ohm(r.value()))
                .findFirst()
                .orElse(null);
    }
}
