package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.docksweep.sweep.SweepSignal;
import org.junit.jupiter.api.Test;

/** What a person hears: strokes where they are, and no sweep. */
class ResidueSoundTest {
    private static final double PEAK_PA = 0.5;
    private static final double STROKE_PA = PEAK_PA / 100;

    /** A cabinet that distorts as cabinets do: 2 % second and 1 % third harmonic at the peak. */
    private static SoundMaker cabinet() {
        return new SoundMaker(20, 20000, 2, 48_000, 2, x -> PEAK_PA * (x + 0.04 * x * x + 0.04 * x * x * x));
    }

    private static ResidueSound sound(SoundMaker maker) {
        return ResidueSound.of(maker.make()).orElseThrow();
    }

    private static double peak(double[] samples, int from, int to) {
        double peak = 0;
        for (int i = from; i < to; i++) {
            peak = Math.max(peak, Math.abs(samples[i]));
        }
        return peak;
    }

    @Test
    void theSweepAndItsLowHarmonicsAreFortyDecibelsDown() {
        ResidueSound sound = sound(cabinet());
        double[] samples = sound.pascals();

        assertThat(sound.sweepPeakPa()).isCloseTo(PEAK_PA, within(0.15 * PEAK_PA));
        assertThat(sound.loudestDb()).isLessThan(-40);
        // while the second and third harmonic lie in the band, far below 40
        SweepSignal signal = cabinet().signal();
        int from = (int) (48_000 * signal.rateConstantS() * Math.log(5));
        int to = (int) (48_000 * signal.rateConstantS() * Math.log(40));
        assertThat(20 * Math.log10(peak(samples, from, to) / sound.sweepPeakPa()))
                .isLessThan(-60);
    }

    @Test
    void strokesOfARubAreHeardAtTheirPhaseInBothSweeps() {
        SoundMaker maker = cabinet();
        double rateConstantS = maker.signal().rateConstantS();
        for (int sweep = 0; sweep < 2; sweep++) {
            for (double turn = Math.ceil(rateConstantS * 40) + 0.3; turn < rateConstantS * 70; turn++) {
                maker.burst(maker.frameAtTurns(sweep, turn), STROKE_PA, 4000, 0.002);
            }
        }
        ResidueSound sound = sound(maker);
        double[] samples = sound.pascals();

        // the sound begins with the drive, 139 frames of travel before the microphone hears it
        int begin = maker.start(0) - 139;
        for (int sweep = 0; sweep < 2; sweep++) {
            for (double turn = Math.ceil(rateConstantS * 40) + 0.3; turn < rateConstantS * 70; turn++) {
                int stroke = maker.frameAtTurns(sweep, turn) - begin;
                int between = maker.frameAtTurns(sweep, turn + 0.5) - begin;
                assertThat(peak(samples, stroke - 48, stroke + 48)).isCloseTo(STROKE_PA, within(0.2 * STROKE_PA));
                assertThat(peak(samples, between - 48, between + 48)).isLessThan(0.2 * STROKE_PA);
            }
        }
    }

    @Test
    void scrapingOfAHighDriverIsHeardThoughItLiesAmongTheLowHarmonics() {
        SoundMaker maker = cabinet();
        double turns = maker.signal().rateConstantS() * 2500;
        for (int n = 0; n < 20; n++) {
            // strokes of the sweeps are never alike
            maker.burst(maker.frameAtTurns(0, turns + n), STROKE_PA, 5000 + 200 * n, 0.001);
            maker.burst(maker.frameAtTurns(1, turns + n), STROKE_PA, 8000 - 200 * n, 0.001);
        }
        double[] samples = sound(maker).pascals();
        double[] clean = sound(cabinet()).pascals();

        int from = maker.frameAtTurns(0, turns) - maker.start(0) + 139;
        int to = maker.frameAtTurns(0, turns + 20) - maker.start(0) + 439;
        assertThat(peak(samples, from, to)).isGreaterThan(0.4 * STROKE_PA);
        assertThat(peak(clean, from, to)).isLessThan(0.02 * STROKE_PA);
    }
}
