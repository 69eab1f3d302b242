package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.Way;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.Finding;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.SweepAnalysis;

/**
 * Judges a powered cabinet from line input to microphone: the level of each way against the cabinet's baseline or the
 * model's reference. The absolute level of the whole cabinet is not judged, since a gain knob moves it; the levels of the
 * ways against each other are.
 */
final class LineInputJudge {
    /** Bands in which a way speaks alone, by way; common practice, no source. */
    private static final Map<Way, double[]> TWO_WAY_BANDS =
            Map.of(Way.LF, new double[] {80, 800}, Way.HF, new double[] {3000, 12000});

    private static final Map<Way, double[]> THREE_WAY_BANDS = Map.of(
            Way.LF, new double[] {60, 250},
            Way.MF, new double[] {600, 1800},
            Way.HF, new double[] {5000, 12000});

    /** A way is heard when it stands this far above the noise. */
    private static final double HEARD_DB = 10;
    /** Gain knobs move a cabinet this far at most before it counts as silent. */
    private static final double SILENT_DB = 30;

    private static final double LEVEL_UNCERTAINTY_DB = 1;

    private final JudgeRequest request;
    private final TestPoint point;
    private final SweepAnalysis analysis;

    LineInputJudge(JudgeRequest request, TestPoint point, SweepAnalysis analysis) {
        this.request = request;
        this.point = point;
        this.analysis = analysis;
    }

    private record WayLevel(String position, Way way, double changeDb, double overNoiseDb, double[] band) {}

    PointEvidence judge() {
        if (!analysis.clean()) {
            return again(Prompt.SWEEP_AGAIN, analysis.firstIssue().orElseThrow().reason());
        }
        Expected expected = expected();
        if (analysis.acoustic() == null || expected == null) {
            return again(
                    Prompt.PERSON_DECIDES,
                    Reason.of(
                            analysis.acoustic() == null ? "judge-no-microphone" : "judge-no-reference",
                            request.model().name(),
                            point.contacts()));
        }
        List<WayLevel> levels = levels(expected);
        double loudest = levels.stream().mapToDouble(WayLevel::changeDb).max().orElse(0);
        if (levels.stream().allMatch(l -> l.overNoiseDb() < HEARD_DB)) {
            return again(
                    loudest < -SILENT_DB ? Prompt.PLUG_IN : Prompt.SWEEP_AGAIN,
                    loudest < -SILENT_DB ? Reason.of("judge-silent", point.contacts()) : Reason.of("judge-too-noisy"));
        }
        return verdict(levels, loudest);
    }

    private PointEvidence verdict(List<WayLevel> levels, double loudest) {
        double limitDb = request.limits().wayLevelLimitDb() - request.limits().guardFactor() * LEVEL_UNCERTAINTY_DB;
        List<Reading> readings = new ArrayList<>();
        List<Finding> findings = new ArrayList<>();
        List<Suspect> suspects = new ArrayList<>();
        for (WayLevel level : levels) {
            double relativeDb = level.changeDb() - loudest;
            boolean weak = relativeDb < -limitDb;
            readings.add(new Reading(
                    ReadingKind.WAY_LEVEL,
                    point.code(),
                    level.position(),
                    Rounding.significant(relativeDb),
                    LEVEL_UNCERTAINTY_DB,
                    0.0,
                    Rounding.significant(-limitDb),
                    null,
                    weak ? ReadingState.FAULT : ReadingState.OK));
            if (weak) {
                Reason reason = Reason.of(
                        "verdict-way-weak",
                        level.position(),
                        VerdictWords.wayWord(request.model(), level.position()),
                        Rounding.decibel(relativeDb));
                findings.add(new Finding(
                        ReadingState.FAULT,
                        point.code(),
                        level.way(),
                        level.position(),
                        level.band()[0],
                        level.band()[1],
                        reason));
                suspects.add(new Suspect(
                        FaultKind.WAY_WEAK,
                        point.code(),
                        level.position(),
                        null,
                        1,
                        Reason.of("suspect-way-weak", level.position(), Rounding.decibel(relativeDb)),
                        Reason.of("next-way-weak", level.position())));
            }
        }
        boolean fails = !findings.isEmpty();
        Reason reason = fails ? findings.get(0).reason() : Reason.of("verdict-pass-powered");
        return new PointEvidence(
                new PointJudgement(
                        point.code(),
                        fails ? Verdict.FAIL : Verdict.PASS,
                        Prompt.NONE,
                        reason,
                        null,
                        analysis.acoustic(),
                        readings,
                        findings,
                        shares(suspects)),
                analysis.load(),
                fails ? 1 : 0);
    }

    private static List<Suspect> shares(List<Suspect> suspects) {
        return suspects.stream()
                .map(s -> new Suspect(
                        s.kind(),
                        s.testPointCode(),
                        s.positionCode(),
                        s.elementId(),
                        1.0 / suspects.size(),
                        s.evidence(),
                        s.nextStep()))
                .toList();
    }

    private record Expected(double[] frequencyHz, double[] levelDb) {}

    private Expected expected() {
        Optional<Baseline> own = request.baselines().stream()
                .filter(b -> b.testPointCode().equals(point.code()) && b.acoustic() != null)
                .findFirst();
        if (own.isPresent()) {
            AcousticCurve curve = own.get().acoustic();
            return new Expected(curve.frequencyHz(), curve.levelDb());
        }
        return request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code())
                        && r.acousticFrequencyHz().length > 0)
                .findFirst()
                .map(PointReference::acousticFrequencyHz)
                .map(grid -> new Expected(grid, referenceLevels()))
                .orElse(null);
    }

    private double[] referenceLevels() {
        return request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code()))
                .findFirst()
                .orElseThrow()
                .meanLevelDb();
    }

    private List<WayLevel> levels(Expected expected) {
        boolean three = point.positionCodes().stream()
                .anyMatch(p -> request.model().position(p).way() == Way.MF);
        Map<Way, double[]> bands = three ? THREE_WAY_BANDS : TWO_WAY_BANDS;
        TreeMap<Way, String> firstOfWay = new TreeMap<>();
        point.positionCodes()
                .forEach(p -> firstOfWay.putIfAbsent(request.model().position(p).way(), p));
        List<WayLevel> levels = new ArrayList<>();
        firstOfWay.forEach((way, position) -> levels.add(level(way, position, bands.get(way), expected)));
        return levels;
    }

    private WayLevel level(Way way, String position, double[] band, Expected expected) {
        AcousticCurve curve = analysis.acoustic();
        double[] grid = curve.frequencyHz();
        double change = 0;
        double over = 0;
        int count = 0;
        for (int i = 0; i < grid.length; i++) {
            if (grid[i] < band[0] || grid[i] > band[1]) {
                continue;
            }
            int at = java.util.Arrays.binarySearch(expected.frequencyHz(), grid[i]);
            if (at >= 0) {
                change += curve.levelDb()[i] - expected.levelDb()[at];
                over += curve.levelDb()[i] - curve.noiseDb()[i];
                count++;
            }
        }
        if (count == 0) {
            throw new IllegalStateException("no common frequencies of the sweep and the expected level between "
                    + band[0] + " and " + band[1] + " Hz at " + point.code() + " of "
                    + request.model().code());
        }
        return new WayLevel(position, way, change / count, over / count, band);
    }

    private PointEvidence again(Prompt prompt, Reason reason) {
        return new PointEvidence(
                new PointJudgement(
                        point.code(),
                        Verdict.SWEEP_AGAIN,
                        prompt,
                        reason,
                        null,
                        analysis.acoustic(),
                        List.of(),
                        List.of(),
                        List.of()),
                analysis.load(),
                0);
    }
}
