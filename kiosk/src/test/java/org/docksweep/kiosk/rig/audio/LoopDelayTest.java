package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.SplittableRandom;
import org.docksweep.fleet.LevelMask;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LoopDelayTest {
    private static final long SEED = 5;
    private static final int LONGEST = 60_000;
    private static final int FROM = 20_000;
    private static final double[] SWEEP = SweepSignal.synchronised(
                    30,
                    15_000,
                    1,
                    48_000,
                    new LevelMask(List.of(new LevelMask.Point(30, 2), new LevelMask.Point(15_000, 1))))
            .voltageSamples();

    private static float[] captured(int delay, double scale, double noise) {
        SplittableRandom random = new SplittableRandom(SEED);
        float[] samples = new float[FROM + SWEEP.length + LONGEST + 100];
        for (int n = 0; n < samples.length; n++) {
            int at = n - FROM - delay;
            double sound = at >= 0 && at < SWEEP.length ? scale * SWEEP[at] : 0;
            samples[n] = (float) (sound + noise * random.nextGaussian());
        }
        return samples;
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 4_801, 35_999, LONGEST})
    void findsTheDelayToTheSample(int delay) {
        assertThat(LoopDelay.find(captured(delay, 0.1, 0.001), FROM, SWEEP, LONGEST))
                .hasValue(delay);
    }

    @Test
    void findsASweepOfReversedPolarityInLoudNoise() {
        assertThat(LoopDelay.find(captured(9_000, -0.1, 0.1), FROM, SWEEP, LONGEST))
                .hasValue(9_000);
    }

    @Test
    void doesNotTakeOneRepeatForAnother() {
        LevelMask level = new LevelMask(List.of(new LevelMask.Point(100, 1), new LevelMask.Point(10_000, 1)));
        double[] played =
                new SweepPlan(SweepSignal.synchronised(100, 10_000, 0.2, 48_000, level), 0.1, 0.1, 3).driveVolts();
        float[] samples = new float[played.length + LONGEST];
        for (int n = 0; n < played.length; n++) {
            samples[n + 700] = (float) played[n];
        }

        assertThat(LoopDelay.find(samples, 0, played, LONGEST)).hasValue(700);
    }

    @Test
    void findsNothingInNoiseAndInSilence() {
        assertThat(LoopDelay.find(captured(0, 0, 0.1), FROM, SWEEP, LONGEST)).isEmpty();
        assertThat(LoopDelay.find(captured(0, 0, 0), FROM, SWEEP, LONGEST)).isEmpty();
    }
}
