package org.docksweep.kiosk.rig;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.docksweep.fleet.Reason;
import org.docksweep.gate.ReadingState;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.rigcal.RigRepeatability;

/** How a rig stands now, by its book: nothing is swept without a calibration and a passed check of this shift. */
public final class RigStandings implements Supplier<RigStanding> {
    /** A check holds for a shift. */
    public static final Duration SHIFT = Duration.ofHours(12);

    /** So long before a check runs out it is called due. */
    private static final Duration DUE = Duration.ofHours(1);

    /** Clocks of one machine differ by less than this after a correction. */
    static final Duration CLOCK_SLACK = Duration.ofMinutes(10);

    private final RigBook book;
    private final Clock clock;
    private final DateTimeFormatter time;

    /**
     * Prepares.
     *
     * @param book book of the rig
     * @param clock time
     * @param zone zone of the site, for the words on the strip
     */
    public RigStandings(RigBook book, Clock clock, ZoneId zone) {
        this.book = book;
        this.clock = clock;
        this.time = DateTimeFormatter.ofPattern("HH:mm").withZone(zone);
    }

    @Override
    public RigStanding get() {
        Optional<RigEntry.Calibrated> calibrated = book.calibrationInForce();
        if (calibrated.isEmpty()) {
            // Nothing is corrected, and nothing is swept.
            return new RigStanding(
                    Reason.of("dock-rig-not-calibrated"),
                    ReadingState.FAULT,
                    raw -> raw,
                    Reason.of("dock-rig-calibrate-first"),
                    RigRepeatability.UNKNOWN,
                    microphone().doubt());
        }
        RigCalibration calibration = calibrated.get().calibration();
        Optional<RigEntry.Checked> checked = checkOf(book.entries());
        if (checked.isEmpty()) {
            return fault(calibration, "dock-rig-not-checked", "dock-rig-check-first");
        }
        RigEntry.Checked check = checked.get();
        if (!check.passed()) {
            return fault(calibration, "dock-rig-failed", "dock-rig-check-failed", time.format(check.at()));
        }
        Duration age = Duration.between(check.at(), clock.instant());
        if (age.compareTo(SHIFT) > 0 || age.compareTo(CLOCK_SLACK.negated()) < 0) {
            return fault(calibration, "dock-rig-check-old", "dock-rig-check-again", time.format(check.at()));
        }
        if (CheckChart.of(book).stream().anyMatch(CheckChart::signalsNow)) {
            return watch(calibration, "dock-rig-drifts", check.at());
        }
        if (PlugTrend.of(book).stream().anyMatch(PlugTrend::worn)) {
            return watch(calibration, "dock-rig-plug-worn", check.at());
        }
        MicrophoneStanding microphone = microphone();
        if (microphone.strip().isPresent()) {
            return sweeping(microphone.strip().get(), ReadingState.WATCH, calibration);
        }
        if (age.compareTo(SHIFT.minus(DUE)) > 0) {
            return watch(calibration, "dock-rig-check-due", check.at().plus(SHIFT));
        }
        return sweeping(Reason.of("dock-rig-passed", time.format(check.at())), ReadingState.OK, calibration);
    }

    /** The newest check, if no calibration came after it. */
    private static Optional<RigEntry.Checked> checkOf(List<RigEntry> entries) {
        RigEntry.Checked newest = null;
        for (RigEntry entry : entries) {
            if (entry instanceof RigEntry.Calibrated) {
                newest = null;
            } else if (entry instanceof RigEntry.Checked check) {
                newest = check;
            }
        }
        return Optional.ofNullable(newest);
    }

    private RigStanding fault(RigCalibration calibration, String words, String refusal, String... arguments) {
        return new RigStanding(
                Reason.of(words, arguments),
                ReadingState.FAULT,
                calibration::correct,
                Reason.of(refusal),
                repeatability(),
                microphone().doubt());
    }

    private RigStanding watch(RigCalibration calibration, String words, Instant at) {
        return sweeping(Reason.of(words, time.format(at)), ReadingState.WATCH, calibration);
    }

    private RigStanding sweeping(Reason words, ReadingState state, RigCalibration calibration) {
        return new RigStanding(
                words,
                state,
                calibration::correct,
                Reason.of("dock-rig-check-failed"),
                repeatability(),
                microphone().doubt());
    }

    private MicrophoneStanding microphone() {
        return MicrophoneStanding.of(book, clock.instant(), time);
    }

    private RigRepeatability repeatability() {
        return book.studyInForce().map(studied -> studied.study().summary()).orElse(RigRepeatability.UNKNOWN);
    }
}
