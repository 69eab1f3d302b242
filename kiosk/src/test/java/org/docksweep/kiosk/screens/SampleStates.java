package org.docksweep.kiosk.screens;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.docksweep.contract.HistoryEvent;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.Route;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.Verdict;
import org.docksweep.fleet.VisualItem;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.PositionState;
import org.docksweep.judge.Prompt;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.dock.DockState.Answer;
import org.docksweep.kiosk.dock.DockState.CabinetAtHand;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.kiosk.dock.DockState.Notice;
import org.docksweep.kiosk.dock.DockState.NoticeAction;
import org.docksweep.kiosk.dock.DockState.Phase;
import org.docksweep.kiosk.dock.DockState.Returns;
import org.docksweep.kiosk.dock.DockState.SlotState;
import org.docksweep.kiosk.dock.DockState.Strip;
import org.docksweep.kiosk.dock.DockState.SweepProgress;
import org.docksweep.kiosk.dock.DockState.TagPrint;
import org.docksweep.kiosk.spool.Trouble;
import org.docksweep.suspect.FaultKind;

/** One believable picture of every state the dock can be in, by name. */
public final class SampleStates {
    private static final Instant NOW = Instant.parse("2031-10-12T01:47:00Z");
    private static final AssetTag TAG = new AssetTag("MCH-000117");

    private static final Map<String, DockState> ALL = build();

    private Strip strip = new Strip(
            "Marram Coast Hire", Reason.of("dock-rig-passed", "21:10"), ReadingState.OK, 0, true, "Ona Petrel", NOW);
    private Optional<Returns> returns = Optional.of(SampleTally.list(List.of(SampleTally.slot(640, SlotState.BENCH))));
    private Optional<Notice> notice = Optional.empty();
    private Optional<CabinetAtHand> cabinet = Optional.empty();
    private Set<VisualItem> damage = EnumSet.noneOf(VisualItem.class);
    private Optional<CurvePicture> curve = Optional.empty();
    private Optional<SweepProgress> progress = Optional.empty();
    private Optional<Answer> answer = Optional.empty();
    private final Phase phase;

    private SampleStates(Phase phase) {
        this.phase = phase;
    }

    /** All states, by the name of their picture. */
    static Map<String, DockState> all() {
        return ALL;
    }

    private static Map<String, DockState> build() {
        Map<String, DockState> all = new LinkedHashMap<>();
        all.put("ready", of(Phase.READY).make());
        all.put("look", at(Phase.LOOK, SampleHouse.TWO_WAY).make());
        all.put("look-powered", at(Phase.LOOK, SampleHouse.POWERED).make());
        all.put("plug", plug(1, Prompt.PLUG_IN, "dock-plug-next", "2+ / 2-").make());
        all.put("plug-line", toPlug(SampleHouse.POWERED, 0).make());
        all.put("probe", sounding(Phase.PROBE, 0.08).make());
        all.put("sweep", sounding(Phase.SWEEP, 0.62).make());
        all.put("sweep-queued", sounding(Phase.SWEEP, 0.62).queued().make());
        all.put("judge", sounding(Phase.JUDGE, 1).make());
        all.put("answer-pass", pass().make());
        all.put("answer-pass-watch", passWatch().make());
        all.put("answer-pass-damage", passWatch().damaged().make());
        all.put(
                "answer-pass-displaced",
                displaced(SampleHouse.TWO_WAY, "verdict-pass-farther").make());
        all.put(
                "answer-pass-displaced-safety-test",
                displaced(SampleHouse.POWERED, "verdict-pass-powered-farther")
                        .say(
                                ReadingState.WATCH,
                                Reason.of("dock-safety-test-overdue", TAG.value(), "2031-09-30"),
                                NoticeAction.DISMISS)
                        .make());
        all.put("answer-fail", fail(TagPrint.PRINTED).make());
        all.put("answer-fail-sub", failSub().make());
        all.put("answer-fail-weak", SampleSounds.weakHorn(all.get("answer-fail")));
        all.put("answer-fail-rub", SampleSounds.rub(all.get("answer-fail")));
        all.put("answer-fail-tag-failed", fail(TagPrint.FAILED).make());
        all.put("answer-sweep-again", sweepAgain().make());
        all.put(
                "answer-plug-in",
                plug(0, Prompt.PLUG_IN, "dock-nothing-connected", TAG.value(), "1+ / 1-")
                        .make());
        all.put(
                "answer-check-socket",
                plug(1, Prompt.CHECK_SOCKET, "dock-other-socket", "2+ / 2-", "1+ / 1-")
                        .make());
        all.put("answer-check-label", checkLabel().make());
        all.put("answer-safety-hold", safetyHold().make());
        all.put("answer-manual-hold", manualHold().make());
        all.put("unknown-tag", of(Phase.READY).unknown().make());
        all.put("unexpected", of(Phase.READY).unexpected().make());
        all.put("scanned-twice", pass().twice().make());
        all.put("two-labels", of(Phase.READY).twoLabels().make());
        all.put("service-down", pass().serviceDown().make());
        all.put("service-refuses", pass().serviceRefuses().make());
        all.put("record-refused", pass().recordRefused().make());
        all.put("answer-fail-tag-waits", fail(TagPrint.WAITS_AT_PRINTER).make());
        all.put("rig-failed", of(Phase.READY).rigFailed().make());
        all.put("list-closed", of(Phase.READY).closed().make());
        return Collections.unmodifiableMap(all);
    }

    /** One of them. */
    public static DockState named(String name) {
        return all().get(name);
    }

    private static SampleStates of(Phase phase) {
        return new SampleStates(phase);
    }

    private static SampleStates at(Phase phase, CabinetModel model) {
        SampleStates s = of(phase);
        List<PositionState> positions = model.positions().stream()
                .map(p -> new PositionState(p.code(), ReadingState.NOT_JUDGED, Reason.of("word-unknown"), null))
                .toList();
        s.cabinet = Optional.of(new CabinetAtHand(TAG, model, "C-04", positions, List.of(event()), Optional.empty()));
        return s;
    }

    private static HistoryEvent event() {
        return new HistoryEvent(
                new UUID(1, 1), TAG, "HF", NOW, "Tam", HistoryEvent.Kind.REPAIRED, Reason.of("last-event"));
    }

    private static SampleStates sounding(Phase phase, double share) {
        SampleStates s = at(phase, SampleHouse.TWO_WAY);
        s.progress = Optional.of(new SweepProgress("IN", "1+ / 1-", share, 1));
        s.curve = phase == Phase.PROBE ? Optional.empty() : Optional.of(SampleCurves.growing(share));
        return s;
    }

    private static SampleStates toPlug(CabinetModel model, int point) {
        SampleStates s = at(Phase.PLUG, model);
        TestPoint next = model.testPoints().get(point);
        s.progress = Optional.of(new SweepProgress(next.code(), next.contacts(), 0, 1));
        return s;
    }

    private static SampleStates plug(int point, Prompt prompt, String reason, String... arguments) {
        SampleStates s = toPlug(SampleHouse.BIAMPED, point);
        s.answer = Optional.of(SampleAnswers.prompted(prompt, Reason.of(reason, arguments)));
        return s;
    }

    private SampleStates judged(ReadingState first, String firstWord, String firstHeadline, ReadingState second) {
        cabinet = cabinet.map(c -> {
            List<PositionState> states = new ArrayList<>();
            for (int i = 0; i < c.model().positions().size(); i++) {
                ReadingState state = i == 0 ? first : i == 1 ? second : ReadingState.OK;
                String word = i == 0 ? firstWord : state == ReadingState.OK ? "word-ok" : "word-watch";
                String headline = i == 0 ? firstHeadline : "5.6 \u03a9";
                states.add(new PositionState(c.model().positions().get(i).code(), state, Reason.of(word), headline));
            }
            return new CabinetAtHand(c.tag(), c.model(), c.shelfPlace(), states, c.recent(), c.queuedScan());
        });
        return this;
    }

    private static SampleStates pass() {
        SampleStates s =
                at(Phase.ANSWER, SampleHouse.TWO_WAY).judged(ReadingState.OK, "word-ok", "9.1 \u03a9", ReadingState.OK);
        s.curve = Optional.of(SampleCurves.healthy());
        s.answer = Optional.of(SampleAnswers.routed(Verdict.PASS, Route.SHELF, "shelf C-04", false, "healthy"));
        return s;
    }

    private static SampleStates passWatch() {
        SampleStates s = at(Phase.ANSWER, SampleHouse.THREE_WAY)
                .judged(ReadingState.OK, "word-ok", "9.1 \u03a9", ReadingState.WATCH);
        s.curve = Optional.of(SampleCurves.healthy());
        s.answer = Optional.of(SampleAnswers.routed(Verdict.PASS, Route.SHELF, "shelf C-04", true, "close"));
        return s;
    }

    /** It stood elsewhere than at its baseline. */
    private static SampleStates displaced(CabinetModel model, String reason) {
        SampleStates s = at(Phase.ANSWER, model).judged(ReadingState.OK, "word-ok", "\u22120.2 dB", ReadingState.OK);
        s.curve = Optional.of(SampleCurves.healthy());
        s.answer = Optional.of(new Answer(
                Optional.of(Verdict.PASS),
                Prompt.NONE,
                Optional.of(Route.SHELF),
                "shelf C-04",
                false,
                Reason.of(reason, "30"),
                List.of(),
                Optional.empty(),
                TagPrint.NOT_NEEDED));
        return s;
    }

    private static SampleStates fail(TagPrint print) {
        SampleStates s =
                at(Phase.ANSWER, SampleHouse.TWO_WAY).judged(ReadingState.FAULT, "word-open", null, ReadingState.OK);
        s.curve = Optional.of(SampleCurves.hornOpen());
        s.answer = Optional.of(SampleAnswers.bench(
                "horn-open",
                List.of(
                        SampleAnswers.suspect(FaultKind.DRIVER_OPEN, "HF", null, 0.81, "look-joint"),
                        SampleAnswers.suspect(FaultKind.PART_OPEN, null, "R2", 0.16, "look-joint"),
                        SampleAnswers.suspect(FaultKind.CONTACT_RESISTANCE, "HF", null, 0.03, "look-joint")),
                print));
        return s;
    }

    private static SampleStates failSub() {
        SampleStates s =
                at(Phase.ANSWER, SampleHouse.SUB).judged(ReadingState.OK, "word-ok", "5.6 \u03a9", ReadingState.OK);
        s.cabinet = s.cabinet.map(c -> new CabinetAtHand(
                c.tag(),
                c.model(),
                c.shelfPlace(),
                List.of(
                        c.positions().get(0),
                        new PositionState("LF2", ReadingState.FAULT, Reason.of("word-open"), null)),
                c.recent(),
                Optional.empty()));
        s.curve = Optional.of(SampleCurves.hornOpen());
        s.answer = Optional.of(SampleAnswers.bench(
                "one-open",
                List.of(
                        SampleAnswers.suspect(FaultKind.DRIVER_OPEN, "LF2", null, 0.5, "look-spade"),
                        SampleAnswers.suspect(FaultKind.DRIVER_OPEN, "LF1", null, 0.5, "look-spade")),
                TagPrint.SAVED_TO_FOLDER));
        return s;
    }

    private static SampleStates sweepAgain() {
        SampleStates s = at(Phase.ANSWER, SampleHouse.TWO_WAY);
        s.curve = Optional.of(SampleCurves.healthy());
        s.answer = Optional.of(SampleAnswers.prompted(Prompt.SWEEP_AGAIN, Reason.of("spoiled")));
        return s;
    }

    private static SampleStates checkLabel() {
        SampleStates s = at(Phase.ANSWER, SampleHouse.TWO_WAY);
        s.curve = Optional.of(SampleCurves.hornOpen());
        s.answer = Optional.of(SampleAnswers.prompted(Prompt.CHECK_LABEL, Reason.of("other-model")));
        return s;
    }

    private static SampleStates safetyHold() {
        SampleStates s = at(Phase.ANSWER, SampleHouse.BIAMPED);
        s.damage = EnumSet.of(VisualItem.RIGGING);
        s.answer = Optional.of(SampleAnswers.routed(null, Route.SAFETY_HOLD, "safety hold", false, "rigging"));
        return s;
    }

    private static SampleStates manualHold() {
        SampleStates s = at(Phase.ANSWER, SampleHouse.WEDGE);
        s.answer = Optional.of(SampleAnswers.routed(null, Route.MANUAL_HOLD, "manual hold", false, "spoiled-thrice"));
        return s;
    }

    private SampleStates damaged() {
        damage = EnumSet.of(VisualItem.GRILLE, VisualItem.HANDLES);
        return this;
    }

    private SampleStates queued() {
        cabinet = cabinet.map(c -> new CabinetAtHand(
                c.tag(),
                c.model(),
                c.shelfPlace(),
                c.positions(),
                c.recent(),
                Optional.of(new AssetTag("MCH-000118"))));
        return say(ReadingState.OK, Reason.of("dock-scan-queued", "MCH-000118", TAG.value()));
    }

    private SampleStates unknown() {
        return say(
                ReadingState.WATCH,
                Reason.of("dock-unknown-tag", "MCH-004711"),
                NoticeAction.REGISTER,
                NoticeAction.DISMISS);
    }

    private SampleStates unexpected() {
        return say(
                ReadingState.WATCH,
                Reason.of("dock-not-on-list", "MCH-000640"),
                NoticeAction.CHECK_IN_ANYWAY,
                NoticeAction.DISMISS);
    }

    private SampleStates twice() {
        return say(
                ReadingState.WATCH,
                Reason.of("dock-already-checked-in", TAG.value()),
                NoticeAction.CHECK_IN_AGAIN,
                NoticeAction.DISMISS);
    }

    private SampleStates twoLabels() {
        return say(ReadingState.WATCH, Reason.of("dock-two-tags", "MCH-000117 MCH-000322"), NoticeAction.DISMISS);
    }

    private SampleStates serviceRefuses() {
        strip = new Strip(
                strip.siteName(),
                strip.rig(),
                strip.rigState(),
                7,
                0,
                Optional.of(Trouble.NOT_SIGNED_ON),
                strip.operator(),
                strip.now());
        return this;
    }

    private SampleStates recordRefused() {
        strip = new Strip(
                strip.siteName(), strip.rig(), strip.rigState(), 9, 2, Optional.empty(), strip.operator(), strip.now());
        notice = Optional.of(new Notice(
                ReadingState.FAULT,
                Reason.of(
                        "dock-record-parked",
                        "Conflict: code J01-00042 was printed before, for a job of cabinet MCH-000101."),
                List.of(NoticeAction.SEND_AGAIN, NoticeAction.DISMISS)));
        return this;
    }

    private SampleStates serviceDown() {
        strip = new Strip(strip.siteName(), strip.rig(), strip.rigState(), 7, false, strip.operator(), strip.now());
        return this;
    }

    private SampleStates rigFailed() {
        strip = new Strip(
                strip.siteName(),
                Reason.of("dock-rig-failed", "21:10"),
                ReadingState.FAULT,
                0,
                true,
                strip.operator(),
                strip.now());
        return say(ReadingState.FAULT, Reason.of("dock-rig-check-failed"), NoticeAction.DISMISS);
    }

    private SampleStates closed() {
        returns = Optional.empty();
        return say(
                ReadingState.OK,
                Reason.of("dock-list-closed", "R-2031-118", "23", "24", "1", "1"),
                NoticeAction.SHEET_AGAIN,
                NoticeAction.DISMISS);
    }

    private SampleStates say(ReadingState state, Reason text, NoticeAction... actions) {
        notice = Optional.of(new Notice(state, text, List.of(actions)));
        return this;
    }

    private DockState make() {
        return new DockState(
                phase, strip, returns, SampleTally.scans(NOW), notice, cabinet, damage, curve, progress, answer);
    }
}
