package org.docksweep.judge;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.docksweep.acoustic.MicrophoneCheck;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.acoustic.WayBand;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;

/**
 * What a cabinet should sound like: its own baseline, taken at the same spot, else the reference of its model.
 *
 * <p>A rig that repeats itself worse than is held of every rig has larger errors; a better one has not, since drivers drift as
 * well.
 *
 * <p>Sound follows the current: {@code p / V = (p / I) / |Z|}. A warm coil, a plug, another resistance of the same driver
 * move |Z| and the level with it, so the expected level is that of the expected current: {@code 20 lg(|Zthen| / |Znow|)}
 * is added. With the cabinet's own baseline this is done for every way, since most of a band's current is its way's; with a
 * reference only where one way is alone at the terminals.
 *
 * @param curve level and print
 * @param wayErrorDb standard error of the level of one way against the others
 * @param sharedErrorDb standard error of all levels together
 */
record ExpectedSound(AcousticCurve curve, double wayErrorDb, double sharedErrorDb) {
    /** Placement within some centimetres and drift between two sweeps; common practice, no source. */
    private static final double OWN_WAY_DB = 0.3;

    private static final double OWN_SHARED_DB = 0.3;

    /**
     * The same where one way is alone and its current known, hence no temperature in it: placement within 2 cm at 1 m (0.1
     * dB), gain of the microphone since its last check (0.15 dB), reflections (0.15 dB over an octave); common practice, no
     * source.
     */
    private static final double OWN_ALONE_DB = 0.2;

    /** Drivers of one model agree within about 1 dB (common practice, no source); its own units may say less. */
    private static final double MODEL_WAY_DB = 0.65;

    private static final double MODEL_SHARED_DB = 0.65;

    /** Nearer than this nobody puts a microphone. */
    private static final double NEAREST_M = 0.1;

    /** Fewer units say nothing of their spread. */
    private static final int LEAST_UNITS = 3;

    /**
     * What should be heard.
     *
     * @param request what is known
     * @param point the test point
     * @param now calibrated impedance of the sweep heard; null where there is none
     * @return empty when neither a baseline nor a reference has a sound
     */
    static Optional<ExpectedSound> of(JudgeRequest request, TestPoint point, ImpedanceCurve now) {
        boolean knob = point.kind() == TestPointKind.LINE_INPUT;
        List<WayBand> bands = WayBand.of(request.model(), point);
        Optional<Baseline> own = request.baselines().stream()
                .filter(b -> b.testPointCode().equals(point.code()) && b.acoustic() != null)
                .findFirst();
        if (own.isPresent()) {
            return Optional.of(own(own.get(), bands.size() == 1, knob, now)
                    .atLeast(request.repeatability().levelOf(2)));
        }
        return request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code())
                        && r.acousticFrequencyHz().length > 1)
                .findFirst()
                .map(reference -> {
                    double way = learned(reference, bands, MODEL_WAY_DB);
                    double shared = knob ? SoundEvidence.FREE_DB : learned(reference, bands, MODEL_SHARED_DB);
                    return new ExpectedSound(curve(reference, bands.size() == 1 ? now : null), way, shared)
                            .atLeast(request.repeatability().levelOf(1));
                });
    }

    /**
     * The same where the cabinet or the microphone stands elsewhere than at the baseline: errors are those that units of the model and
     * their placements differ by, and the level that the longer or shorter way explains.
     *
     * @param metres by how much the way is longer, negative when shorter
     */
    ExpectedSound displaced(JudgeRequest request, TestPoint point, double metres) {
        List<WayBand> bands = WayBand.of(request.model(), point);
        Optional<PointReference> reference = request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code())
                        && r.acousticFrequencyHz().length > 1)
                .findFirst();
        double way = reference.map(r -> learned(r, bands, MODEL_WAY_DB)).orElse(MODEL_WAY_DB);
        double shared = reference.map(r -> learned(r, bands, MODEL_SHARED_DB)).orElse(MODEL_SHARED_DB);
        double beforeM = Math.max(NEAREST_M, curve.print().arrivalS() * MicrophoneCheck.SOUND_M_PER_S);
        double byWayDb = 20 * StrictMath.log10(Math.max(NEAREST_M, beforeM + metres) / beforeM);
        return new ExpectedSound(
                curve,
                Math.max(wayErrorDb, way),
                sharedErrorDb >= SoundEvidence.FREE_DB
                        ? sharedErrorDb
                        : StrictMath.hypot(Math.max(sharedErrorDb, shared), byWayDb));
    }

    private ExpectedSound atLeast(double rigDb) {
        return new ExpectedSound(curve, Math.max(wayErrorDb, rigDb), Math.max(sharedErrorDb, rigDb));
    }

    private static ExpectedSound own(Baseline own, boolean alone, boolean knob, ImpedanceCurve now) {
        if (now == null || own.impedance() == null) {
            return new ExpectedSound(own.acoustic(), OWN_WAY_DB, knob ? SoundEvidence.FREE_DB : OWN_SHARED_DB);
        }
        double[] thenOhm = own.impedance().magnitudesOhm();
        AcousticCurve curve = asDriven(own.acoustic(), own.impedance().frequencyHz(), thenOhm, now);
        return new ExpectedSound(curve, alone ? OWN_ALONE_DB : OWN_WAY_DB, alone ? OWN_ALONE_DB : OWN_SHARED_DB);
    }

    private static AcousticCurve curve(PointReference reference, ImpedanceCurve now) {
        AcousticCurve curve = new AcousticCurve(
                reference.acousticFrequencyHz(),
                reference.meanLevelDb(),
                new double[reference.acousticFrequencyHz().length],
                reference.sound());
        if (now == null || reference.frequencyHz().length < 2) {
            return curve;
        }
        double[] thenOhm =
                Arrays.stream(reference.meanLogOhm()).map(StrictMath::exp).toArray();
        return asDriven(curve, reference.frequencyHz(), thenOhm, now);
    }

    /** The level at the current of now; left as it is where one of the impedances is not known. */
    private static AcousticCurve asDriven(AcousticCurve curve, double[] thenHz, double[] thenOhm, ImpedanceCurve now) {
        double[] hz = curve.frequencyHz();
        double[] level = curve.levelDb();
        double[] nowHz = now.frequencyHz();
        for (int i = 0; i < hz.length; i++) {
            int then = Arrays.binarySearch(thenHz, hz[i]);
            int at = Arrays.binarySearch(nowHz, hz[i]);
            if (then >= 0 && at >= 0) {
                level[i] += 20 * StrictMath.log10(thenOhm[then] / now.magnitudeOhm(at));
            }
        }
        return new AcousticCurve(hz, level, curve.noiseDb(), curve.print());
    }

    /** Half the mean square spread of the bands is each way's, half all ways' together; the mean of n has its own error. */
    private static double learned(PointReference reference, List<WayBand> bands, double usualDb) {
        if (reference.unitCount() < LEAST_UNITS) {
            return usualDb;
        }
        double[] hz = reference.acousticFrequencyHz();
        double[] spread = reference.spreadLevelDb();
        double squares = 0;
        int count = 0;
        for (int i = 0; i < hz.length; i++) {
            double at = hz[i];
            if (bands.stream().anyMatch(b -> at >= b.fromHz() && at <= b.toHz())) {
                squares += spread[i] * spread[i];
                count++;
            }
        }
        double error = Math.sqrt(squares / Math.max(1, count) / 2 * (1 + 1.0 / reference.unitCount()));
        return count == 0 ? usualDb : Math.min(usualDb, error);
    }
}
