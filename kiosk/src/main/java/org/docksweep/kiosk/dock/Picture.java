package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.docksweep.contract.CabinetBody;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.CabinetAtHand;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.ScanEcho;
import org.docksweep.kiosk.dock.DockState.SweepProgress;
import org.docksweep.kiosk.fleet.LocalFleet;

/** What is on the screen now, as far as it is not read from elsewhere. Lives on the dock's thread only. */
final class Picture {
    private static final int SCANS_SHOWN = 8;

    Phase phase = Phase.READY;
    Optional<Notice> notice = Optional.empty();
    Optional<CurvePicture> curve = Optional.empty();
    Optional<SweepProgress> progress = Optional.empty();
    Optional<Answer> answer = Optional.empty();
    Set<VisualItem> damage = Set.of();

    private final Deque<ScanEcho> scans = new ArrayDeque<>();
    private CabinetBody cabinet;
    private CabinetModel model;
    private List<PositionState> positions = List.of();

    void cabinet(CabinetBody body, CabinetModel itsModel, List<PositionState> states) {
        cabinet = body;
        model = itsModel;
        positions = states;
    }

    /** A new cabinet comes to hand: everything of the one before goes. */
    void clear() {
        notice = Optional.empty();
        curve = Optional.empty();
        progress = Optional.empty();
        answer = Optional.empty();
        damage = Set.of();
    }

    /** No cabinet is at hand, and none is shown. */
    void none() {
        clear();
        phase = Phase.READY;
        cabinet = null;
        model = null;
        positions = List.of();
    }

    AssetTag tag() {
        return cabinet == null ? null : cabinet.tag();
    }

    void positions(List<PositionState> states) {
        positions = states;
    }

    void echo(String text, Instant at, Reason outcome, ReadingState state) {
        scans.addFirst(new ScanEcho(printable(text), at, outcome, state));
        while (scans.size() > SCANS_SHOWN) {
            scans.removeLast();
        }
    }

    void notice(ReadingState state, Reason text, NoticeAction... actions) {
        notice = Optional.of(new Notice(state, text, List.of(actions)));
    }

    /** Asks the person for something; at a test point, when it is for the plug. */
    void ask(Phase where, Prompt prompt, Reason reason, Optional<SweepProgress> at) {
        phase = where;
        progress = at;
        answer = Optional.of(new Answer(
                Optional.empty(),
                prompt,
                Optional.empty(),
                "",
                false,
                reason,
                List.of(),
                Optional.empty(),
                DockState.TagPrint.NOT_NEEDED));
    }

    void tagPrint(DockState.TagPrint state) {
        answer = answer.map(a -> new Answer(
                a.verdict(),
                a.prompt(),
                a.route(),
                a.place(),
                a.watch(),
                a.reason(),
                a.suspects(),
                a.jobCode(),
                state));
    }

    DockState state(
            DockState.Strip strip, Optional<DockState.Returns> returns, LocalFleet fleet, Optional<AssetTag> queued) {
        Optional<CabinetAtHand> atHand = Optional.ofNullable(cabinet)
                .map(c ->
                        new CabinetAtHand(c.tag(), model, c.shelfPlace(), positions, fleet.eventsOf(c.tag()), queued));
        return new DockState(
                phase, strip, returns, new ArrayList<>(scans), notice, atHand, damage, curve, progress, answer);
    }

    private static String printable(String text) {
        String clean = text.replaceAll("\\p{Cntrl}", "?");
        return clean.length() <= 60 ? clean : clean.substring(0, 59) + "\u2026";
    }
}
