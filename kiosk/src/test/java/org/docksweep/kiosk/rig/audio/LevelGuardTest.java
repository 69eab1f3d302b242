package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Reason;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.junit.jupiter.api.Test;

class LevelGuardTest {
    private static final int RATE_HZ = 48_000;
    private static final int BLOCK = 480;
    private static final LevelMask LEVEL = new LevelMask(
            List.of(new LevelMask.Point(50, 4), new LevelMask.Point(500, 4), new LevelMask.Point(5_000, 1)));
    private static final SweepPlan PLAN =
            new SweepPlan(SweepSignal.synchronised(50, 5_000, 0.5, RATE_HZ, LEVEL), 0.2, 0.2, 2);
    private static final AudioSettings.Output OUTPUT = new AudioSettings.Output(1, 20);

    private static AudioSettings settings(String... more) {
        Map<String, String> settings = new HashMap<>(AudioSettingsTest.LEAST);
        for (int i = 0; i < more.length; i += 2) {
            settings.put(more[i], more[i + 1]);
        }
        return AudioSettings.of(settings);
    }

    private static RigException refusal(double[] volts, AudioSettings.Output output) {
        return catchThrowableOfType(RigException.class, () -> LevelGuard.check(PLAN, volts, output));
    }

    /** First alarm of a guard that looks at volts and amperes from start to end. */
    private static Optional<Reason> alarm(LevelGuard guard, double[] volts, double[] amperes) {
        float[] v = new float[volts.length];
        float[] i = new float[volts.length];
        for (int n = 0; n < v.length; n++) {
            v[n] = (float) (volts[n] / 40);
            i[n] = (float) (amperes[n] / 5);
        }
        Optional<Reason> alarm = Optional.empty();
        for (int block = 0; (block + 1) * BLOCK <= v.length && alarm.isEmpty(); block++) {
            alarm = guard.look(block, v, i, block * BLOCK);
        }
        return alarm;
    }

    private static double[] times(double[] values, double factor) {
        return Arrays.stream(values).map(v -> v * factor).toArray();
    }

    private static double[] later(double[] values, int frames) {
        double[] later = new double[values.length];
        System.arraycopy(values, 0, later, frames, values.length - frames);
        return later;
    }

    @Test
    void letsAPlanOfItsOwnLevelThrough() {
        assertThatCode(() -> LevelGuard.check(PLAN, PLAN.driveVolts(), OUTPUT)).doesNotThrowAnyException();
    }

    @Test
    void refusesASampleAboveTheMask() {
        double[] volts = PLAN.driveVolts();
        // Near the end of the sweep the mask has come down to 1 V rms.
        int late = PLAN.startFrame(1) + PLAN.signal().frames() - 500;
        volts[late] = 2;

        assertThat(refusal(volts, OUTPUT).reason().key()).isEqualTo("audio-above-mask");
    }

    @Test
    void refusesSoundInTheSilence() {
        double[] volts = PLAN.driveVolts();
        volts[10] = 0.01;

        assertThat(refusal(volts, OUTPUT).reason().key()).isEqualTo("audio-above-mask");
    }

    @Test
    void refusesWhatIsNoNumber() {
        double[] volts = PLAN.driveVolts();
        volts[PLAN.startFrame(0) + 5000] = Double.NaN;

        assertThat(refusal(volts, OUTPUT).reason().key()).isEqualTo("audio-above-mask");
    }

    @Test
    void refusesMoreThanTheOutputCan() {
        RigException refused = refusal(PLAN.driveVolts(), new AudioSettings.Output(1, 5));

        assertThat(refused.kind()).isEqualTo(RigException.Cause.REFUSED);
        assertThat(refused.reason().key()).isEqualTo("audio-output-too-small");
        assertThat(refused.reason().arguments().get(1)).isEqualTo("5.00");
    }

    @Test
    void isCalmAtTheExpectedLevelWhateverTheDelay() {
        double[] played = PLAN.driveVolts();
        for (int delay : new int[] {0, 7_000, 40_000, 59_000}) {
            double[] volts = later(played, delay);
            assertThat(alarm(new LevelGuard(settings(), played), volts, times(volts, 1 / 8.0)))
                    .as("delay of %d frames", delay)
                    .isEmpty();
        }
    }

    @Test
    void stopsOnTwiceTheVolts() {
        double[] played = PLAN.driveVolts();
        double[] volts = times(later(played, 7_000), 2);

        Reason alarm = alarm(new LevelGuard(settings(), played), volts, times(volts, 1 / 8.0))
                .orElseThrow();

        assertThat(alarm.key()).isEqualTo("audio-too-many-volts");
    }

    @Test
    void stopsOnSoundThatIsNotTheRigs() {
        double[] played = PLAN.driveVolts();
        double[] volts = new double[played.length];
        Arrays.setAll(volts, n -> 0.5 * Math.sin(n * 0.1));

        assertThat(alarm(new LevelGuard(settings(), played), volts, new double[volts.length]))
                .map(Reason::key)
                .contains("audio-too-many-volts");
    }

    @Test
    void stopsOnMoreAmperesThanTheRigBears() {
        double[] played = PLAN.driveVolts();

        assertThat(alarm(new LevelGuard(settings("mostAmperes", "0.3"), played), played, times(played, 1 / 8.0)))
                .map(Reason::key)
                .contains("audio-too-many-amperes");
    }

    @Test
    void stopsOnMoreAmperesThanTheVoltsCanDrive() {
        double[] played = PLAN.driveVolts();
        double[] volts = times(played, 0.1);

        assertThat(alarm(new LevelGuard(settings("leastLoadOhm", "4"), played), volts, times(played, 0.5)))
                .map(Reason::key)
                .contains("audio-too-many-amperes");
    }

    @Test
    void stopsOnMoreWattsThanTheRigBears() {
        double[] played = PLAN.driveVolts();

        assertThat(alarm(new LevelGuard(settings("mostWatts", "1"), played), played, times(played, -1 / 8.0)))
                .map(Reason::key)
                .contains("audio-too-many-watts");
    }

    @Test
    void forgivesASingleTornBlock() {
        double[] played = PLAN.driveVolts();
        double[] volts = played.clone();
        volts[100 * BLOCK + 7] = 40;

        assertThat(alarm(new LevelGuard(settings(), played), volts, new double[volts.length]))
                .isEmpty();
    }
}
