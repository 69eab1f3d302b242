package org.docksweep.sweep;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.OptionalInt;
import org.docksweep.fleet.TestPointKind;

/**
 * Reads a capture: deconvolution with the known sweep (Farina 2000; Novak, Lotton, Simon 2015), hum taken off, equal gates on voltage
 * and current, Z = V / I with its uncertainty, microphone response, and what is wrong with the capture. Immutable; the
 * same capture and settings give the same result to the last digit.
 */
public final class SweepAnalyser {
    /** Longest sweep analysed, in frames: bounds the memory a header can ask for. */
    public static final int MAX_SWEEP_FRAMES = 1 << 22;

    /** Share of an octave at both ends of a sweep that its fades make useless. */
    private static final double EDGE_OCTAVES = 1 / 24.0;

    /** Hum that is still there after it was taken off may move a curve by this share. */
    private static final double HUM_LIMIT = 0.02;

    private final AnalysisSettings settings;
    private final SoundReader sound;

    /** Makes an analyser with {@link AnalysisSettings#standard()}. */
    public SweepAnalyser() {
        this(AnalysisSettings.standard());
    }

    /**
     * Makes an analyser.
     *
     * @param settings settings
     */
    public SweepAnalyser(AnalysisSettings settings) {
        this(settings, null);
    }

    private SweepAnalyser(AnalysisSettings settings, SoundReader sound) {
        this.settings = java.util.Objects.requireNonNull(settings, "settings");
        this.sound = sound;
    }

    /**
     * The same, listening to more than the level.
     *
     * @param reader reads the microphone; its print comes with the acoustic curve
     * @return a new analyser
     */
    public SweepAnalyser hearing(SoundReader reader) {
        return new SweepAnalyser(settings, reader);
    }

    /**
     * The same with other settings.
     *
     * @param other settings
     * @return a new analyser
     */
    public SweepAnalyser withSettings(AnalysisSettings other) {
        return new SweepAnalyser(other, sound);
    }

    /**
     * The frequencies at which a sweep is read.
     *
     * @param signal the sweep
     * @return grid points a little inside the ends of the sweep
     */
    public static double[] gridOf(SweepSignal signal) {
        double edge = StrictMath.pow(2, EDGE_OCTAVES);
        return FrequencyGrid.within(signal.startHz() * edge, signal.stopHz() / edge);
    }

    /**
     * Reads a capture.
     *
     * @param capture the capture
     * @return what it says; a spoiled capture gives issues, not an exception
     * @throws IllegalArgumentException if the sweep is longer than {@link #MAX_SWEEP_FRAMES} or spans fewer than two
     *     grid points
     */
    public SweepAnalysis analyse(Capture capture) {
        try (Workspace workspace = Workspace.open()) {
            return analyse(capture, workspace);
        }
    }

    private SweepAnalysis analyse(Capture capture, Workspace workspace) {
        SweepSignal signal = capture.header().plan().signal();
        if (signal.frames() > MAX_SWEEP_FRAMES || gridOf(signal).length < 2) {
            throw new IllegalArgumentException("a sweep must have at most " + MAX_SWEEP_FRAMES
                    + " frames and span at least an eighth of an octave, but has " + signal.frames() + " frames from "
                    + signal.startHz() + " to " + signal.stopHz() + " Hz; use another plan");
        }
        List<SweepAnalysis.Issue> issues = RawCheck.issues(capture);
        boolean microphoneOnly = capture.header().testPointKind() == TestPointKind.LINE_INPUT;
        if (issues.stream().anyMatch(i -> !spoilsOnlyMicrophone(i, microphoneOnly))) {
            return spoiled(issues);
        }
        ChannelRole timing =
                microphoneOnly && !live(capture, ChannelRole.VOLTAGE) ? ChannelRole.MICROPHONE : ChannelRole.VOLTAGE;
        if (timing == ChannelRole.VOLTAGE) {
            OptionalInt guess = Latency.guess(capture, timing, workspace);
            SweepAnalysis analysis =
                    guess.isEmpty() ? null : analyse(capture, timing, guess.getAsInt(), true, issues, workspace);
            if (analysis != null) {
                return analysis;
            }
        }
        OptionalInt latency = Latency.find(capture, timing, workspace);
        if (latency.isEmpty()) {
            issues.add(noSweep(capture, timing, workspace));
            return spoiled(issues);
        }
        return analyse(capture, timing, latency.getAsInt(), false, issues, workspace);
    }

    /** Reads a capture of known delay; null when the delay was guessed and the capture shows that it is another. */
    private SweepAnalysis analyse(
            Capture capture,
            ChannelRole timing,
            int latency,
            boolean guessed,
            List<SweepAnalysis.Issue> issues,
            Workspace workspace) {
        boolean microphoneOnly = capture.header().testPointKind() == TestPointKind.LINE_INPUT;
        SweepSignal signal = capture.header().plan().signal();
        SweepPlan plan = capture.header().plan();
        int rate = signal.sampleRateHz();
        int end = plan.startFrame(plan.repeats() - 1) + latency + signal.frames();
        if (capture.frames() < end + Math.min(plan.tailFrames(), rate / 20)) {
            if (guessed) {
                return null;
            }
            issues.add(CaptureIssues.issue(QualityIssue.TOO_SHORT, "capture-too-short"));
            return spoiled(issues);
        }
        if (PreparedCapture.silenceFrames(plan, latency) < PreparedCapture.LEAST_SILENCE_S * rate) {
            if (guessed) {
                return null;
            }
            issues.add(CaptureIssues.issue(QualityIssue.TOO_SHORT, "capture-no-silence"));
            return spoiled(issues);
        }
        PreparedCapture prepared = PreparedCapture.of(capture, latency, workspace);
        if (guessed && !prepared.confirms(timing)) {
            return null;
        }
        RepeatCheck repeats = new RepeatCheck(prepared, settings);
        if (repeats.torn(capture)) {
            issues.add(CaptureIssues.issue(QualityIssue.TORN, "capture-torn"));
            return spoiled(issues);
        }
        return microphoneOnly
                ? acousticOnly(capture, prepared, repeats, issues)
                : electrical(capture, prepared, repeats, issues);
    }

    private SweepAnalysis electrical(
            Capture capture, PreparedCapture prepared, RepeatCheck repeats, List<SweepAnalysis.Issue> issues) {
        int v = prepared.channel(ChannelRole.VOLTAGE);
        int i = prepared.channel(ChannelRole.CURRENT);
        int count = prepared.plan.repeats();
        double[] grid = gridOf(prepared.signal);
        double[][] pairs = new double[2 * count][];
        for (int k = 0; k < count; k++) {
            pairs[2 * k] = prepared.responses[k][v];
            pairs[2 * k + 1] = prepared.responses[k][i];
        }
        GatedSpectrum[] spectra = GatedSpectrum.of(
                        pairs,
                        prepared.pad,
                        prepared.sampleRateHz,
                        grid,
                        f -> Gate.electrical(f, prepared.signal, settings))
                .pairs();
        boolean[] all = new boolean[count];
        Arrays.fill(all, true);
        double scaleRatioOhm =
                capture.unitsPerFullScale(ChannelRole.VOLTAGE) / capture.unitsPerFullScale(ChannelRole.CURRENT);
        LoadCheck first = new LoadCheck(ImpedanceEstimate.of(spectra, all, prepared), scaleRatioOhm, settings);
        SweepAnalysis.Load load = first.load();
        boolean[] dropped = new boolean[count];
        List<Double> dropouts = load == SweepAnalysis.Load.PRESENT ? repeats.dropouts(dropped) : List.of();
        boolean[] used = usable(dropped, repeats, issues);
        ImpedanceEstimate estimate = ImpedanceEstimate.of(spectra, used, prepared);
        LoadCheck check = new LoadCheck(estimate, scaleRatioOhm, settings);
        if (load == SweepAnalysis.Load.PRESENT && dropouts.isEmpty()) {
            compareRepeats(spectra, used, prepared, estimate, issues);
        }
        if (check.swapped()) {
            issues.add(0, CaptureIssues.issue(QualityIssue.CHANNELS_SWAPPED, "capture-channels-swapped"));
        } else if (load != SweepAnalysis.Load.SHORT && check.arrivingShare() < settings.quietLimit()) {
            issues.add(CaptureIssues.issue(
                    QualityIssue.TOO_QUIET,
                    "capture-too-quiet",
                    String.format(Locale.ROOT, "%.0f", 100 * check.arrivingShare())));
        }
        if (load == SweepAnalysis.Load.PRESENT && issues.isEmpty() && check.notPassive()) {
            issues.add(CaptureIssues.issue(QualityIssue.NOT_PASSIVE, "capture-not-passive"));
        }
        HumCheck.issue(prepared, ChannelRole.VOLTAGE, HUM_LIMIT).ifPresent(issues::add);
        if (load != SweepAnalysis.Load.OPEN) {
            HumCheck.issue(prepared, ChannelRole.CURRENT, HUM_LIMIT).ifPresent(issues::add);
        }
        boolean noisy = load == SweepAnalysis.Load.UNKNOWN
                || load == SweepAnalysis.Load.PRESENT && dropouts.isEmpty() && check.tooNoisy();
        if (noisy) {
            issues.add(CaptureIssues.issue(QualityIssue.NOISE, "capture-noise"));
        }
        double inconsistency = 0;
        if (load == SweepAnalysis.Load.PRESENT && dropouts.isEmpty()) {
            Causality.Result causality = estimate.causality();
            inconsistency = causality.relativeRms();
            if (issues.isEmpty() && causality.broken()) {
                issues.add(CaptureIssues.issue(QualityIssue.INCONSISTENT, "capture-inconsistent"));
            }
        }
        boolean spoiled = issues.stream().anyMatch(issue -> !spoilsOnlyMicrophone(issue, false));
        AcousticCurve acoustic = acoustic(capture, prepared, repeats, dropped);
        return new SweepAnalysis(
                spoiled ? null : estimate.curve(),
                acoustic,
                spoiled ? SweepAnalysis.Load.UNKNOWN : load,
                rms(prepared, v, used),
                rms(prepared, i, used),
                dropouts,
                inconsistency,
                issues);
    }

    private boolean[] usable(boolean[] dropped, RepeatCheck repeats, List<SweepAnalysis.Issue> issues) {
        boolean[] knockedV = repeats.knocked(ChannelRole.VOLTAGE, dropped);
        boolean[] knockedI = repeats.knocked(ChannelRole.CURRENT, dropped);
        int count = dropped.length;
        boolean[] used = new boolean[count];
        boolean[] unknocked = new boolean[count];
        for (int k = 0; k < count; k++) {
            unknocked[k] = !knockedV[k] && !knockedI[k];
            used[k] = unknocked[k] && !dropped[k];
        }
        if (any(used)) {
            return used;
        }
        if (any(unknocked)) {
            return unknocked;
        }
        issues.add(CaptureIssues.issue(QualityIssue.KNOCK, "capture-knock"));
        Arrays.fill(used, true);
        return used;
    }

    private void compareRepeats(
            GatedSpectrum[] spectra,
            boolean[] used,
            PreparedCapture prepared,
            ImpedanceEstimate mean,
            List<SweepAnalysis.Issue> issues) {
        ImpedanceEstimate before = null;
        for (int k = 0; k < used.length; k++) {
            if (!used[k]) {
                continue;
            }
            boolean[] alone = new boolean[used.length];
            alone[k] = true;
            ImpedanceEstimate estimate = ImpedanceEstimate.of(spectra, alone, prepared);
            if (before != null) {
                if (estimate.differsFrom(before)) {
                    issues.add(CaptureIssues.issue(QualityIssue.REPEATS_DIFFER, "capture-repeats-differ"));
                    return;
                }
                mean.widenByScatter(before, estimate);
            }
            before = estimate;
        }
    }

    private SweepAnalysis acousticOnly(
            Capture capture, PreparedCapture prepared, RepeatCheck repeats, List<SweepAnalysis.Issue> issues) {
        boolean[] knocked = repeats.knocked(ChannelRole.MICROPHONE, new boolean[prepared.plan.repeats()]);
        HumCheck.issue(prepared, ChannelRole.MICROPHONE, HUM_LIMIT).ifPresent(issues::add);
        boolean[] calm = not(knocked);
        if (!any(calm)) {
            issues.add(CaptureIssues.issue(QualityIssue.KNOCK, "capture-knock-microphone"));
        }
        AcousticCurve curve =
                issues.isEmpty() || onlyKnocked(issues) ? heard(prepared, calm, new boolean[calm.length]) : null;
        int v = prepared.channel(ChannelRole.VOLTAGE);
        double volts = v < 0 ? 0 : rms(prepared, v, calm);
        return new SweepAnalysis(null, curve, SweepAnalysis.Load.UNKNOWN, volts, 0, List.of(), issues);
    }

    private static boolean onlyKnocked(List<SweepAnalysis.Issue> issues) {
        return issues.stream().allMatch(i -> i.kind() == QualityIssue.KNOCK);
    }

    /** The curve with its print; the ear finds its way around knocks, plain averaging needs sweeps free of them. */
    private AcousticCurve heard(PreparedCapture prepared, boolean[] calm, boolean[] dropped) {
        if (sound == null) {
            return any(calm) ? AcousticResponse.of(prepared, calm).curve() : null;
        }
        AcousticResponse response =
                AcousticResponse.of(prepared, any(not(dropped)) ? not(dropped) : not(new boolean[dropped.length]));
        return response.curve().with(sound.read(new MicrophoneTake(prepared, response, calm)));
    }

    private AcousticCurve acoustic(Capture capture, PreparedCapture prepared, RepeatCheck repeats, boolean[] dropped) {
        if (prepared.channel(ChannelRole.MICROPHONE) < 0 || RawCheck.clipped(capture, ChannelRole.MICROPHONE)) {
            return null;
        }
        boolean[] calm = not(repeats.knocked(ChannelRole.MICROPHONE, dropped));
        for (int k = 0; k < calm.length; k++) {
            calm[k] &= !dropped[k];
        }
        return heard(prepared, calm, dropped);
    }

    private static SweepAnalysis.Issue noSweep(Capture capture, ChannelRole timing, Workspace workspace) {
        if (timing == ChannelRole.MICROPHONE) {
            return CaptureIssues.issue(QualityIssue.SILENT, "capture-no-sound");
        }
        boolean current = live(capture, ChannelRole.CURRENT)
                && Latency.find(capture, ChannelRole.CURRENT, workspace).isPresent();
        return current
                ? CaptureIssues.dead(ChannelRole.VOLTAGE)
                : CaptureIssues.issue(QualityIssue.SILENT, "capture-silent");
    }

    private static boolean live(Capture capture, ChannelRole role) {
        return capture.has(role) && !RawCheck.dead(capture, role);
    }

    private static boolean spoilsOnlyMicrophone(SweepAnalysis.Issue issue, boolean microphoneOnly) {
        return !microphoneOnly && issue.reason().key().endsWith("microphone");
    }

    private static SweepAnalysis spoiled(List<SweepAnalysis.Issue> issues) {
        return new SweepAnalysis(null, null, SweepAnalysis.Load.UNKNOWN, 0, 0, List.of(), issues);
    }

    private static double rms(PreparedCapture prepared, int channel, boolean[] used) {
        double sum = 0;
        long count = 0;
        for (int k = 0; k < used.length; k++) {
            if (used[k]) {
                sum += prepared.energy(channel, prepared.start(k), prepared.sweepFrames);
                count += prepared.framesOf(channel, k);
            }
        }
        return count == 0 ? 0 : Math.sqrt(sum / count);
    }

    private static boolean any(boolean[] flags) {
        for (boolean flag : flags) {
            if (flag) {
                return true;
            }
        }
        return false;
    }

    private static boolean[] not(boolean[] flags) {
        boolean[] result = new boolean[flags.length];
        for (int k = 0; k < flags.length; k++) {
            result[k] = !flags[k];
        }
        return result;
    }
}
