package org.docksweep.rigcal;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * Repeatability study of a rig: some parts, each plugged several times (best by two people in turn), each time swept several
 * times without touching the plug; evaluated by {@link RepeatabilityStudy}.
 *
 * <p>A sweep is held against the mean of all sweeps of its part, {@code d = ln Z - ln Zmean}. What a contact does to it is
 * known, {@code dR / Zmean}, and the gate fits a contact anyway; counted once more as an error of |Z| it would only hide
 * faults. So {@code d = e + dR / Zmean} is solved for dR and a real scale e by least squares. What {@code d - dR / Zmean} leaves is
 * averaged over octaves. A plain resistor shows a scale and a contact alike: there all counts as contact, and such a part says
 * nothing of |Z|.
 *
 * @param contact contact in series, in ohm
 * @param impedance ln |Z| octave by octave, contact taken off; its parts are octaves of parts
 * @param level level octave by octave in decibel, likewise; null when nothing was heard
 * @param parts number of parts
 * @param plugIns plug-ins of each
 * @param repeats sweeps of each plug-in
 * @param summary what the gate takes of it
 */
public record RigStudy(
        RepeatabilityStudy contact,
        RepeatabilityStudy impedance,
        RepeatabilityStudy level,
        int parts,
        int plugIns,
        int repeats,
        RigRepeatability summary) {

    /** A part whose current shows scale and contact apart keeps this share of the scale when the contact is taken off. */
    private static final double TELLS_APART = 0.1;

    private static final double LEAST_OCTAVE_POINTS = 3;

    /** Below this the noise of a hall is louder than its sweeps, above it beams are narrower than feet marks (no source). */
    private static final double HEARD_FROM_HZ = 125;

    private static final double HEARD_TO_HZ = 8000;

    /**
     * One sweep.
     *
     * @param impedance impedance, corrected by the calibration
     * @param acoustic level at the microphone, or null
     */
    public record Sweep(ImpedanceCurve impedance, AcousticCurve acoustic) {}

    /**
     * Evaluates a study.
     *
     * @param sweeps sweeps[part][plug-in][repeat], equally many everywhere, at least 2 of each
     * @return the study
     * @throws IllegalArgumentException if there are too few, they are not equally many, curves of one part have different
     *     frequencies, or no part has an impedance that changes with frequency
     */
    public static RigStudy of(Sweep[][][] sweeps) {
        int parts = sweeps.length;
        int plugIns = parts == 0 ? 0 : sweeps[0].length;
        int repeats = plugIns == 0 ? 0 : sweeps[0][0].length;
        double[][][] contacts = new double[parts][plugIns][repeats];
        List<double[][]> octaves = new ArrayList<>();
        int telling = 0;
        for (int p = 0; p < parts; p++) {
            StudyPart part = new StudyPart(sweeps[p], plugIns, repeats, p + 1);
            boolean tells = part.scaleLeft() >= TELLS_APART;
            telling += tells ? 1 : 0;
            List<double[][]> rest = part.takeOffContact(tells, contacts[p]);
            if (tells) {
                octaves.addAll(rest);
            }
        }
        // First, so that too few are named as such.
        RepeatabilityStudy contact = RepeatabilityStudy.of(contacts);
        if (telling == 0) {
            throw new IllegalArgumentException(
                    "a repeatability study needs a part whose impedance changes with frequency: "
                            + "plain resistors show a scale and a contact alike; take a cabinet, or a resistor with a capacitor");
        }
        RepeatabilityStudy impedance = RepeatabilityStudy.of(octaves.toArray(double[][][]::new));
        RepeatabilityStudy level = level(sweeps);
        int freedom = telling * Math.min(plugIns - 1, plugIns * (repeats - 1));
        return new RigStudy(
                contact,
                impedance,
                level,
                parts,
                plugIns,
                repeats,
                new RigRepeatability(
                        impedance.gaugeSpread(),
                        contact.gaugeSpread(),
                        level == null ? 0 : level.gaugeSpread(),
                        freedom));
    }

    private static RepeatabilityStudy level(Sweep[][][] sweeps) {
        List<double[][]> octaves = new ArrayList<>();
        for (Sweep[][] part : sweeps) {
            for (Sweep[] plugIn : part) {
                for (Sweep sweep : plugIn) {
                    if (sweep.acoustic() == null) {
                        return null;
                    }
                }
            }
            for (double fromHz = HEARD_FROM_HZ; fromHz < HEARD_TO_HZ; fromHz *= 2) {
                double[][] levels = new double[part.length][part[0].length];
                boolean heard = true;
                for (int o = 0; o < part.length; o++) {
                    for (int r = 0; r < part[o].length; r++) {
                        levels[o][r] = mean(part[o][r].acoustic(), fromHz);
                        heard &= Double.isFinite(levels[o][r]);
                    }
                }
                if (heard) {
                    octaves.add(levels);
                }
            }
        }
        return octaves.size() < 2 ? null : RepeatabilityStudy.of(octaves.toArray(double[][][]::new));
    }

    private static double mean(AcousticCurve curve, double fromHz) {
        double[] frequencyHz = curve.frequencyHz();
        double[] levelDb = curve.levelDb();
        double[] noiseDb = curve.noiseDb();
        double sum = 0;
        int points = 0;
        for (int i = 0; i < frequencyHz.length; i++) {
            // A point in the noise says nothing of the rig.
            if (frequencyHz[i] >= fromHz && frequencyHz[i] < 2 * fromHz && levelDb[i] > noiseDb[i] + 20) {
                sum += levelDb[i];
                points++;
            }
        }
        return points < LEAST_OCTAVE_POINTS ? Double.NaN : sum / points;
    }
}
