package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.docksweep.sweep.SweepAnalyser;
import org.junit.jupiter.api.Test;

/** Strokes of a subwoofer that strikes two or three times per sweep; its sweep begins at its fourth turn. */
class FewStrokesTest {
    private static final double PEAK_PA = 0.5;

    /** Strokes at given turns of the drive's phase, 20 dB over the noise's rms. */
    private static PhaseFold.Found found(double[] inTheFirst, double[] inTheSecond, long seed) {
        SoundMaker maker = new SoundMaker(15, 4000, 1.6, 48_000, 2, x -> PEAK_PA * x)
                .noise(PEAK_PA * Math.pow(10, -60 / 20.0), seed);
        double[][] turns = {inTheFirst, inTheSecond};
        for (int sweep = 0; sweep < 2; sweep++) {
            for (double turn : turns[sweep]) {
                maker.burst(maker.frameAtTurns(sweep, turn), PEAK_PA * Math.pow(10, -40 / 20.0), 6000, 0.001);
            }
        }
        PhaseFold.Found[] found = new PhaseFold.Found[1];
        new SweepAnalyser()
                .hearing(take -> {
                    found[0] = new PhaseFold(Residue.of(take)).few();
                    return new SoundEar().read(take);
                })
                .analyse(maker.make());
        return found[0];
    }

    private static double score(PhaseFold.Found found) {
        return found == null ? 0 : found.score();
    }

    @Test
    void hearsTwoStrokesPerSweepFromTheFirstPeriodOnThoughOneStaysOut() {
        PhaseFold.Found found = found(new double[] {4.7, 5.75}, new double[] {5.76}, 330);
        assertThat(found).isNotNull();
        assertThat(found.score()).isGreaterThan(FewStrokes.TELLING);
        assertThat(found.weakest()).isGreaterThan(1.5);
        assertThat(found.fromHz()).isLessThan(16);
        assertThat(found.toHz()).isLessThan(30);
        assertThat(found.phaseTurns()).isCloseTo(0.72, within(0.06));
        assertThat(20 * Math.log10(found.peakPa() / PEAK_PA)).isCloseTo(-40, within(2.0));
    }

    /** Three strokes in one sweep, and in the other one where the first has none. */
    @Test
    void hearsFourStrokesOfWhichNoPeriodShowsOneInBothSweeps() {
        PhaseFold.Found found = found(new double[] {5.46, 7.46, 8.5}, new double[] {6.46}, 342);
        assertThat(found).isNotNull();
        assertThat(found.score()).isGreaterThan(FewStrokes.TELLING);
        assertThat(found.weakest()).isGreaterThan(1.5);
    }

    @Test
    void oneStrokeOfEverySweepAtOnePlaceMayBeTwoKnocks() {
        assertThat(score(found(new double[] {5.75}, new double[] {5.75}, 340))).isLessThan(FewStrokes.TELLING);
    }

    @Test
    void strokesOfOneSweepAloneAreNotTheCabinets() {
        assertThat(score(found(new double[] {4.7, 5.75, 6.8}, new double[] {}, 341)))
                .isLessThan(FewStrokes.TELLING);
    }

    @Test
    void fewStrokesSayLittleWhereAsLoudOnesFallAnywhere() {
        assertThat(score(found(
                        new double[] {4.2, 4.7, 5.1, 5.75, 6.4, 7.1, 8.9, 9.3},
                        new double[] {4.45, 5.4, 5.76, 6.9, 7.6, 8.2, 9.9, 10.3},
                        350)))
                .isLessThan(FewStrokes.TELLING);
    }

    @Test
    void aConeThatStrikesOftenIsLeftToTheFold() {
        assertThat(FewStrokes.periods(15, 300)).isZero();
        assertThat(FewStrokes.periods(4, 285)).isEqualTo(8);
        assertThat(FewStrokes.periods(4, 6)).isZero();
    }
}
