package org.docksweep.acoustic;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.docksweep.sweep.AcousticCurve;
import org.junit.jupiter.api.Test;

/** What noise does to the level of a way. */
class LevelsInNoiseTest {
    private static final double THIRD = Math.pow(2, 1.0 / 3);

    private static SoundEvidence evidence(double noiseDb) {
        double[] hz = {1000, 1050, 1100, 1150, 1200, 1250, 8000, 8500, 9000, 9500};
        double[] level = new double[hz.length];
        double[] noise = new double[hz.length];
        Arrays.fill(noise, noiseDb);
        AcousticCurve heard = new AcousticCurve(hz, level, noise, null);
        List<WayBand> ways = List.of(
                new WayBand(org.docksweep.fleet.Way.LF, List.of("LF"), 1000, 1000 * THIRD),
                new WayBand(org.docksweep.fleet.Way.HF, List.of("HF"), 8000, 8000 * THIRD));
        return new SoundEvidence(heard, heard, ways, 0.5, SoundEvidence.FREE_DB);
    }

    @Test
    void theErrorIsThatOfALevelReadInNoise() {
        // 200,000 levels of a tone in complex normal noise 20 dB below it, seed 5
        Random random = new Random(5);
        double squares = 0;
        int count = 200_000;
        for (int i = 0; i < count; i++) {
            double re = 1 + 0.1 * Math.sqrt(0.5) * random.nextGaussian();
            double im = 0.1 * Math.sqrt(0.5) * random.nextGaussian();
            double db = 10 * Math.log10(re * re + im * im);
            squares += db * db / count;
        }
        assertThat(evidence(-20).ways().get(0).noiseErrorDb()).isCloseTo(Math.sqrt(squares), within(0.02));
    }

    @Test
    void inALoudHallALossSaysLessAndTheHallIsNamed() {
        SoundEvidence quiet = evidence(-40);
        SoundEvidence loud = evidence(-11);
        assertThat(quiet.noiseHidesLevels()).isFalse();
        assertThat(loud.noiseHidesLevels()).isTrue();
        double sureHere = quiet.levelsHealthy(1) - quiet.levelsBy(0, 3);
        double sureThere = loud.levelsHealthy(1) - loud.levelsBy(0, 3);
        // levels as expected speak against a loss of 3 dB: by 3^2 / (2 (0.5^2 + 0.5^2)), and hardly in noise
        assertThat(sureHere).isCloseTo(9, within(0.2));
        assertThat(sureThere).isBetween(0.1, 2.0);
    }
}
