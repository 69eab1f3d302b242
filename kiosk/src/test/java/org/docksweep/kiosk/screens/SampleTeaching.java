package org.docksweep.kiosk.screens;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.contract.TaughtPoint;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.Feed;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.template.TwoWayTemplate;
import org.docksweep.gate.ReadingState;
import org.docksweep.judge.DecidingCurve;
import org.docksweep.kiosk.dock.DockState.CurvePicture;
import org.docksweep.kiosk.fleet.SafetyTests;
import org.docksweep.kiosk.teaching.ModelStanding;
import org.docksweep.kiosk.teaching.TeachingState;
import org.docksweep.kiosk.teaching.TeachingState.Activity;
import org.docksweep.kiosk.teaching.TeachingState.Drawing;
import org.docksweep.kiosk.teaching.TeachingState.LessonAtHand;
import org.docksweep.kiosk.teaching.TeachingState.Message;
import org.docksweep.kiosk.teaching.TeachingState.Missed;
import org.docksweep.kiosk.teaching.TeachingState.Progress;
import org.docksweep.kiosk.teaching.TeachingState.UnitLine;
import org.docksweep.kiosk.teaching.TeachingStep;
import org.docksweep.suspect.FaultKind;
import org.docksweep.suspect.TeachingProgress.Grade;

/** One believable picture of every state the fleet page can be in, by name. */
final class SampleTeaching {
    private static final CabinetModel NEW = new TwoWayTemplate(
                    "SURF12", "SURF12", 8, 1800, 12, EnclosureKind.VENTED, 1, 12, 6)
            .book()
            .cabinetModels()
            .get(0);
    private static final List<TeachingStep> CHOICES = List.of(
            TeachingStep.OTHER_DRAWING,
            TeachingStep.OTHER_IMPEDANCE,
            TeachingStep.OTHER_CROSSOVER,
            TeachingStep.OTHER_SLOPE,
            TeachingStep.OTHER_SIZE,
            TeachingStep.OTHER_PAD,
            TeachingStep.BACK);
    private static final List<TeachingStep> BETWEEN =
            List.of(TeachingStep.FINISH, TeachingStep.DROP_LAST, TeachingStep.BACK);

    private SampleTeaching() {}

    static Map<String, TeachingState> all() {
        Map<String, TeachingState> all = new LinkedHashMap<>();
        all.put(
                "models",
                state(
                        Activity.MODELS,
                        "teach-ask-model",
                        List.of(),
                        null,
                        List.of(TeachingStep.TEACH, TeachingStep.NEW_MODEL)));
        all.put("drawing-unnamed", drawing(false));
        all.put("drawing", drawing(true));
        all.put(
                "unit-first",
                lesson("teach-ask-unit", List.of("SURF12"), at(0, false), null, List.of(TeachingStep.BACK)));
        all.put(
                "plug",
                lesson(
                        "teach-ask-plug",
                        List.of("MCH-000117", "1+ / 1-"),
                        plugged(at(2, false)),
                        null,
                        List.of(TeachingStep.SWEEP, TeachingStep.BACK)));
        all.put("sweep", sweeping());
        all.put(
                "left-out",
                lesson(
                        "teach-ask-unit",
                        List.of("SURF12"),
                        at(4, true),
                        new Message(ReadingState.FAULT, Reason.of("teach-left-out", "MCH-000111")),
                        BETWEEN));
        all.put(
                "good",
                lesson(
                        "teach-ask-unit",
                        List.of("SURF12"),
                        at(6, true),
                        new Message(ReadingState.OK, Reason.of("teach-taken", "MCH-000115")),
                        BETWEEN));
        all.put(
                "microphone-not-proved",
                lesson(
                        "teach-ask-unit",
                        List.of("SURF12"),
                        at(6, false),
                        new Message(ReadingState.WATCH, Reason.of("teach-taken-current", "MCH-000115")),
                        BETWEEN));
        all.put(
                "no-service",
                lesson(
                        "teach-ask-unit",
                        List.of("SURF12"),
                        at(6, false),
                        new Message(
                                ReadingState.FAULT,
                                Reason.of("teach-no-service", "no answer from the service at http://dock-office:8080")),
                        BETWEEN));
        all.put("safety-tests", safetyTests(all.get("models")));
        all.put("badge", signOn("teach-ask-badge", false));
        all.put("badge-without-sound", withoutSound(all.get("badge")));
        all.put("pin", signOn("teach-ask-pin", true));
        return all;
    }

    /** The powered model is marked, of which tests are due. */
    private static TeachingState safetyTests(TeachingState s) {
        return new TeachingState(
                s.activity(),
                s.models(),
                s.models().size() - 1,
                s.drawing(),
                s.lesson(),
                s.prompt(),
                s.message(),
                s.steps(),
                s.sweepShare(),
                s.secret(),
                s.busy());
    }

    /** Units were swept before the microphone was proved. */
    private static TeachingState withoutSound(TeachingState s) {
        return new TeachingState(
                s.activity(),
                s.models(),
                s.marked(),
                s.drawing(),
                s.lesson(),
                s.prompt(),
                Optional.of(new Message(
                        ReadingState.WATCH,
                        Reason.of(
                                "teach-no-sound",
                                "MCH-000110, MCH-000111, MCH-000112, MCH-000113, MCH-000114, MCH-000115"))),
                s.steps(),
                s.sweepShare(),
                s.secret(),
                s.busy());
    }

    private static List<ModelStanding> models() {
        List<ModelStanding> models = new ArrayList<>();
        for (int i = 0; i < SampleHouse.MODELS.size(); i++) {
            CabinetModel model = SampleHouse.MODELS.get(i);
            int units = i == 2 ? 0 : 5 + i;
            models.add(new ModelStanding(
                    model,
                    model.testPoints().stream()
                            .map(p -> new ModelStanding.Point(
                                    p.code(),
                                    units,
                                    units == 0
                                            ? Optional.empty()
                                            : Optional.of(new TaughtPoint(
                                                    model.code(),
                                                    p.code(),
                                                    1,
                                                    units,
                                                    Instant.parse("2031-09-30T14:05:00Z"),
                                                    "Rosa Marram"))))
                            .toList(),
                    12 + i,
                    4,
                    i,
                    i % 2,
                    model.feed() == Feed.POWERED ? new SafetyTests.Count(4, 1) : new SafetyTests.Count(0, 0)));
        }
        return models;
    }

    private static TeachingState state(
            Activity activity, String prompt, List<String> arguments, Message message, List<TeachingStep> steps) {
        return new TeachingState(
                activity,
                models(),
                1,
                Optional.empty(),
                Optional.empty(),
                Reason.of(prompt, arguments.toArray(String[]::new)),
                Optional.ofNullable(message),
                steps,
                Optional.empty(),
                false,
                false);
    }

    private static TeachingState drawing(boolean named) {
        List<TeachingStep> steps = new ArrayList<>(CHOICES);
        if (named) {
            steps.add(0, TeachingStep.BEGIN);
        }
        return new TeachingState(
                Activity.DRAWING,
                models(),
                1,
                Optional.of(new Drawing(NEW, named, 8, 1800, 12, EnclosureKind.VENTED, 1, 12, 6)),
                Optional.empty(),
                Reason.of(named ? "teach-ask-drawing" : "teach-ask-code", "SURF12"),
                named
                        ? Optional.empty()
                        : Optional.of(new Message(ReadingState.FAULT, Reason.of("teach-code-taken", "DUNE15B"))),
                steps,
                Optional.empty(),
                false,
                false);
    }

    private static TeachingState lesson(
            String prompt, List<String> arguments, LessonAtHand lesson, Message message, List<TeachingStep> steps) {
        return new TeachingState(
                Activity.UNITS,
                models(),
                1,
                Optional.empty(),
                Optional.of(lesson),
                Reason.of(prompt, arguments.toArray(String[]::new)),
                Optional.ofNullable(message),
                steps,
                Optional.empty(),
                false,
                false);
    }

    private static TeachingState sweeping() {
        return new TeachingState(
                Activity.UNITS,
                models(),
                1,
                Optional.empty(),
                Optional.of(plugged(at(2, false))),
                Reason.of("teach-ask-plug", "MCH-000117", "1+ / 1-"),
                Optional.empty(),
                List.of(),
                Optional.of(0.4),
                false,
                true);
    }

    private static TeachingState signOn(String prompt, boolean secret) {
        return new TeachingState(
                Activity.SIGN_ON,
                models(),
                1,
                Optional.empty(),
                Optional.of(at(6, true)),
                Reason.of(prompt, "B-2041"),
                secret
                        ? Optional.empty()
                        : Optional.of(new Message(ReadingState.FAULT, Reason.of("teach-not-allowed", "B-1007"))),
                List.of(TeachingStep.BACK),
                Optional.empty(),
                secret,
                false);
    }

    private static LessonAtHand plugged(LessonAtHand lesson) {
        return new LessonAtHand(
                lesson.model(),
                lesson.isNew(),
                lesson.units(),
                lesson.progress(),
                Optional.of(new AssetTag("MCH-000117")),
                Optional.of("1+ / 1-"),
                lesson.curve());
    }

    private static LessonAtHand at(int units, boolean oneBad) {
        List<UnitLine> lines = new ArrayList<>();
        for (int i = 0; i < units; i++) {
            boolean bad = oneBad && i == 1;
            lines.add(new UnitLine(
                    new AssetTag("MCH-00011" + i),
                    bad ? ReadingState.FAULT : ReadingState.OK,
                    bad ? Optional.of(Reason.of("suspect-driver-open", "HF", "")) : Optional.empty()));
        }
        int kept = units - (oneBad ? 1 : 0);
        List<Missed> missed = new ArrayList<>(List.of(
                new Missed(FaultKind.MAGNET_WEAK, "HF", 0.8),
                new Missed(FaultKind.SHORTED_TURNS, "HF", 2.1),
                new Missed(FaultKind.CONTACT_RESISTANCE, "HF", 4.9)));
        if (kept < 5) {
            missed.add(new Missed(FaultKind.LEAK, "box", 5.2));
            missed.add(new Missed(FaultKind.MAGNET_WEAK, "LF", 5.4));
            missed.add(new Missed(FaultKind.PART_DRIFTED, "R2", 5.5));
            missed.add(new Missed(FaultKind.WRONG_IMPEDANCE_PART, "HF", 5.8));
        }
        return new LessonAtHand(
                NEW,
                true,
                lines,
                units == 0
                        ? Optional.empty()
                        : Optional.of(new Progress(
                                kept, kept < 5 ? Grade.HARD_FAULTS : Grade.GOOD, 0.0042, 0.0016, 37, missed, 6, false)),
                Optional.empty(),
                Optional.empty(),
                units == 0 ? Optional.empty() : Optional.of(curve()));
    }

    private static CurvePicture curve() {
        double[] hz = new double[120];
        double[] ohm = new double[120];
        double[] low = new double[120];
        double[] high = new double[120];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = 20 * Math.pow(1000, i / 119.0);
            ohm[i] = 7
                    + 26 / (1 + Math.pow(6 * Math.log(hz[i] / 38), 2))
                    + 30 / (1 + Math.pow(5 * Math.log(hz[i] / 88), 2))
                    + 4 / (1 + Math.pow(2 * Math.log(hz[i] / 1200), 2));
            low[i] = ohm[i] * 0.93;
            high[i] = ohm[i] * 1.07;
        }
        return new CurvePicture("IN", DecidingCurve.IMPEDANCE, hz, ohm, hz, low, high, new double[0], 0, 0);
    }
}
