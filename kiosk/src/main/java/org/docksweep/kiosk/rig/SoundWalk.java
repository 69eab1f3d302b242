package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.acoustic.MicrophoneReading;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigDeskState.Message;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.SoundPrint;
import org.docksweep.sweep.SweepAnalysis;

/**
 * The daily check of the microphone: one sweep of the known cabinet at its marked spot. The first sweep of a known cabinet is
 * accepted and kept; later ones are held against it. What disagrees is said at once, with what to do; when the next sweep disagrees
 * as well, the check has failed and stands in the book. Not safe for use by several threads.
 */
final class SoundWalk implements DeskWalk {
    private final RigBook book;
    private final Supplier<String> signedOn;
    private final Clock clock;
    private final RigCalibration calibration;
    private Optional<StudyCabinet> cabinet;
    private boolean accepting;
    private boolean doubted;
    private boolean done;
    private RigDeskState.Step seen = new RigDeskState.Step(WalkStep.SOUND, ReadingState.NOT_JUDGED, Optional.empty());

    SoundWalk(
            RigBook book,
            Supplier<String> signedOn,
            Clock clock,
            RigCalibration calibration,
            Optional<StudyCabinet> cabinet) {
        this.book = book;
        this.signedOn = signedOn;
        this.clock = clock;
        this.calibration = calibration;
        this.cabinet = cabinet;
        this.accepting = accepted().isEmpty();
    }

    /** What was accepted of the cabinet at hand. */
    private Optional<RigEntry.SoundAccepted> accepted() {
        return book.soundInForce()
                .filter(s -> cabinet.filter(c -> c.tag().equals(s.tag())).isPresent());
    }

    @Override
    public boolean finished() {
        return done;
    }

    @Override
    public WalkStep step() {
        return WalkStep.SOUND;
    }

    @Override
    public Optional<Reason> notYet() {
        return cabinet.isEmpty() ? Optional.of(Reason.of("mic-scan-cabinet")) : Optional.empty();
    }

    @Override
    public void plug(StandardsHand hand, Lead lead) {
        if (cabinet.orElseThrow().equals(StandardSet.PRACTICE_CABINET)) {
            hand.plug(step());
        } else {
            lead.plug(cabinet.get().tag(), cabinet.get().point().code());
        }
    }

    @Override
    public TestPoint point() {
        return cabinet.map(StudyCabinet::point).orElseGet(DeskWalk.super::point);
    }

    @Override
    public boolean probesFirst() {
        return true;
    }

    @Override
    public boolean listens() {
        return true;
    }

    @Override
    public Optional<Message> probed(SweepAnalysis probe) {
        return probe.load() == SweepAnalysis.Load.PRESENT
                ? Optional.empty()
                : Optional.of(refuse(Reason.of("rigpage-study-no-load", name(), point().contacts())));
    }

    @Override
    public void acceptAnew() {
        if (!done && accepted().isPresent()) {
            accepting = !accepting;
            doubted = false;
            seen = new RigDeskState.Step(
                    WalkStep.SOUND,
                    ReadingState.NOT_JUDGED,
                    accepting ? Optional.of(Reason.of("mic-accepting", name())) : Optional.empty());
        }
    }

    @Override
    public Optional<Message> cabinet(StudyCabinet scanned) {
        if (done) {
            return Optional.empty();
        }
        cabinet = Optional.of(scanned);
        accepting = accepted().isEmpty();
        doubted = false;
        seen = new RigDeskState.Step(WalkStep.SOUND, ReadingState.NOT_JUDGED, Optional.empty());
        return Optional.of(new Message(
                Reason.of(accepting ? "mic-accepting" : "mic-checking", name()),
                accepting ? ReadingState.WATCH : ReadingState.OK));
    }

    @Override
    public Message take(List<SweepAnalysis> sweeps) throws IOException {
        SweepAnalysis analysis = sweeps.get(0);
        if (analysis.impedance() == null || analysis.load() != SweepAnalysis.Load.PRESENT) {
            return refuse(Reason.of("rigpage-study-no-load", name(), point().contacts()));
        }
        boolean dead = analysis.acoustic() == null;
        if (!dead && !analysis.clean()) {
            return refuse(analysis.firstIssue().orElseThrow().reason());
        }
        Optional<MicrophoneReading> reading =
                MicrophoneReading.of(analysis.acoustic(), calibration.correct(analysis.impedance()));
        if (reading.isEmpty()) {
            return accepting
                    ? refuse(Reason.of("mic-unheard"))
                    : judged(MicrophoneCheck.unheard(), Reason.of("mic-unheard"));
        }
        Optional<Reason> spoiled = spoiled(analysis.acoustic().print(), reading.get());
        if (spoiled.isPresent()) {
            return refuse(spoiled.get());
        }
        return accepting ? accept(reading.get()) : check(reading.get());
    }

    private static Optional<Reason> spoiled(SoundPrint print, MicrophoneReading reading) {
        if (print.marks().contains(SoundPrint.Mark.FOREIGN_SWEEP)) {
            return Optional.of(Reason.of("sound-foreign"));
        }
        if (print.marks().contains(SoundPrint.Mark.KNOCK)) {
            return Optional.of(Reason.of("capture-knock-microphone"));
        }
        return MicrophoneCheck.clear(reading) ? Optional.empty() : Optional.of(Reason.of("mic-too-noisy"));
    }

    private Message accept(MicrophoneReading reading) throws IOException {
        book.append(new RigEntry.SoundAccepted(
                clock.instant(), signedOn.get(), cabinet.orElseThrow().tag(), reading));
        return finish(Reason.of("mic-accepted", name()), ReadingState.OK);
    }

    private Message check(MicrophoneReading reading) throws IOException {
        MicrophoneReading before = accepted().orElseThrow().reading();
        if (!MicrophoneCheck.sameCabinet(before, reading)) {
            return refuse(Reason.of("mic-other-cabinet", name()));
        }
        Optional<MicrophoneCheck> check = MicrophoneCheck.of(before, reading);
        return check.isEmpty()
                ? refuse(Reason.of("mic-too-noisy"))
                : judged(check.get(), MicrophoneWords.of(check.get()));
    }

    /** What disagrees may be put right at once; when it disagrees again, an older check must not go on to count. */
    private Message judged(MicrophoneCheck check, Reason words) throws IOException {
        if (!check.passed() && !doubted) {
            doubted = true;
            return refuse(words);
        }
        book.append(new RigEntry.SoundChecked(
                clock.instant(), signedOn.get(), cabinet.orElseThrow().tag(), check));
        return finish(words, check.passed() ? ReadingState.OK : ReadingState.FAULT);
    }

    private Message finish(Reason words, ReadingState state) {
        seen = new RigDeskState.Step(WalkStep.SOUND, state, Optional.of(words));
        done = true;
        return new Message(words, state);
    }

    private Message refuse(Reason words) {
        seen = new RigDeskState.Step(WalkStep.SOUND, ReadingState.FAULT, Optional.of(words));
        return new Message(words, ReadingState.FAULT);
    }

    @Override
    public void back() {
        // There is one step only.
    }

    private String name() {
        return cabinet.map(c -> c.tag().value()).orElse("");
    }

    @Override
    public RigDeskState.Walk state() {
        return new RigDeskState.Walk(
                false, List.of(seen), done ? 1 : 0, DeskWalk.POINT_OHM, List.of(name()), point().contacts());
    }
}
