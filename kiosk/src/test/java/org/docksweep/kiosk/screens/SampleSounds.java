package org.docksweep.kiosk.screens;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.judge.PositionState;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.CabinetAtHand;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.Suspect;

/** Answers that the microphone decided: the curve of the terminals is healthy in both. */
final class SampleSounds {
    private static final int POINTS = 240;

    private SampleSounds() {}

    /** The horn 6 dB too quiet. */
    static DockState weakHorn(DockState failed) {
        double[] hz = new double[POINTS];
        double[] heard = new double[POINTS];
        double[] low = new double[POINTS];
        double[] high = new double[POINTS];
        double[] before = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            hz[i] = 40 * Math.pow(500, i / (POINTS - 1.0));
            double healthy = -9 - 14 / (1 + Math.pow(hz[i] / 62, 4)) - Math.pow(hz[i] / 15_000, 3) * 4;
            before[i] = healthy + 0.8 * Math.sin(i * 0.13);
            low[i] = healthy - 2.4;
            high[i] = healthy + 2.4;
            heard[i] = before[i] - 6 / (1 + Math.pow(1900 / hz[i], 6)) + 0.2 * Math.sin(i * 1.9);
        }
        Reason reason = Reason.of("verdict-way-weak-alone", "HF", "@way-hf", "\u22126.2 dB");
        return with(
                failed,
                new CurvePicture("IN", DecidingCurve.LEVEL, hz, heard, hz, low, high, before, 1900, 18_000),
                List.of(
                        new PositionState("HF", ReadingState.FAULT, Reason.of("word-way-weak"), "\u22126.2 dB"),
                        fine()),
                reason,
                List.of(suspect(FaultKind.WAY_WEAK, "HF", 1, Reason.of("next-way-weak", "HF"))));
    }

    /** A coil that rubs, or a part that is loose. */
    static DockState rub(DockState failed) {
        double[] hz = new double[18];
        double[] bursts = new double[hz.length];
        double[] noise = new double[hz.length];
        double[] reach = new double[hz.length];
        double[] before = new double[hz.length];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = 40 * Math.pow(10, i / 10.0);
            noise[i] = -68 + 1.2 * Math.sin(i * 1.1);
            reach[i] = noise[i] + 13.5;
            before[i] = noise[i] + 6 + Math.sin(i * 2.3);
            bursts[i] = Math.max(before[i], -41 - 7 * Math.abs(i - 3));
        }
        Arrays.setAll(before, i -> Math.max(noise[i], before[i]));
        return with(
                failed,
                new CurvePicture("IN", DecidingCurve.BURSTS, hz, bursts, hz, noise, reach, before, 66, 94),
                List.of(
                        new PositionState("HF", ReadingState.OK, Reason.of("word-ok"), "9.1 \u03a9"),
                        new PositionState("LF", ReadingState.FAULT, Reason.of("word-coil-rubs"), null)),
                Reason.of("verdict-touching", "78 Hz"),
                List.of(
                        suspect(FaultKind.COIL_RUBS, "LF", 0.7, Reason.of("next-coil-rubs", "LF")),
                        suspect(FaultKind.LOOSE_PART, null, 0.3, Reason.of("next-loose-part"))));
    }

    private static PositionState fine() {
        return new PositionState("LF", ReadingState.OK, Reason.of("word-ok"), "5.6 \u03a9");
    }

    private static Suspect suspect(FaultKind kind, String position, double share, Reason next) {
        return new Suspect(kind, "IN", position, null, share, Reason.of("evidence"), next);
    }

    private static DockState with(
            DockState failed,
            CurvePicture curve,
            List<PositionState> positions,
            Reason reason,
            List<Suspect> suspects) {
        CabinetAtHand at = failed.cabinet().orElseThrow();
        Answer answer = failed.answer().orElseThrow();
        return new DockState(
                failed.phase(),
                failed.strip(),
                failed.returns(),
                failed.scans(),
                failed.notice(),
                Optional.of(new CabinetAtHand(
                        at.tag(),
                        at.model(),
                        at.shelfPlace(),
                        new ArrayList<>(positions),
                        at.recent(),
                        at.queuedScan())),
                failed.visualDamage(),
                Optional.of(curve),
                failed.progress(),
                Optional.of(new Answer(
                        answer.verdict(),
                        answer.prompt(),
                        answer.route(),
                        answer.place(),
                        false,
                        reason,
                        suspects,
                        answer.jobCode(),
                        answer.tagPrint())));
    }
}
