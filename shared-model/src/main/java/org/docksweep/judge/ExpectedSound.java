package org.docksweep.judge;

import java.util.Optional;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.Baseline;
import org.docksweep.gate.PointReference;
import org.docksweep.sweep.AcousticCurve;

/**
 * What a cabinet should sound like: its own baseline, taken at the same spot, else the reference of its model. A rig that
 * repeats itself worse than is held of every rig has larger errors; a better one has not, since drivers drift as well.
 *
 * @param curve level and print
 * @param wayErrorDb standard error of the level of one way against the others
 * @param sharedErrorDb standard error of all levels together
 */
record ExpectedSound(AcousticCurve curve, double wayErrorDb, double sharedErrorDb) {
    /** Placement within some centimetres and drift between two sweeps; common practice, no source. */
    private static final double OWN_WAY_DB = 0.3;

    private static final double OWN_SHARED_DB = 0.3;
    /** Drivers of one model agree within about 1 dB (common practice, no source). */
    private static final double MODEL_WAY_DB = 0.65;

    private static final double MODEL_SHARED_DB = 0.65;

    static Optional<ExpectedSound> of(JudgeRequest request, TestPoint point) {
        boolean knob = point.kind() == TestPointKind.LINE_INPUT;
        Optional<Baseline> own = request.baselines().stream()
                .filter(b -> b.testPointCode().equals(point.code()) && b.acoustic() != null)
                .findFirst();
        if (own.isPresent()) {
            double rigDb = request.repeatability().levelOf(2);
            return Optional.of(new ExpectedSound(
                    own.get().acoustic(),
                    Math.max(OWN_WAY_DB, rigDb),
                    knob ? SoundEvidence.FREE_DB : Math.max(OWN_SHARED_DB, rigDb)));
        }
        return request.references().stream()
                .filter(r -> r.cabinetModelCode().equals(request.model().code())
                        && r.testPointCode().equals(point.code())
                        && r.acousticFrequencyHz().length > 1)
                .findFirst()
                .map(ExpectedSound::curve)
                .map(curve -> new ExpectedSound(
                        curve,
                        Math.max(MODEL_WAY_DB, request.repeatability().levelOf(1)),
                        knob
                                ? SoundEvidence.FREE_DB
                                : Math.max(
                                        MODEL_SHARED_DB, request.repeatability().levelOf(1))));
    }

    private static AcousticCurve curve(PointReference reference) {
        return new AcousticCurve(
                reference.acousticFrequencyHz(),
                reference.meanLevelDb(),
                new double[reference.acousticFrequencyHz().length],
                reference.sound());
    }
}
