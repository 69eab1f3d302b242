package org.docksweep.judge;

import java.util.Optional;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.acoustic.PathChange;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.suspect.FaultKind;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.SoundPrint;

/** What is wrong with the sound as a measurement, in words; says nothing of the cabinet. */
final class SoundTrouble {
    /** Sound that comes this early came by wire: less than 15 cm of way where there was more. */
    private static final double BY_WIRE_S = 4.5e-4;

    /** Way of the sound that is off by more than this is not the marked spot: half a metre. */
    private static final double OFF_MARK_S = 1.5e-3;

    /** Loss of early sound against the hall's answer from which the cabinet faces elsewhere. */
    private static final double FACING_DB = -5;

    private final TestPoint point;
    private final ExpectedSound expected;
    private final AcousticCurve heard;
    private final SoundEvidence evidence;
    private final Optional<PathChange> displaced;

    SoundTrouble(
            TestPoint point,
            ExpectedSound expected,
            AcousticCurve heard,
            SoundEvidence evidence,
            Optional<PathChange> displaced) {
        this.point = point;
        this.expected = expected;
        this.heard = heard;
        this.evidence = evidence;
        this.displaced = displaced;
    }

    /** Why nothing can be said of the sound at all. */
    Optional<Reason> unusable() {
        SoundPrint print = heard.print();
        SoundPrint usual = expected.curve().print();
        if (print.marks().contains(SoundPrint.Mark.UNHEARD)) {
            return Optional.of(Reason.of("sound-unheard", point.contacts()));
        }
        if (usual != null && usual.arrivalS() > 3 * BY_WIRE_S && print.arrivalS() < BY_WIRE_S) {
            return Optional.of(Reason.of("sound-by-wire"));
        }
        if (print.marks().contains(SoundPrint.Mark.FOREIGN_SWEEP)) {
            return Optional.of(Reason.of("sound-foreign"));
        }
        if (evidence.ways().stream().anyMatch(w -> !w.quietEnough())) {
            boolean low = print.marks().contains(SoundPrint.Mark.LOW_NOISE);
            return Optional.of(Reason.of(low ? "sound-low-noise" : "judge-too-noisy"));
        }
        return Optional.empty();
    }

    /** Everything is louder or softer alike. */
    Reason moved() {
        if (evidence.directChangeDb() < FACING_DB) {
            return Reason.of("sound-facing");
        }
        if (displaced.isPresent()) {
            return offMark(displaced.get().metres());
        }
        return Reason.of("sound-moved", Rounding.decibel(evidence.sharedDb()));
    }

    /** Why a loss or a turned phase may be where the cabinet stands instead of the cabinet. */
    Optional<Reason> placed(FaultKind suspected) {
        if (suspected != FaultKind.WAY_WEAK && suspected != FaultKind.WAY_REVERSED) {
            return Optional.empty();
        }
        if (heard.print().marks().contains(SoundPrint.Mark.KNOCK)) {
            return Optional.of(Reason.of("capture-knock-microphone"));
        }
        if (evidence.directChangeDb() < FACING_DB) {
            return Optional.of(Reason.of("sound-facing"));
        }
        double changeS = displaced.map(PathChange::delayS).orElseGet(evidence::arrivalChangeS);
        return Math.abs(changeS) > OFF_MARK_S
                ? Optional.of(offMark(changeS * MicrophoneCheck.SOUND_M_PER_S))
                : Optional.empty();
    }

    private static Reason offMark(double metres) {
        return Reason.of("sound-off-mark", centimetres(metres));
    }

    /** Whole centimetres without a sign. */
    static String centimetres(double metres) {
        return Long.toString(Math.round(100 * Math.abs(metres)));
    }
}
