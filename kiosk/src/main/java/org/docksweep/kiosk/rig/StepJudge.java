package org.docksweep.kiosk.rig;

import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.docksweep.fleet.Reason;
import org.docksweep.rigcal.CheckStandard;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.QualityIssue;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepAnalysis.Load;
import org.hipparchus.complex.Complex;

/**
 * Says at once whether a capture shows what its step asked for. What a wrong part looks like is common practice, no
 * source: nobody mixes up parts that differ by less than a fifth, since standards are chosen apart.
 */
public final class StepJudge {
    /** A standard that reads further off is another part, or the rig is broken. */
    static final double OTHER_PART_SHARE = 0.2;

    /** A short lead with its plugs has less; before the calibration nothing is taken off. */
    private static final double SHORT_OHM = 2;

    /** A short behind the calibration reads contact only. */
    private static final double PLUG_OHM = 0.5;

    /** A plain resistor reads the same at all frequencies. */
    private static final double FLAT_SHARE = 0.1;

    private static final double MID_FROM_HZ = 500;
    private static final double MID_TO_HZ = 2000;
    private static final double FLAT_FROM_HZ = 50;
    private static final double FLAT_TO_HZ = 10_000;
    private static final double CONTACT_TO_HZ = 1000;

    /** Where both wires really lie on one node, even poor resistors reach this. */
    private static final double WIRES_DB = -40;

    private static final double NOTHING_DB = -120;
    private static final int BAND_POINTS = 8;

    /** What says nothing of an open: too little current is what an open is. */
    private static final Set<QualityIssue> HARMLESS_AT_OPEN = Set.of(
            QualityIssue.NOISE, QualityIssue.CHANNEL_DEAD, QualityIssue.NOT_PASSIVE, QualityIssue.REPEATS_DIFFER);

    private final StandardSet standards;
    private final double senseOhm;
    private final double commonModeLimitDb;

    /**
     * What a capture said of its step.
     *
     * @param accepted whether the walk goes on
     * @param words what was seen; when not accepted, what to do
     * @param curve raw curve, or null
     * @param check reading of a check standard, or null
     * @param value contact in ohm or common mode in decibel; NaN for other steps
     */
    public record Judged(boolean accepted, Reason words, ImpedanceCurve curve, CheckReading check, double value) {}

    /**
     * Prepares.
     *
     * @param standards standards of the rig
     * @param senseOhm sense resistor in ohm
     * @param grounded whether the amplifier's low side is grounded, so that less common mode is borne
     */
    public StepJudge(StandardSet standards, double senseOhm, boolean grounded) {
        this.standards = standards;
        this.senseOhm = senseOhm;
        this.commonModeLimitDb = grounded ? -60 : -50;
    }

    /**
     * Judges a step.
     *
     * @param step the step
     * @param analysis its capture
     * @param shorted raw curve of the short; needed by LOAD
     * @param calibration calibration; needed by PLUG and the checks
     * @return what it says
     */
    public Judged judge(
            WalkStep step,
            SweepAnalysis analysis,
            Optional<ImpedanceCurve> shorted,
            Optional<RigCalibration> calibration) {
        boolean open = step == WalkStep.OPEN || step == WalkStep.COMMON_MODE;
        Optional<SweepAnalysis.Issue> spoiled = analysis.issues().stream()
                .filter(i -> !open || !HARMLESS_AT_OPEN.contains(i.kind()))
                .findFirst();
        if (spoiled.isPresent()) {
            return refused(spoiled.get().reason());
        }
        return switch (step) {
            case COMMON_MODE -> commonMode(analysis);
            case OPEN -> open(analysis);
            case SHORT -> shorted(analysis);
            case LOAD -> load(analysis, shorted.orElseThrow());
            case PLUG -> plug(analysis, calibration.orElseThrow());
            case CHECK_RESISTOR -> check(analysis, calibration.orElseThrow(), 0);
            case CHECK_NETWORK -> check(analysis, calibration.orElseThrow(), 1);
            case STUDY_FIRST, STUDY_SECOND, SOUND ->
                throw new IllegalArgumentException("step " + step + " has no standard to be judged by");
        };
    }

    private Judged commonMode(SweepAnalysis analysis) {
        double db = analysis.impedance() == null ? NOTHING_DB : commonModeDb(analysis.impedance());
        String seen = String.format(Locale.ROOT, "%.0f", db);
        String limit = String.format(Locale.ROOT, "%.0f", commonModeLimitDb);
        if (db > WIRES_DB) {
            return new Judged(false, Reason.of("rigpage-common-mode-wires", seen), null, null, db);
        }
        boolean good = db <= commonModeLimitDb;
        return new Judged(
                good,
                Reason.of(good ? "rigpage-common-mode-good" : "rigpage-common-mode-bad", seen, limit),
                null,
                null,
                db);
    }

    /**
     * Voltage that the current input still sees over the voltage input's, Rs / |Z|, worst third of an octave. Points are
     * averaged as complex numbers, so that noise does not count as a signal.
     */
    private double commonModeDb(ImpedanceCurve raw) {
        double worst = 0;
        for (int from = 0; from + BAND_POINTS <= raw.size(); from += BAND_POINTS / 2) {
            Complex sum = Complex.ZERO;
            for (int i = from; i < from + BAND_POINTS; i++) {
                sum = sum.add(at(raw, i).reciprocal());
            }
            worst = Math.max(worst, sum.norm() / BAND_POINTS * senseOhm);
        }
        return Math.max(NOTHING_DB, 20 * Math.log10(worst));
    }

    private static Judged open(SweepAnalysis analysis) {
        return switch (analysis.load()) {
            case OPEN, UNKNOWN ->
                new Judged(true, Reason.of("rigpage-open-good"), analysis.impedance(), null, Double.NaN);
            case SHORT -> refused(Reason.of("rigpage-open-saw-short"));
            case PRESENT -> refused(Reason.of("rigpage-open-saw-load", ohms(midOhm(analysis.impedance()))));
        };
    }

    private static Judged shorted(SweepAnalysis analysis) {
        ImpedanceCurve curve = analysis.impedance();
        if (analysis.load() == Load.OPEN || curve == null) {
            return refused(Reason.of("rigpage-short-saw-open"));
        }
        double ohm = midOhm(curve);
        if (analysis.load() != Load.SHORT && ohm > SHORT_OHM) {
            return refused(Reason.of("rigpage-short-saw-load", ohms(ohm)));
        }
        return new Judged(true, Reason.of("rigpage-short-good", ohms(ohm)), curve, null, Double.NaN);
    }

    private Judged load(SweepAnalysis analysis, ImpedanceCurve shorted) {
        ImpedanceCurve curve = analysis.impedance();
        if (analysis.load() == Load.OPEN || curve == null) {
            return refused(Reason.of("rigpage-load-saw-open"));
        }
        double low = Double.MAX_VALUE;
        double high = 0;
        double sum = 0;
        int points = 0;
        for (int i = 0; i < curve.size(); i++) {
            double frequencyHz = curve.frequencyHz()[i];
            double ohm = at(curve, i).subtract(at(shorted, i)).norm();
            if (frequencyHz >= FLAT_FROM_HZ && frequencyHz <= FLAT_TO_HZ) {
                low = Math.min(low, ohm);
                high = Math.max(high, ohm);
            }
            if (frequencyHz >= MID_FROM_HZ && frequencyHz <= MID_TO_HZ) {
                sum += ohm;
                points++;
            }
        }
        double read = sum / points;
        String expected = ohms(standards.loadOhm());
        if (read < PLUG_OHM) {
            return refused(Reason.of("rigpage-load-saw-short", expected));
        }
        if (high > low * (1 + FLAT_SHARE)) {
            return refused(Reason.of("rigpage-load-saw-reactive", expected));
        }
        if (Math.abs(read / standards.loadOhm() - 1) > OTHER_PART_SHARE) {
            return refused(Reason.of("rigpage-load-saw-other", ohms(read), expected));
        }
        return new Judged(true, Reason.of("rigpage-load-good", ohms(read), expected), curve, null, Double.NaN);
    }

    private static Judged plug(SweepAnalysis analysis, RigCalibration calibration) {
        if (analysis.load() == Load.OPEN || analysis.impedance() == null) {
            return refused(Reason.of("rigpage-short-saw-open"));
        }
        ImpedanceCurve corrected = calibration.correct(analysis.impedance());
        double ohm = midOhm(corrected);
        if (ohm > PLUG_OHM) {
            return refused(Reason.of("rigpage-short-saw-load", ohms(ohm)));
        }
        double sum = 0;
        int points = 0;
        for (int i = 0; i < corrected.size() && corrected.frequencyHz()[i] <= CONTACT_TO_HZ; i++) {
            sum += corrected.resistanceOhm()[i];
            points++;
        }
        double contactOhm = sum / points;
        return new Judged(
                true,
                Reason.of("rigpage-plug-good", String.format(Locale.ROOT, "%.1f", 1000 * contactOhm)),
                corrected,
                null,
                contactOhm);
    }

    private Judged check(SweepAnalysis analysis, RigCalibration calibration, int which) {
        CheckStandard standard = standards.checks().get(which).standard();
        if (analysis.load() == Load.OPEN || analysis.impedance() == null) {
            return refused(Reason.of("rigpage-check-saw-open", standard.name()));
        }
        ImpedanceCurve corrected = calibration.correct(analysis.impedance());
        double ohm = midOhm(corrected);
        if (ohm < PLUG_OHM) {
            return refused(Reason.of("rigpage-check-saw-short", standard.name()));
        }
        CheckReading reading = CheckReading.of(standard, corrected);
        if (reading.worstShare() > OTHER_PART_SHARE) {
            boolean load = Math.abs(ohm / standards.loadOhm() - 1) < 0.05;
            Reason words = load
                    ? Reason.of("rigpage-check-saw-load", standard.name())
                    : Reason.of("rigpage-check-saw-other", standard.name(), ohms(ohm));
            return new Judged(false, words, corrected, reading, Double.NaN);
        }
        return new Judged(true, words(reading), corrected, reading, Double.NaN);
    }

    static Reason words(CheckReading reading) {
        return Reason.of(
                reading.passed() ? "rigpage-check-good" : "rigpage-check-bad",
                reading.standardName(),
                String.format(Locale.ROOT, "%.2f", 100 * reading.worstShare()),
                String.format(Locale.ROOT, "%.0f", reading.worstHz()),
                String.format(Locale.ROOT, "%.1f", 100 * reading.limitShare()));
    }

    private static Judged refused(Reason words) {
        return new Judged(false, words, null, null, Double.NaN);
    }

    private static double midOhm(ImpedanceCurve curve) {
        double sum = 0;
        int points = 0;
        for (int i = 0; i < curve.size(); i++) {
            double frequencyHz = curve.frequencyHz()[i];
            if (frequencyHz >= MID_FROM_HZ && frequencyHz <= MID_TO_HZ) {
                sum += curve.magnitudeOhm(i);
                points++;
            }
        }
        return sum / points;
    }

    private static Complex at(ImpedanceCurve curve, int i) {
        return new Complex(curve.resistanceOhm()[i], curve.reactanceOhm()[i]);
    }

    private static String ohms(double ohm) {
        return String.format(Locale.ROOT, ohm < 1 ? "%.2f" : ohm < 100 ? "%.1f" : "%.0f", ohm);
    }
}
