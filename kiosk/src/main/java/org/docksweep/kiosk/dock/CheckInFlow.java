package org.docksweep.kiosk.dock;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.PointReference;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.CabinetJudgement;
import org.docksweep.judge.PointJudgement;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.SweepProgress;
import org.docksweep.kiosk.dock.Measuring.Outcome;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.kiosk.rig.RigEntry;
import org.docksweep.kiosk.rig.RigStanding;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.QualityIssue;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;

/**
 * One cabinet from the visual list to its route: look, then for every test point plug, quiet probe, sweep, judgement,
 * and what to do when one of them does not come out. Lives on the dock's thread only.
 */
final class CheckInFlow {
    /**
     * Spoils already the probe: a sweep would not come out better. Noise and hum may well be low enough for a sweep, and a
     * near short looks like exchanged leads in the narrow band of a probe.
     */
    private static final Set<QualityIssue> SPOILS_PROBE = Set.of(
            QualityIssue.CLIPPED,
            QualityIssue.TOO_SHORT,
            QualityIssue.SILENT,
            QualityIssue.CHANNEL_DEAD,
            QualityIssue.TORN);

    private final DockParts parts;
    private final Desk desk;
    private final Measuring measuring;
    private final Picture picture;
    private final LocalFleet fleet;
    private final Draft draft;
    private final RigStanding standing;
    private final BiConsumer<Draft, Routing.Routed> finished;
    private boolean over;

    /**
     * Begins with the visual list.
     *
     * @param parts what the dock works with
     * @param desk threads
     * @param picture the screen
     * @param fleet fleet as it was at the scan; one check-in is judged by one state of knowledge
     * @param draft the check-in
     * @param finished takes the check-in with its route
     */
    CheckInFlow(
            DockParts parts,
            Desk desk,
            Picture picture,
            LocalFleet fleet,
            Draft draft,
            BiConsumer<Draft, Routing.Routed> finished) {
        this.parts = parts;
        this.desk = desk;
        this.measuring = new Measuring(parts);
        this.picture = picture;
        this.fleet = fleet;
        this.draft = draft;
        this.standing = parts.standing().get();
        this.finished = finished;
        picture.phase = Phase.LOOK;
    }

    Draft draft() {
        return draft;
    }

    /** The cabinet is put aside without a result; whatever the rig still brings is ignored. */
    void abandon() {
        over = true;
    }

    /** Whether the rig is at work, so that a scan must wait. */
    boolean busy() {
        return picture.phase == Phase.PROBE || picture.phase == Phase.SWEEP || picture.phase == Phase.JUDGE;
    }

    void lookedOver(Set<VisualItem> damage) {
        if (picture.phase != Phase.LOOK) {
            return;
        }
        draft.damage = damage;
        picture.damage = damage;
        Routing.Routed byLook = Routing.byLook(draft.cabinet.tag(), draft.model, damage);
        if (byLook != null) {
            finish(byLook);
        } else if (!standing.maySweep()) {
            picture.notice(ReadingState.FAULT, standing.refusal());
        } else if (standing.microphoneDoubt().isPresent() && heardOnly()) {
            picture.notice(ReadingState.FAULT, standing.microphoneDoubt().get());
        } else {
            nextPoint();
        }
    }

    /** Whether the cabinet has an input that only the microphone can judge. */
    private boolean heardOnly() {
        return draft.model.testPoints().stream().anyMatch(p -> p.kind() == TestPointKind.LINE_INPUT);
    }

    /** The person has done what was asked: plugged, checked the socket or the label, or wants to sweep again. */
    void goOn() {
        boolean asked = picture.phase == Phase.PLUG
                || picture.phase == Phase.ANSWER
                        && picture.answer.filter(a -> a.route().isEmpty()).isPresent();
        if (asked && draft.sweeping()) {
            probe();
        }
    }

    void holdForPerson() {
        if (!busy()) {
            hold(reasonToHold(), draft.judgement);
        }
    }

    /** Whoever sorts out a doubtful label wants to read what was in doubt; who held it is recorded anyway. */
    private Reason reasonToHold() {
        return picture.answer
                .filter(a -> a.prompt() == Prompt.CHECK_LABEL)
                .map(DockState.Answer::reason)
                .orElseGet(
                        () -> Reason.of("dock-held-by-person", parts.settings().operator()));
    }

    private void nextPoint() {
        if (!draft.nextPoint()) {
            finish(Routing.byJudgement(draft.model, draft.judgement, draft.damage));
        } else if (draft.atFirstPoint() || parts.lead().movesByItself()) {
            probe();
        } else {
            ask(
                    Phase.PLUG,
                    Prompt.PLUG_IN,
                    Reason.of("dock-plug-next", draft.point().contacts()));
        }
    }

    private void probe() {
        show(Phase.PROBE);
        SweepPlan plan = parts.gate().probe(draft.point(), parts.rig().sampleRateHz());
        Measuring.Order order = desk.order(draft, draft.point(), plan);
        desk.onRig(() -> measuring.probe(order), this::probed);
    }

    private void probed(Outcome outcome) {
        if (over) {
            return;
        }
        if (outcome instanceof Outcome.Probed probed) {
            afterProbe(probed.analysis());
        } else {
            notMeasured((Outcome.Failed) outcome);
        }
    }

    private void afterProbe(SweepAnalysis analysis) {
        Optional<SweepAnalysis.Issue> spoiled = analysis.issues().stream()
                .filter(i -> SPOILS_PROBE.contains(i.kind()))
                .findFirst();
        if (spoiled.isPresent()) {
            spoiled(spoiled.get().reason(), null);
            return;
        }
        if (analysis.load() == SweepAnalysis.Load.OPEN && draft.mayAskToPlug()) {
            ask(
                    Phase.PLUG,
                    Prompt.PLUG_IN,
                    Reason.of(
                            "dock-nothing-connected",
                            draft.cabinet.tag().value(),
                            draft.point().contacts()));
            return;
        }
        Optional<String> otherSocket = otherSocket(analysis);
        if (otherSocket.isPresent() && draft.mayAskForSocket()) {
            ask(
                    Phase.PLUG,
                    Prompt.CHECK_SOCKET,
                    Reason.of("dock-other-socket", draft.point().contacts(), contactsOf(otherSocket.get())));
            return;
        }
        boolean ordinary =
                analysis.load() == SweepAnalysis.Load.PRESENT || draft.point().kind() == TestPointKind.LINE_INPUT;
        sweep(ordinary && otherSocket.isEmpty());
    }

    private Optional<String> otherSocket(SweepAnalysis analysis) {
        if (analysis.impedance() == null || analysis.load() != SweepAnalysis.Load.PRESENT) {
            return Optional.empty();
        }
        List<PointReference> ofModel = fleet.references().stream()
                .filter(r -> r.cabinetModelCode().equals(draft.model.code()))
                .toList();
        return SocketCheck.otherSocket(
                standing.correction().correct(analysis.impedance()),
                draft.point().code(),
                ofModel);
    }

    private String contactsOf(String testPointCode) {
        return draft.model.testPoint(testPointCode).contacts();
    }

    /** Full level only into a load that looked as it should. */
    private void sweep(boolean fullLevel) {
        show(Phase.SWEEP);
        int sampleRateHz = parts.rig().sampleRateHz();
        SweepPlan plan = fullLevel
                ? parts.gate().sweep(draft.point(), sampleRateHz)
                : parts.gate().quietSweep(draft.point(), sampleRateHz);
        Measuring.Order order = desk.order(draft, draft.point(), plan);
        desk.onRig(() -> measuring.sweep(order), this::swept);
    }

    private void swept(Outcome outcome) {
        if (over) {
            return;
        }
        if (outcome instanceof Outcome.Captured captured) {
            picture.phase = Phase.JUDGE;
            picture.progress = Optional.empty();
            var captures = draft.capturesWith(captured.capture());
            desk.onRig(
                    () -> measuring.judge(fleet, draft, captures, standing), judgement -> judged(captured, judgement));
        } else {
            notMeasured((Outcome.Failed) outcome);
        }
    }

    private void judged(Outcome.Captured captured, CabinetJudgement judgement) {
        if (over) {
            return;
        }
        Capture capture = captured.capture();
        PointJudgement point = draft.swept(capture, captured.sha256(), judgement);
        picture.positions(judgement.positions());
        picture.curve = CurvePictures.deciding(
                List.of(point), draft.model.code(), fleet.references(), fleet.baselinesOf(draft.cabinet.tag()));
        Prompt prompt = judgement.prompt() == Prompt.CHECK_LABEL ? Prompt.CHECK_LABEL : point.prompt();
        switch (prompt) {
            case SWEEP_AGAIN -> spoiled(point.reason(), judgement);
            case PLUG_IN -> askOr(draft.mayAskToPlug(), Phase.PLUG, prompt, point.reason(), this::nextPoint);
            case CHECK_SOCKET ->
                askOr(
                        draft.mayAskForSocket(),
                        Phase.PLUG,
                        prompt,
                        point.reason(),
                        () -> hold(point.reason(), judgement));
            case CHECK_LABEL -> {
                if (draft.atLastPoint()) {
                    askOr(
                            draft.mayAskForLabel(),
                            Phase.ANSWER,
                            prompt,
                            judgement.reason(),
                            () -> hold(judgement.reason(), judgement));
                } else {
                    // Nobody is sent to look at a label that the other contacts may bear out.
                    nextPoint();
                }
            }
            case NONE, PERSON_DECIDES -> {
                if (point.verdict() == Verdict.SWEEP_AGAIN && prompt == Prompt.NONE) {
                    spoiled(point.reason(), judgement);
                } else {
                    nextPoint();
                }
            }
        }
    }

    private void askOr(boolean first, Phase where, Prompt prompt, Reason reason, Runnable secondTime) {
        if (first) {
            ask(where, prompt, reason);
        } else {
            secondTime.run();
        }
    }

    /** A spoiled measurement says nothing of the cabinet: again, at most twice, then a person. */
    private void spoiled(Reason reason, CabinetJudgement judgement) {
        draft.dropSpoiled();
        if (draft.anotherAttempt()) {
            picture.notice(ReadingState.WATCH, reason);
            probe();
        } else {
            hold(reason, judgement);
        }
    }

    private void notMeasured(Outcome.Failed failed) {
        ask(Phase.ANSWER, Prompt.SWEEP_AGAIN, failed.reason());
    }

    private void hold(Reason reason, CabinetJudgement judgement) {
        finish(Routing.hold(draft.model, reason, judgement));
    }

    private void finish(Routing.Routed routed) {
        over = true;
        keepContacts();
        picture.progress = Optional.empty();
        finished.accept(draft, routed);
    }

    /** What the curves said of the plug goes into the rig's book; the check-in does not wait for it, nor fail with it. */
    private void keepContacts() {
        List<RigEntry.PlugIn> plugIns =
                PlugIns.of(draft, parts.settings().operator(), parts.clock().instant());
        if (!plugIns.isEmpty()) {
            desk.onRig(
                    () -> PlugIns.keep(plugIns, parts.plugs()),
                    failed -> failed.ifPresent(
                            words -> picture.notice(ReadingState.WATCH, words, DockState.NoticeAction.DISMISS)));
        }
    }

    private void ask(Phase where, Prompt prompt, Reason reason) {
        picture.ask(where, prompt, reason, where == Phase.PLUG ? Optional.of(atStart()) : Optional.empty());
    }

    private void show(Phase phase) {
        picture.phase = phase;
        picture.answer = Optional.empty();
        picture.progress = Optional.of(atStart());
    }

    private SweepProgress atStart() {
        return new SweepProgress(draft.point().code(), draft.point().contacts(), 0, draft.attempt());
    }
}
