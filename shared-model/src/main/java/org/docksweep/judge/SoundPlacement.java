package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.docksweep.acoustic.PathChange;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.acoustic.WayBand;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.gate.Finding;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.SoundPrint;

/** Where cabinet and microphone stand, against where the cabinet's own baseline had them. */
final class SoundPlacement {
    private SoundPlacement() {}

    /** By how much the cabinet or the microphone is not where the cabinet's own baseline had it; empty where it is, or cannot be told. */
    static Optional<PathChange> displaced(
            JudgeRequest request, TestPoint point, AcousticCurve now, ExpectedSound sound, SoundEvidence evidence) {
        boolean own = request.baselines().stream()
                .anyMatch(b -> b.testPointCode().equals(point.code()) && b.acoustic() != null);
        if (!own || sound.curve().print() == null) {
            return Optional.empty();
        }
        List<WayBand> heard = evidence.ways().stream()
                .filter(w -> w.overNoiseDb() >= SoundEvidence.HEARD_DB)
                .map(SoundEvidence.Way::band)
                .toList();
        return PathChange.of(now, sound.curve(), heard)
                .filter(change -> change.displaced(sound.curve().print().arrivalS()));
    }

    /** The polarity is looked for around the place where the cabinet stands. */
    static AcousticCurve arrivedEarlier(AcousticCurve heard, double delayS) {
        SoundPrint p = heard.print();
        return heard.with(new SoundPrint(
                p.arrivalS() - delayS, p.phaseRad(), p.sweepPeakPa(), p.directDb(), p.bands(), p.event(), p.marks()));
    }

    /** Says with the answer where the cabinet stands. */
    static PointEvidence told(PointEvidence combined, TestPoint point, PathChange change) {
        PointJudgement j = combined.judgement();
        if (j.verdict() == Verdict.SWEEP_AGAIN) {
            return combined;
        }
        String side = change.metres() > 0 ? "farther" : "nearer";
        String centimetres = SoundTrouble.centimetres(change.metres());
        List<Finding> findings = new ArrayList<>(j.findings());
        findings.add(new Finding(
                ReadingState.WATCH,
                point.code(),
                null,
                null,
                null,
                null,
                Reason.of("sound-displaced-" + side, centimetres)));
        String key = j.reason().key();
        boolean plain = key.equals("verdict-pass") || key.equals("verdict-pass-powered");
        return combined.with(
                j.verdict(),
                j.prompt(),
                plain ? Reason.of(key + "-" + side, centimetres) : j.reason(),
                j.readings(),
                findings,
                j.suspects(),
                combined.faultProbability());
    }
}
