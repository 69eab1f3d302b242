package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.Set;
import org.docksweep.fleet.Way;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.FrequencyGrid;
import org.docksweep.sweep.SoundPrint;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** A synthetic set: a two-way cabinet with fourth-order crossover at 1.5 kHz, units that differ, delays, noise. */
class PolarityTest {
    private static final double[] GRID = FrequencyGrid.within(40, 18000);

    private static Complex lowPass(double hz, double cornerHz) {
        Complex s = new Complex(0, hz / cornerHz);
        Complex second = s.multiply(s).add(s.multiply(Math.sqrt(2))).add(1).reciprocal();
        return second.multiply(second);
    }

    private static AcousticCurve curve(
            int lfSign, int hfSign, double delayS, double cornerHz, double hfDb, long noise) {
        Random random = new Random(noise);
        double[] level = new double[GRID.length];
        double[] phase = new double[GRID.length];
        for (int i = 0; i < GRID.length; i++) {
            double hz = GRID[i];
            Complex s = new Complex(0, hz / cornerHz);
            Complex high =
                    lowPass(hz, cornerHz).multiply(s.multiply(s).multiply(s).multiply(s));
            Complex sum = lowPass(hz, cornerHz).multiply(lfSign).add(high.multiply(hfSign * Math.pow(10, hfDb / 20)));
            if (noise != 0) {
                sum = sum.add(new Complex(random.nextGaussian(), random.nextGaussian()).multiply(0.5));
            }
            level[i] = 20 * Math.log10(sum.norm());
            phase[i] = sum.getArgument() - 2 * Math.PI * hz * delayS;
        }
        SoundPrint print = new SoundPrint(0.003, phase, 1, 10, List.of(), null, Set.of());
        double[] silence = new double[GRID.length];
        Arrays.fill(silence, -60);
        return new AcousticCurve(GRID, level, silence, print);
    }

    @Test
    void neverTakesAHealthyBandForReversedNorTheOtherWayRound() {
        AcousticCurve reference = curve(1, 1, 0, 1500, 0, 0);
        Random random = new Random(6);
        for (int trial = 1; trial <= 200; trial++) {
            double delayS = 4e-4 * (random.nextDouble() - 0.5);
            double corner = 1500 * (1 + 0.05 * random.nextGaussian());
            int hf = trial % 2 == 0 ? 1 : -1;
            int lf = trial % 3 == 0 ? -1 : 1;
            AcousticCurve heard = curve(lf, hf, delayS, corner, 1.5 * random.nextGaussian(), trial);
            Polarity high = Polarity.of(heard, reference, 2500, 9000);
            Polarity low = Polarity.of(heard, reference, 100, 700);
            assertThat(high.reversed() > high.same())
                    .as("HF of trial %d", trial)
                    .isEqualTo(hf < 0);
            assertThat(low.reversed() > low.same()).as("LF of trial %d", trial).isEqualTo(lf < 0);
        }
    }

    @Test
    void decidesNarrowBandsTogetherAsTheyStandAtOneDelay() {
        List<WayBand> bands =
                List.of(new WayBand(Way.MF, List.of("MF"), 600, 1800), new WayBand(Way.HF, List.of("HF"), 5000, 11000));
        AcousticCurve reference = curve(1, 1, 0, 3000, 0, 0);
        Random random = new Random(8);
        for (int trial = 1; trial <= 200; trial++) {
            double delayS = 3e-4 * (random.nextDouble() - 0.5);
            double corner = 3000 * (1 + 0.05 * random.nextGaussian());
            int hf = trial % 2 == 0 ? 1 : -1;
            int mf = trial % 3 == 0 ? -1 : 1;
            AcousticCurve heard = curve(mf, hf, delayS, corner, 1.5 * random.nextGaussian(), 0);
            SoundEvidence evidence = new SoundEvidence(heard, reference, bands, 0.65, 0.65);
            assertThat(evidence.reversed(1) > 5).as("HF of trial %d", trial).isEqualTo(hf < 0);
            assertThat(evidence.reversed(1) < -5).as("HF of trial %d", trial).isEqualTo(hf > 0);
            assertThat(evidence.reversed(0) > 5).as("MF of trial %d", trial).isEqualTo(mf < 0);
            assertThat(evidence.turnedRatio(1) > 1).isEqualTo(hf < 0);
        }
    }

    @Test
    void isSureOfACleanReversal() {
        Polarity polarity = Polarity.of(curve(1, -1, 1e-4, 1520, 1, 0), curve(1, 1, 0, 1500, 0, 0), 2500, 9000);
        assertThat(polarity.surelyReversed()).isTrue();
        assertThat(polarity.confidence()).isGreaterThan(1.5);
    }

    @Test
    void saysNothingWithoutAPrintOrACommonGrid() {
        AcousticCurve bare = new AcousticCurve(GRID, new double[GRID.length], new double[GRID.length]);
        assertThat(Polarity.of(bare, curve(1, 1, 0, 1500, 0, 0), 2500, 9000)).isNull();
    }
}
