package org.docksweep.kiosk.screens;

import static org.mockito.Mockito.mock;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import javax.swing.JComponent;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.acoustic.MicrophoneReading;
import org.docksweep.fleet.AssetTag;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.kiosk.dock.DockActions;
import org.docksweep.kiosk.dock.DockState;
import org.docksweep.kiosk.rig.ChannelLevel;
import org.docksweep.kiosk.rig.CheckChart;
import org.docksweep.kiosk.rig.CheckReading;
import org.docksweep.kiosk.rig.ContactTrend;
import org.docksweep.kiosk.rig.PlugTrend;
import org.docksweep.kiosk.rig.RigDeskActions;
import org.docksweep.kiosk.rig.RigDeskState;
import org.docksweep.kiosk.rig.RigDeskState.Message;
import org.docksweep.kiosk.rig.RigDeskState.Mode;
import org.docksweep.kiosk.rig.RigDeskState.Step;
import org.docksweep.kiosk.rig.RigDeskState.Walk;
import org.docksweep.kiosk.rig.RigEntry;
import org.docksweep.kiosk.rig.RigSetUp;
import org.docksweep.kiosk.rig.RigSound;
import org.docksweep.kiosk.rig.SetUpField;
import org.docksweep.kiosk.rig.StudyWords;
import org.docksweep.kiosk.rig.WalkStep;
import org.docksweep.kiosk.rig.audio.AudioDevices;
import org.docksweep.rigcal.RepeatabilityStudy;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.rigcal.RigStudy;

/** States of the rig page for pictures and tests of room. */
final class RigSamples {
    private static final Instant NOW = Instant.parse("2026-05-08T19:10:00Z");
    private static final List<String> CHECKS = List.of("4.7 \u03a9", "22 \u03a9 \u2016 4.7 \u00b5F");
    private static final List<AudioDevices.Device> DEVICES = List.of(new AudioDevices.Device(
            "Interface [plughw:1,0]",
            new AudioDevices.Offer(2, List.of(16, 24), List.of(44100, 48000)),
            new AudioDevices.Offer(4, List.of(16, 24), List.of(44100, 48000))));
    private static final RigSetUp SET_UP = new RigSetUp(Map.of())
            .with(SetUpField.PLAY_DEVICE, "Interface [plughw:1,0]")
            .with(SetUpField.CAPTURE_DEVICE, "Interface [plughw:1,0]")
            .with(SetUpField.OUTPUT_VOLTS, "10")
            .with(SetUpField.VOLTAGE_FULL_SCALE, "20")
            .with(SetUpField.SENSE_OHM, "0.47")
            .with(SetUpField.SENSE_VOLTS, "1.5")
            .with(SetUpField.INPUT_3, "microphone")
            .with(SetUpField.MICROPHONE_PASCALS, "40")
            .with(SetUpField.AMPLIFIER, "grounded");
    private static final List<ChannelLevel> LEVELS = List.of(
            new ChannelLevel("1", -20.3, false),
            new ChannelLevel("2", -4.1, false),
            new ChannelLevel("3", 0, true),
            new ChannelLevel("4", ChannelLevel.SILENT_DBFS, false));

    private RigSamples() {}

    static Map<String, RigDeskState> all() {
        Map<String, RigDeskState> all = new LinkedHashMap<>();
        all.put("new", overview(Reason.of("dock-rig-not-calibrated"), ReadingState.FAULT, false, 0, 0));
        all.put("passed", overview(Reason.of("dock-rig-passed", "19:05"), ReadingState.OK, true, 24, 0));
        all.put("few", overview(Reason.of("dock-rig-check-due", "20:05"), ReadingState.WATCH, true, 3, 0));
        all.put("drifts", overview(Reason.of("dock-rig-drifts", "19:05"), ReadingState.WATCH, true, 30, 0.0001));
        all.put("failed", overview(Reason.of("dock-rig-failed", "19:05"), ReadingState.FAULT, true, 24, 0));
        all.put("old", overview(Reason.of("dock-rig-check-old", "06:12"), ReadingState.FAULT, true, 9, 0));
        for (WalkStep step : WalkStep.CALIBRATION) {
            all.put("walk-" + name(step), walk(true, step, null, false));
        }
        all.put("walk-plug", walk(false, WalkStep.PLUG, null, false));
        all.put("walk-sounding", walk(true, WalkStep.SHORT, null, true));
        all.put("walk-refused", walk(true, WalkStep.OPEN, Reason.of("rigpage-open-saw-load", "10.3"), false));
        all.put(
                "walk-other",
                walk(
                        false,
                        WalkStep.CHECK_RESISTOR,
                        Reason.of("rigpage-check-saw-other", CHECKS.get(0), "10.0"),
                        false));
        all.put(
                "walk-unbalanced",
                walk(true, WalkStep.COMMON_MODE, Reason.of("rigpage-common-mode-bad", "-47", "-60"), false));
        all.put("plug-worn", overview(Reason.of("dock-rig-plug-worn", "19:05"), ReadingState.WATCH, true, 26, 0));
        all.put("study", studying(3, null));
        all.put("study-refused", studying(0, Reason.of("rigpage-study-other-part", CHECKS.get(0))));
        all.put("study-good", studying(8, StudyWords.of(study(0.0004).study())));
        all.put("study-poor", studying(8, StudyWords.of(study(0.02).study())));
        all.put("sound-new", listening("", 0, null));
        all.put("sound", listening("MCH-000417", 0, null));
        all.put("sound-moved", listening("MCH-000417", 0, Reason.of("mic-farther", "31")));
        all.put("sound-capsule", listening("MCH-000417", 0, Reason.of("mic-capsule", "\u22123.1 dB", "5012")));
        all.put("sound-accepting", listening("MCH-000417", 0, Reason.of("mic-accepting", "MCH-000417")));
        all.put("sound-passed", listening("MCH-000417", 1, good(WalkStep.SOUND)));
        all.put("sound-failed", listening("MCH-000417", 1, Reason.of("mic-gain", "+4.0 dB")));
        all.put("mic-none", overview(Reason.of("dock-mic-not-accepted"), ReadingState.WATCH, true, 5, 0));
        all.put("mic-failed", overview(Reason.of("dock-mic-failed", "19:05"), ReadingState.WATCH, true, 26, 0));
        all.put("mic-old", overview(Reason.of("dock-mic-old", "06:12"), ReadingState.WATCH, true, 24, 0));
        all.put("mic-drifts", overview(Reason.of("dock-mic-drifts", "19:05"), ReadingState.WATCH, true, 30, 0));
        all.put("walk-done", finished(true));
        all.put("walk-failed", finished(false));
        all.put("setup", setUp(SET_UP));
        all.put("setup-wrong", setUp(SET_UP.with(SetUpField.INPUT_2, "voltage").with(SetUpField.OUTPUT_VOLTS, "")));
        all.put("setup-gone", setUp(SET_UP.with(SetUpField.PLAY_DEVICE, "Other interface [plughw:2,0]")));
        all.put("levels", levels());
        return all;
    }

    private static String name(WalkStep step) {
        return step.name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }

    private static RigDeskState overview(
            Reason standing, ReadingState state, boolean calibrated, int checks, double drift) {
        List<CheckChart> charts = new ArrayList<>();
        if (checks > 0) {
            charts.add(chart(CHECKS.get(0), checks, 7, drift));
            charts.add(chart(CHECKS.get(1), checks, 8, 0));
        }
        return new RigDeskState(
                Mode.OVERVIEW,
                standing,
                state,
                Optional.empty(),
                calibrated
                        ? Optional.of(new RigEntry.Calibrated(NOW, "A. Person", 10, RigCalibration.nominal("audio")))
                        : Optional.empty(),
                checks == 0
                        ? Optional.empty()
                        : Optional.of(new RigEntry.Checked(
                                NOW.minusSeconds(300),
                                "A. Person",
                                List.of(new CheckReading(
                                        CHECKS.get(0),
                                        0.0004,
                                        standing.key().equals("dock-rig-failed") ? 0.012 : 0.001,
                                        19500,
                                        0.005)))),
                calibrated ? Optional.of(new RigEntry.CommonMode(NOW, "A. Person", -71.6)) : Optional.empty(),
                charts,
                checks == 0 ? List.of() : List.of(contact(checks, drift > 0)),
                checks == 0
                        ? List.of()
                        : List.of(plug(2 * checks, standing.key().equals("dock-rig-plug-worn"))),
                checks == 24 ? Optional.of(study(0.0004)) : Optional.empty(),
                sound(standing.key(), checks),
                calibrated ? LEVELS.subList(0, 2) : List.of(),
                false,
                0,
                Optional.empty(),
                SET_UP,
                DEVICES,
                true);
    }

    private static CheckChart chart(String name, int checks, long seed, double drift) {
        SplittableRandom random = new SplittableRandom(seed);
        List<Instant> at = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        for (int i = 0; i < checks; i++) {
            at.add(NOW.minus(Duration.ofDays(checks - i)));
            double late = Math.max(0, i - 20);
            shares.add(0.0004 + 0.0005 * (random.nextDouble() + random.nextDouble() - 1) + drift * late);
        }
        return CheckChart.of(name, at, shares);
    }

    /** Checks of the microphone as they go with what the strip says. */
    private static RigSound sound(String standing, int checks) {
        if (checks == 0 || standing.equals("dock-mic-not-accepted")) {
            return RigSound.NONE;
        }
        boolean failed = standing.equals("dock-mic-failed");
        boolean drifts = standing.equals("dock-mic-drifts");
        SplittableRandom random = new SplittableRandom(9);
        List<Instant> at = new ArrayList<>();
        List<Double> gains = new ArrayList<>();
        List<Double> ways = new ArrayList<>();
        List<Double> shapes = new ArrayList<>();
        for (int i = 0; i < checks; i++) {
            boolean newest = i == checks - 1;
            at.add(NOW.minus(Duration.ofDays(checks - i)));
            gains.add(0.3 * (random.nextDouble() - 0.5) + (newest && failed ? 4 : 0));
            ways.add(0.02 * (random.nextDouble() - 0.5));
            shapes.add(0.4 * (random.nextDouble() - 0.5) + (newest && drifts ? 1.3 : 0));
        }
        AssetTag tag = new AssetTag("MCH-000417");
        MicrophoneCheck check = new MicrophoneCheck(
                failed ? 4 : 0.1, 0.2, 5012, 0.01, 1, failed ? MicrophoneCheck.Fault.GAIN : MicrophoneCheck.Fault.NONE);
        return new RigSound(
                Optional.of(new RigEntry.SoundAccepted(
                        NOW.minus(Duration.ofDays(40)),
                        "A. Person",
                        tag,
                        new MicrophoneReading(0.003, List.of(new MicrophoneReading.Band(1000, 10, -40, 8))))),
                Optional.of(new RigEntry.SoundChecked(NOW.minusSeconds(300), "A. Person", tag, check)),
                List.of(
                        CheckChart.of(RigSound.GAIN, at, gains),
                        CheckChart.of(RigSound.WAY, at, ways),
                        CheckChart.of(RigSound.CAPSULE, at, shapes)));
    }

    /** A check of the microphone before its sweep or after it. */
    private static RigDeskState listening(String cabinet, int at, Reason words) {
        ReadingState state = words == null
                ? ReadingState.NOT_JUDGED
                : words.key().equals("mic-good")
                        ? ReadingState.OK
                        : words.key().equals("mic-accepting") ? ReadingState.NOT_JUDGED : ReadingState.FAULT;
        Step step = new Step(WalkStep.SOUND, state, Optional.ofNullable(words));
        Walk walk = new Walk(false, List.of(step), at, 8, List.of(cabinet), "1+ / 1-");
        Reason said = at == 0 ? (cabinet.isEmpty() ? Reason.of("mic-scan-cabinet") : words) : null;
        return walking(walk, said, false);
    }

    private static ContactTrend contact(int count, boolean worn) {
        List<Instant> at = new ArrayList<>();
        List<Double> ohms = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < count; i++) {
            at.add(NOW.minus(Duration.ofDays(count - i)));
            ohms.add(0.002 + 0.003 * random.nextDouble() + (worn ? 0.001 * i : 0));
        }
        return new ContactTrend("1+ / 1-", at, ohms);
    }

    private static PlugTrend plug(int count, boolean worn) {
        List<RigEntry.PlugIn> plugIns = new ArrayList<>();
        SplittableRandom random = new SplittableRandom(4);
        for (int i = 0; i < count; i++) {
            plugIns.add(new RigEntry.PlugIn(
                    NOW.minusSeconds(60L * (count - i)),
                    "A. Person",
                    new AssetTag(String.format(java.util.Locale.ROOT, "MCH-%06d", 100 + i)),
                    "IN",
                    "1+ / 1-",
                    0.03 + 0.12 * random.nextDouble() + (worn && i > count - 14 ? 0.13 : 0),
                    0.02));
        }
        return new PlugTrend("1+ / 1-", plugIns);
    }

    /** A study whose level was heard, with a relative standard deviation of |Z|. */
    private static RigEntry.Studied study(double share) {
        SplittableRandom random = new SplittableRandom(5);
        double[][][] readings = new double[10][4][2];
        for (double[][] part : readings) {
            for (double[] plugIn : part) {
                double plug = 2 * random.nextDouble() - 1;
                for (int r = 0; r < plugIn.length; r++) {
                    plugIn[r] = plug + 0.3 * random.nextDouble();
                }
            }
        }
        RepeatabilityStudy unit = RepeatabilityStudy.of(readings);
        RepeatabilityStudy impedance = times(unit, share);
        return new RigEntry.Studied(
                NOW,
                "A. Person",
                CHECKS,
                new RigStudy(
                        times(unit, 0.03),
                        impedance,
                        times(unit, 0.4),
                        2,
                        4,
                        2,
                        new RigRepeatability(impedance.gaugeSpread(), 0.02, 0.25, 6)));
    }

    private static RepeatabilityStudy times(RepeatabilityStudy s, double factor) {
        return new RepeatabilityStudy(
                s.mean() * factor,
                s.repeatability() * factor,
                s.reproducibility() * factor,
                s.partSpread() * factor,
                s.repeatabilityLow() * factor,
                s.repeatabilityHigh() * factor,
                s.operatorSignificance(),
                s.repeatFreedom());
    }

    /** A repeatability study at a step; words belong to that step, or to the last one when all are done. */
    private static RigDeskState studying(int at, Reason words) {
        List<String> names = List.of("MCH-000117", CHECKS.get(1));
        List<Step> views = new ArrayList<>();
        for (int i = 0; i < 8; i++) {
            boolean told = words != null && i == Math.min(at, 7);
            boolean wrong = words != null && at < 8;
            views.add(new Step(
                    WalkStep.STUDY.get(i % 2),
                    told && wrong
                            ? ReadingState.FAULT
                            : told && words.key().contains("wide")
                                    ? ReadingState.WATCH
                                    : i < at ? ReadingState.OK : ReadingState.NOT_JUDGED,
                    told
                            ? Optional.of(words)
                            : i < at
                                    ? Optional.of(Reason.of(
                                            "rigpage-study-taken", names.get(i % 2), Integer.toString(i / 2 + 1), "4"))
                                    : Optional.empty()));
        }
        return walking(new Walk(false, views, at, 8, names, "1+ / 1-"), at < 8 ? words : null, false);
    }

    private static RigDeskState walk(boolean calibrating, WalkStep step, Reason refused, boolean sounding) {
        List<WalkStep> steps = calibrating ? WalkStep.CALIBRATION : WalkStep.CHECK;
        int at = steps.indexOf(step);
        List<Step> views = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            views.add(
                    i < at
                            ? new Step(steps.get(i), ReadingState.OK, Optional.of(good(steps.get(i))))
                            : i == at && refused != null
                                    ? new Step(step, ReadingState.FAULT, Optional.of(refused))
                                    : new Step(steps.get(i), ReadingState.NOT_JUDGED, Optional.empty()));
        }
        return walking(new Walk(calibrating, views, at, 10, CHECKS, "1+ / 1-"), refused, sounding);
    }

    private static RigDeskState walking(Walk walk, Reason refused, boolean sounding) {
        boolean passed = walk.finished() && walk.steps().stream().noneMatch(step -> step.state() == ReadingState.FAULT);
        return new RigDeskState(
                Mode.WALK,
                passed ? Reason.of("dock-rig-passed", "19:10") : Reason.of("dock-rig-not-checked"),
                passed ? ReadingState.OK : ReadingState.FAULT,
                Optional.ofNullable(refused).map(r -> new Message(r, ReadingState.FAULT)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                RigSound.NONE,
                LEVELS.subList(0, 2),
                sounding,
                sounding ? 0.45 : 0,
                Optional.of(walk),
                SET_UP,
                DEVICES,
                true);
    }

    private static Reason good(WalkStep step) {
        return switch (step) {
            case COMMON_MODE -> Reason.of("rigpage-common-mode-good", "-72", "-60");
            case OPEN -> Reason.of("rigpage-open-good");
            case SHORT -> Reason.of("rigpage-short-good", "0.15");
            case LOAD -> Reason.of("rigpage-load-good", "10.2", "10.0");
            case PLUG -> Reason.of("rigpage-plug-good", "3.1");
            case CHECK_RESISTOR -> Reason.of("rigpage-check-good", CHECKS.get(0), "0.11", "19500", "0.5");
            case CHECK_NETWORK -> Reason.of("rigpage-check-good", CHECKS.get(1), "0.20", "18000", "0.5");
            case SOUND -> Reason.of("mic-good", "+0.1 dB", "\u22120.4 dB", "1");
            case STUDY_FIRST, STUDY_SECOND -> Reason.of("rigpage-study-taken", CHECKS.get(0), "2", "4");
        };
    }

    private static RigDeskState finished(boolean passed) {
        List<Step> views = new ArrayList<>();
        for (WalkStep step : WalkStep.CALIBRATION) {
            views.add(new Step(step, ReadingState.OK, Optional.of(good(step))));
        }
        if (!passed) {
            views.set(
                    5,
                    new Step(
                            WalkStep.CHECK_NETWORK,
                            ReadingState.FAULT,
                            Optional.of(Reason.of("rigpage-check-bad", CHECKS.get(1), "1.20", "18000", "0.5"))));
        }
        return walking(new Walk(true, views, views.size(), 10, CHECKS, "1+ / 1-"), null, false);
    }

    private static RigDeskState setUp(RigSetUp setUp) {
        return new RigDeskState(
                Mode.SET_UP,
                Reason.of("dock-rig-not-calibrated"),
                ReadingState.FAULT,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                RigSound.NONE,
                List.of(),
                false,
                0,
                Optional.empty(),
                setUp,
                DEVICES,
                true);
    }

    private static RigDeskState levels() {
        return new RigDeskState(
                Mode.SET_UP,
                Reason.of("dock-rig-not-calibrated"),
                ReadingState.FAULT,
                Optional.of(new Message(Reason.of("rigpage-listening-tone"), ReadingState.NOT_JUDGED)),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                List.of(),
                Optional.empty(),
                RigSound.NONE,
                LEVELS,
                true,
                0,
                Optional.empty(),
                SET_UP,
                DEVICES,
                true);
    }

    /** The dock's strip says of the rig what the page says. */
    private static DockState standing(RigDeskState state) {
        DockState ready = SampleStates.named("ready");
        DockState.Strip strip = ready.strip();
        return new DockState(
                ready.phase(),
                new DockState.Strip(
                        strip.siteName(),
                        state.standing(),
                        state.standingState(),
                        strip.waitingToSend(),
                        strip.serviceReachable(),
                        strip.operator(),
                        NOW),
                ready.returns(),
                ready.scans(),
                ready.notice(),
                ready.cabinet(),
                ready.visualDamage(),
                ready.curve(),
                ready.progress(),
                ready.answer());
    }

    /** The whole window with the rig page up. */
    static JComponent window(RigDeskState state, ScreenSettings settings, Texts texts) {
        Sizes sizes = new Sizes(settings.scale());
        DockActions dock = mock(DockActions.class);
        KioskPane dockPane = new KioskPane(dock, SampleStates.named("ready"), SampleHouse.MODELS, sizes, texts);
        RigPane rig = new RigPane(mock(RigDeskActions.class), state, sizes, texts);
        Page page = new Page() {
            @Override
            public PageName name() {
                return PageName.RIG;
            }

            @Override
            public JComponent component() {
                return rig;
            }

            @Override
            public JComponent keyTarget() {
                return rig.entry();
            }

            @Override
            public boolean perform(Command command) {
                return rig.perform(command);
            }

            @Override
            public void shown(boolean up) {
                // Nothing runs behind it.
            }
        };
        WindowPane window = new WindowPane(dock, dockPane, List.of(page), standing(state), sizes, texts);
        window.open(PageName.RIG);
        return window;
    }
}
