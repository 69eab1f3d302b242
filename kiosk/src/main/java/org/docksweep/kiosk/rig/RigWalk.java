package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;

/**
 * A calibration or a daily check, step by step. What counts is written into the book at once: the calibration when its
 * load was accepted, the check when its last standard was read. Not safe for use by several threads.
 */
final class RigWalk implements DeskWalk {
    /** Pairs of the 4-pole plug. */
    private static final List<String> CONTACTS = List.of("1+ / 1-", "2+ / 2-");

    private final RigBook book;
    private final String rigId;
    private final Supplier<String> signedOn;
    private final Clock clock;
    private final boolean calibrating;
    private final List<WalkStep> steps;
    private final double senseOhm;
    private final boolean grounded;
    private final Map<WalkStep, RigDeskState.Step> seen = new EnumMap<>(WalkStep.class);
    private final Map<WalkStep, ImpedanceCurve> curves = new EnumMap<>(WalkStep.class);
    private final Map<WalkStep, CheckReading> readings = new EnumMap<>(WalkStep.class);
    private StandardSet standards;
    private int at;
    private int contacts;
    private boolean doubted;

    RigWalk(
            boolean calibrating,
            boolean commonMode,
            RigBook book,
            String rigId,
            Supplier<String> signedOn,
            Clock clock,
            StandardSet standards,
            double senseOhm,
            boolean grounded) {
        this.calibrating = calibrating;
        this.book = book;
        this.rigId = rigId;
        this.signedOn = signedOn;
        this.clock = clock;
        this.standards = standards;
        this.senseOhm = senseOhm;
        this.grounded = grounded;
        this.steps = (calibrating ? WalkStep.CALIBRATION : WalkStep.CHECK)
                .stream().filter(s -> commonMode || s != WalkStep.COMMON_MODE).toList();
    }

    @Override
    public boolean finished() {
        return at >= steps.size();
    }

    @Override
    public WalkStep step() {
        return steps.get(at);
    }

    StandardSet standards() {
        return standards;
    }

    @Override
    public void loadOhm(double ohm) {
        StandardSet s = standards;
        standards = new StandardSet(s.open(), s.shorted(), s.load(), ohm, s.loadRelativeUncertainty(), s.checks());
    }

    @Override
    public void otherContacts() {
        contacts = (contacts + 1) % CONTACTS.size();
    }

    @Override
    public void skip() {
        if (!finished() && step().maySkip()) {
            seen.put(
                    step(),
                    new RigDeskState.Step(step(), ReadingState.WATCH, Optional.of(Reason.of("rigpage-left-out"))));
            next();
        }
    }

    @Override
    public void back() {
        if (at > 0) {
            at--;
            doubted = false;
            for (int i = at; i < steps.size(); i++) {
                seen.remove(steps.get(i));
                readings.remove(steps.get(i));
            }
        }
    }

    private void next() {
        at++;
        doubted = false;
    }

    @Override
    public RigDeskState.Message take(List<SweepAnalysis> sweeps) throws IOException {
        SweepAnalysis analysis = sweeps.get(0);
        WalkStep step = step();
        StepJudge.Judged judged = new StepJudge(standards, senseOhm, grounded)
                .judge(step, analysis, Optional.ofNullable(curves.get(WalkStep.SHORT)), calibration());
        if (step == WalkStep.COMMON_MODE && Double.isFinite(judged.value())) {
            book.append(new RigEntry.CommonMode(clock.instant(), signedOn.get(), judged.value()));
        }
        if (!judged.accepted()) {
            return judged.check() == null ? refuse(step, judged.words()) : doubt(step, judged);
        }
        if (step == WalkStep.PLUG) {
            book.append(new RigEntry.Contact(clock.instant(), signedOn.get(), CONTACTS.get(contacts), judged.value()));
            seen.put(step, new RigDeskState.Step(step, ReadingState.OK, Optional.of(judged.words())));
            next();
            return new RigDeskState.Message(judged.words(), ReadingState.OK);
        }
        curves.put(step, judged.curve());
        if (step == WalkStep.LOAD) {
            Optional<Reason> impossible = calibrate();
            if (impossible.isPresent()) {
                return refuse(step, impossible.get());
            }
        }
        if (judged.check() != null) {
            return checked(step, judged.check());
        }
        return accept(step, judged.words());
    }

    private Optional<RigCalibration> calibration() {
        return book.calibrationInForce().map(RigEntry.Calibrated::calibration);
    }

    /** Words why no calibration can be made of what was measured, or nothing when it stands in the book. */
    private Optional<Reason> calibrate() throws IOException {
        RigCalibration made;
        try {
            made = RigCalibration.of(
                    rigId,
                    clock.instant(),
                    curves.get(WalkStep.OPEN),
                    curves.get(WalkStep.SHORT),
                    curves.get(WalkStep.LOAD),
                    standards.loadOhm(),
                    standards.loadRelativeUncertainty());
        } catch (IllegalArgumentException e) {
            return Optional.of(Reason.of("rigpage-calibration-refused", String.valueOf(e.getMessage())));
        }
        book.append(new RigEntry.Calibrated(made.takenAt(), signedOn.get(), standards.loadOhm(), made));
        return Optional.empty();
    }

    private RigDeskState.Message accept(WalkStep step, Reason words) {
        seen.put(step, new RigDeskState.Step(step, ReadingState.OK, Optional.of(words)));
        next();
        return new RigDeskState.Message(words, ReadingState.OK);
    }

    private RigDeskState.Message refuse(WalkStep step, Reason words) {
        seen.put(step, new RigDeskState.Step(step, ReadingState.FAULT, Optional.of(words)));
        return new RigDeskState.Message(words, ReadingState.FAULT);
    }

    /**
     * Far off: another part the first time. When the same comes again, the rig is broken, and that must be on record,
     * because an older check would go on to count.
     */
    private RigDeskState.Message doubt(WalkStep step, StepJudge.Judged judged) throws IOException {
        if (doubted) {
            return checked(step, judged.check());
        }
        doubted = true;
        return refuse(step, judged.words());
    }

    private RigDeskState.Message checked(WalkStep step, CheckReading reading) throws IOException {
        readings.put(step, reading);
        boolean last = at == steps.size() - 1;
        if (last) {
            book.append(new RigEntry.Checked(clock.instant(), signedOn.get(), new ArrayList<>(readings.values())));
        }
        Reason words = StepJudge.words(reading);
        ReadingState state = reading.passed() ? ReadingState.OK : ReadingState.FAULT;
        seen.put(step, new RigDeskState.Step(step, state, Optional.of(words)));
        next();
        if (!last) {
            return new RigDeskState.Message(words, state);
        }
        boolean passed = readings.values().stream().allMatch(CheckReading::passed);
        return new RigDeskState.Message(
                Reason.of(passed ? "rigpage-walk-passed" : "rigpage-walk-failed"),
                passed ? ReadingState.OK : ReadingState.FAULT);
    }

    @Override
    public RigDeskState.Walk state() {
        return new RigDeskState.Walk(
                calibrating,
                steps.stream()
                        .map(s -> seen.getOrDefault(
                                s, new RigDeskState.Step(s, ReadingState.NOT_JUDGED, Optional.empty())))
                        .toList(),
                at,
                standards.loadOhm(),
                standards.checks().stream().map(c -> c.standard().name()).toList(),
                CONTACTS.get(contacts));
    }
}
