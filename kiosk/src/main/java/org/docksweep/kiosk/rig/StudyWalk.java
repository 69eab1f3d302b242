package org.docksweep.kiosk.rig;

import java.io.IOException;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.rig.RigDeskState.Message;
import org.docksweep.rigcal.CheckStandard;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigStudy;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.SweepAnalysis;
import org.hipparchus.complex.Complex;

/**
 * The walk of a repeatability study: two parts in turn, four plug-ins of each, two sweeps of each plug-in. The parts are the two
 * check standards, or cabinets whose labels are scanned. What comes of it is written into the book at the end. Not safe for use by
 * several threads.
 */
final class StudyWalk implements DeskWalk {
    static final int PARTS = 2;
    static final int PLUG_INS = 4;
    static final int REPEATS = 2;

    private final RigBook book;
    private final Supplier<String> signedOn;
    private final Clock clock;
    private final RigCalibration calibration;
    private final Part[] parts = new Part[PARTS];
    private final RigStudy.Sweep[][][] sweeps = new RigStudy.Sweep[PARTS][PLUG_INS][];
    private final List<RigDeskState.Step> steps = new ArrayList<>();
    private int at;

    /** A check standard, or a cabinet; the other is null. */
    private record Part(CheckStandard standard, StudyCabinet cabinet) {
        String name() {
            return cabinet == null ? standard.name() : cabinet.tag().value();
        }
    }

    StudyWalk(RigBook book, Supplier<String> signedOn, Clock clock, StandardSet standards, RigCalibration calibration) {
        this.book = book;
        this.signedOn = signedOn;
        this.clock = clock;
        this.calibration = calibration;
        for (int p = 0; p < PARTS; p++) {
            parts[p] = new Part(standards.checks().get(p).standard(), null);
        }
        for (int i = 0; i < PARTS * PLUG_INS; i++) {
            steps.add(fresh(i));
        }
    }

    private static RigDeskState.Step fresh(int index) {
        return new RigDeskState.Step(WalkStep.STUDY.get(index % PARTS), ReadingState.NOT_JUDGED, Optional.empty());
    }

    @Override
    public boolean finished() {
        return at >= steps.size();
    }

    @Override
    public WalkStep step() {
        return steps.get(at).step();
    }

    private int part() {
        return at % PARTS;
    }

    private int plugIn() {
        return at / PARTS;
    }

    @Override
    public void plug(StandardsHand hand, Lead lead) {
        StudyCabinet cabinet = parts[part()].cabinet();
        if (cabinet == null) {
            hand.plug(step());
        } else {
            lead.plug(cabinet.tag(), cabinet.point().code());
        }
    }

    @Override
    public TestPoint point() {
        StudyCabinet cabinet = parts[part()].cabinet();
        return cabinet == null ? DeskWalk.super.point() : cabinet.point();
    }

    @Override
    public boolean probesFirst() {
        return parts[part()].cabinet() != null;
    }

    @Override
    public int sweeps() {
        return REPEATS;
    }

    @Override
    public Optional<Message> probed(SweepAnalysis probe) {
        return probe.load() == SweepAnalysis.Load.PRESENT
                ? Optional.empty()
                : Optional.of(refuse(Reason.of("rigpage-study-no-load", parts[part()].name(), point().contacts())));
    }

    @Override
    public Optional<Message> cabinet(StudyCabinet cabinet) {
        if (finished() || plugIn() > 0) {
            return Optional.of(new Message(
                    Reason.of("rigpage-study-too-late", cabinet.tag().value()), ReadingState.FAULT));
        }
        parts[part()] = new Part(null, cabinet);
        steps.set(at, fresh(at));
        return Optional.of(new Message(
                Reason.of(
                        "rigpage-study-cabinet",
                        cabinet.tag().value(),
                        cabinet.point().contacts()),
                ReadingState.OK));
    }

    @Override
    public Message take(List<SweepAnalysis> analyses) throws IOException {
        RigStudy.Sweep[] taken = new RigStudy.Sweep[analyses.size()];
        for (int r = 0; r < taken.length; r++) {
            SweepAnalysis analysis = analyses.get(r);
            if (!analysis.clean()) {
                return refuse(analysis.firstIssue().orElseThrow().reason());
            }
            if (analysis.load() == SweepAnalysis.Load.OPEN || analysis.impedance() == null) {
                return refuse(Reason.of("rigpage-check-saw-open", parts[part()].name()));
            }
            ImpedanceCurve curve = calibration.correct(analysis.impedance());
            if (isAnotherPart(curve)) {
                return refuse(Reason.of("rigpage-study-other-part", parts[part()].name()));
            }
            taken[r] = new RigStudy.Sweep(curve, analysis.acoustic());
        }
        sweeps[part()][plugIn()] = taken;
        boolean last = at == steps.size() - 1;
        if (last) {
            return evaluated();
        }
        Reason words = Reason.of(
                "rigpage-study-taken",
                parts[part()].name(),
                Integer.toString(plugIn() + 1),
                Integer.toString(PLUG_INS));
        steps.set(at, new RigDeskState.Step(step(), ReadingState.OK, Optional.of(words)));
        at++;
        return new Message(words, ReadingState.OK);
    }

    private Message evaluated() throws IOException {
        RigStudy study;
        try {
            study = RigStudy.of(sweeps);
        } catch (IllegalArgumentException e) {
            return refuse(Reason.of("rigpage-study-refused", String.valueOf(e.getMessage())));
        }
        List<String> names = java.util.Arrays.stream(parts).map(Part::name).toList();
        book.append(new RigEntry.Studied(clock.instant(), signedOn.get(), names, study));
        Reason words = StudyWords.of(study);
        ReadingState state = StudyWords.widens(study) ? ReadingState.WATCH : ReadingState.OK;
        steps.set(at, new RigDeskState.Step(step(), state, Optional.of(words)));
        at++;
        return new Message(words, state);
    }

    /** Held against the standard's value, or the cabinet's first plug-in: on average a fifth off. */
    private boolean isAnotherPart(ImpedanceCurve curve) {
        Part part = parts[part()];
        RigStudy.Sweep[] first = sweeps[part()][0];
        double sum = 0;
        for (int i = 0; i < curve.size(); i++) {
            Complex read = new Complex(curve.resistanceOhm()[i], curve.reactanceOhm()[i]);
            Complex known;
            if (part.cabinet() == null) {
                known = part.standard().impedanceOhm(curve.frequencyHz()[i]);
            } else if (plugIn() > 0 && first[0].impedance().size() == curve.size()) {
                ImpedanceCurve before = first[0].impedance();
                known = new Complex(before.resistanceOhm()[i], before.reactanceOhm()[i]);
            } else {
                return false;
            }
            sum += read.subtract(known).norm() / known.norm();
        }
        return sum / curve.size() > StepJudge.OTHER_PART_SHARE;
    }

    private Message refuse(Reason words) {
        steps.set(at, new RigDeskState.Step(step(), ReadingState.FAULT, Optional.of(words)));
        return new Message(words, ReadingState.FAULT);
    }

    @Override
    public void back() {
        // What stands in the book is not taken back.
        if (at > 0 && !finished()) {
            steps.set(at, fresh(at));
            at--;
            steps.set(at, fresh(at));
            sweeps[part()][plugIn()] = null;
        }
    }

    @Override
    public RigDeskState.Walk state() {
        String contacts = finished() ? "" : point().contacts();
        return new RigDeskState.Walk(
                false,
                steps,
                at,
                DeskWalk.POINT_OHM,
                java.util.Arrays.stream(parts).map(Part::name).toList(),
                contacts);
    }
}
