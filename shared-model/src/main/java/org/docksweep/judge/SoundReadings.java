package org.docksweep.judge;

import java.util.ArrayList;
import java.util.List;
import org.docksweep.acoustic.SoundEvidence;
import org.docksweep.fleet.TestPoint;
import org.docksweep.gate.Reading;
import org.docksweep.gate.ReadingKind;
import org.docksweep.gate.ReadingState;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.SoundPrint;

/** Numbers read from the sound. */
final class SoundReadings {
    /** Standard errors a healthy way's level may stray. */
    private static final double ERRORS = 4;

    /** A burst is found from about this far above the noise's rms, in dB: phase fold, 20 bursts. */
    private static final double FOUND_OVER_NOISE_DB = 10;

    /** Level of the bursts that the gate promises to hear, in dB re the sweep's peak. */
    private static final double PROMISED_DB = -40;

    /** Below this frequency of the sweep the noise of the hall is louder than harmonics are, in hertz. */
    private static final double HARMONICS_FROM_HZ = 100;

    private static final double HARMONICS_LEAST_DB = -45;

    private final TestPoint point;
    private final ExpectedSound expected;
    private final AcousticCurve heard;

    SoundReadings(TestPoint point, ExpectedSound expected, AcousticCurve heard) {
        this.point = point;
        this.expected = expected;
        this.heard = heard;
    }

    List<Reading> of(SoundEvidence evidence, List<String> weakPositions, boolean touching) {
        List<Reading> readings = new ArrayList<>();
        boolean free = expected.sharedErrorDb() >= SoundEvidence.FREE_DB;
        double shared = free ? evidence.sharedDb() : 0;
        double errorDb = free ? expected.wayErrorDb() : Math.hypot(expected.wayErrorDb(), expected.sharedErrorDb());
        for (SoundEvidence.Way way : evidence.ways()) {
            for (String position : way.band().positionCodes()) {
                boolean weak = weakPositions.contains(position);
                readings.add(new Reading(
                        ReadingKind.WAY_LEVEL,
                        point.code(),
                        position,
                        Rounding.significant(way.changeDb() - shared),
                        Rounding.significant(errorDb),
                        0.0,
                        Rounding.significant(-ERRORS * errorDb),
                        null,
                        weak ? ReadingState.FAULT : way.quietEnough() ? ReadingState.OK : ReadingState.NOT_JUDGED));
            }
        }
        impulsive(touching).ifPresent(readings::add);
        harmonics().ifPresent(readings::add);
        return readings;
    }

    private java.util.Optional<Reading> impulsive(boolean touching) {
        SoundPrint print = heard.print();
        double noiseDb = print.bands().stream()
                .filter(b -> b.residueDb() > -150)
                .mapToDouble(SoundPrint.Band::noiseDb)
                .max()
                .orElse(0);
        if (noiseDb == 0) {
            return java.util.Optional.empty();
        }
        boolean found = print.event() != null && touching;
        double value = found ? print.event().burstDb() : noiseDb + FOUND_OVER_NOISE_DB;
        boolean known = expected.curve().print() != null
                && print.marks().stream()
                        .noneMatch(m -> m == SoundPrint.Mark.SINGLE_SWEEP || m == SoundPrint.Mark.UNHEARD);
        ReadingState state =
                found ? ReadingState.FAULT : known && value <= PROMISED_DB ? ReadingState.OK : ReadingState.NOT_JUDGED;
        return java.util.Optional.of(new Reading(
                ReadingKind.IMPULSIVE_DISTORTION, point.code(), null, value, 2, null, null, PROMISED_DB, state));
    }

    private java.util.Optional<Reading> harmonics() {
        SoundPrint usual = expected.curve().print();
        if (usual == null) {
            return java.util.Optional.empty();
        }
        List<Double> rises = new ArrayList<>();
        for (SoundPrint.Band band : heard.print().bands()) {
            SoundPrint.Band before = usual.bandAt(band.centreHz());
            double now = total(band.harmonicDb());
            if (before != null
                    && band.centreHz() > HARMONICS_FROM_HZ
                    && now > HARMONICS_LEAST_DB
                    && band.harmonicDb().length == before.harmonicDb().length) {
                rises.add(now - total(before.harmonicDb()));
            }
        }
        if (rises.isEmpty()) {
            return java.util.Optional.empty();
        }
        rises.sort(null);
        return java.util.Optional.of(new Reading(
                ReadingKind.HARMONICS,
                point.code(),
                null,
                Rounding.significant(rises.get(rises.size() / 2)),
                2,
                0.0,
                null,
                null,
                // Noise of the hall lifts faint harmonics; told, not judged.
                ReadingState.NOT_JUDGED));
    }

    private static double total(double[] levelsDb) {
        double sum = 1e-20;
        for (double level : levelsDb) {
            sum += StrictMath.pow(10, level / 10);
        }
        return 10 * StrictMath.log10(sum);
    }
}
