package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

@Timeout(60)
class AudioRigTest {
    private static final int RATE_HZ = 48_000;
    private static final int DELAY = 5_123;
    private static final Instant NOW = Instant.parse("2026-06-01T20:00:00Z");
    private static final LevelMask LEVEL =
            new LevelMask(List.of(new LevelMask.Point(100, 2), new LevelMask.Point(10_000, 1)));
    private static final SweepPlan PLAN =
            new SweepPlan(SweepSignal.synchronised(100, 10_000, 0.2, RATE_HZ, LEVEL), 0.1, 0.1, 2);

    /** Half a step of 24 bits on both ways, at 20 V full scale. */
    private static final double STEP_V = 20 * 0x1p-22;

    /** Input and output have the same full scale, so the wire's gain is the rig's. */
    private static AudioRig rig(FakeSound sound, long spareMs) {
        Map<String, String> settings = new HashMap<>(AudioSettingsTest.LEAST);
        settings.put("voltageFullScale", "20");
        settings.put("ambientCelsius", "18.5");
        return new AudioRig(AudioSettings.of(settings), sound, Clock.fixed(NOW, ZoneOffset.UTC), spareMs);
    }

    private static RigException failure(AudioRig rig) {
        return catchThrowableOfType(RigException.class, () -> rig.play(PLAN, TestPointKind.TERMINALS, share -> {}));
    }

    @Test
    void givesBackWhatWasPlayedWithoutTheDelay() throws RigException, InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        List<Double> progress = new ArrayList<>();
        AudioRig rig = rig(sound, 10_000);

        Capture capture = rig.play(PLAN, TestPointKind.TERMINALS, progress::add);

        assertThat(rig.loopDelayFrames()).hasValue(DELAY);
        assertThat(capture.frames()).isEqualTo(PLAN.totalFrames());
        double[] volts = PLAN.driveVolts();
        float[] captured = capture.fullScale(ChannelRole.VOLTAGE);
        for (int n = 0; n < volts.length; n++) {
            assertThat(captured[n] * 20.0).isCloseTo(volts[n], within(STEP_V));
        }
        assertThat(capture.header().capturedAt()).isEqualTo(NOW);
        assertThat(capture.header().ambientCelsius()).isEqualTo(18.5);
        assertThat(progress).isSorted().endsWith(1.0);
        assertThat(sound.closes()).isTrue();
        assertThat(sound.otherChannelUsed()).isFalse();
    }

    @Test
    void leavesTheCurrentOutForALineInput() throws RigException {
        Capture capture = rig(new FakeSound(DELAY, 1), 10_000).play(PLAN, TestPointKind.LINE_INPUT, share -> {});

        assertThat(capture.has(ChannelRole.VOLTAGE)).isTrue();
        assertThat(capture.has(ChannelRole.CURRENT)).isFalse();
    }

    @Test
    void keepsEverythingWhenNoSweepComesBack() throws RigException {
        AudioRig rig = rig(new FakeSound(DELAY, 0), 10_000);

        Capture capture = rig.play(PLAN, TestPointKind.TERMINALS, share -> {});

        assertThat(rig.loopDelayFrames()).isEmpty();
        assertThat(capture.frames()).isGreaterThan(PLAN.totalFrames() + RATE_HZ);
    }

    @Test
    void takesAShortReadForALostDevice() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        sound.loseInputAt = 30_000;

        RigException lost = failure(rig(sound, 10_000));

        assertThat(lost.kind()).isEqualTo(RigException.Cause.DEVICE_LOST);
        assertThat(lost.reason().key()).isEqualTo("audio-lost-input");
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void takesAShortWriteForALostDevice() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        sound.loseOutputAt = 30_100;

        RigException lost = failure(rig(sound, 10_000));

        assertThat(lost.kind()).isEqualTo(RigException.Cause.DEVICE_LOST);
        assertThat(lost.reason().key()).isEqualTo("audio-lost-output");
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void givesUpOnAnInputThatHangs() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        sound.hangInputAt = 30_000;

        RigException lost = failure(rig(sound, 100));

        assertThat(lost.kind()).isEqualTo(RigException.Cause.DEVICE_LOST);
        assertThat(lost.reason().key()).isEqualTo("audio-time-limit");
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void saysWhyALineDidNotOpen() {
        FakeSound sound = new FakeSound(DELAY, 1);
        sound.refusal = new RigException(RigException.Cause.REFUSED, Reason.of("audio-no-output"));

        assertThat(failure(rig(sound, 10_000)).reason().key()).isEqualTo("audio-no-output");
    }

    @Test
    void fallsSilentAtOnceWhenStoppedByItsListener() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        AudioRig rig = rig(sound, 10_000);

        RigException stopped = catchThrowableOfType(
                RigException.class,
                () -> rig.play(PLAN, TestPointKind.TERMINALS, share -> {
                    if (share > 0.3) {
                        rig.stop();
                    }
                }));

        assertThat(stopped.kind()).isEqualTo(RigException.Cause.STOPPED);
        assertThat(sound.silenced()).isTrue();
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void stopsEvenWhenTheSoundSystemHangs() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        sound.hangSilence = true;
        AudioRig rig = rig(sound, 10_000);

        RigException stopped = catchThrowableOfType(
                RigException.class,
                () -> rig.play(PLAN, TestPointKind.TERMINALS, share -> {
                    if (share > 0.3) {
                        rig.stop();
                    }
                }));

        assertThat(stopped.kind()).isEqualTo(RigException.Cause.STOPPED);
        sound.release();
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void stopsWhenItsCallerIsInterrupted() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 1);
        AudioRig rig = rig(sound, 10_000);
        AtomicReference<RigException> stopped = new AtomicReference<>();
        AtomicReference<Boolean> stillInterrupted = new AtomicReference<>();
        Thread caller = new Thread(() -> {
            Thread me = Thread.currentThread();
            stopped.set(catchThrowableOfType(
                    RigException.class, () -> rig.play(PLAN, TestPointKind.TERMINALS, share -> me.interrupt())));
            stillInterrupted.set(Thread.interrupted());
        });
        caller.start();
        caller.join();

        assertThat(stopped.get().kind()).isEqualTo(RigException.Cause.STOPPED);
        assertThat(stillInterrupted.get()).isTrue();
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void stopsWhenMoreComesBackThanThePlanLets() throws InterruptedException {
        FakeSound sound = new FakeSound(DELAY, 2);

        RigException refused = failure(rig(sound, 10_000));

        assertThat(refused.kind()).isEqualTo(RigException.Cause.REFUSED);
        assertThat(refused.reason().key()).isEqualTo("audio-too-many-volts");
        assertThat(sound.silenced()).isTrue();
        assertThat(sound.closes()).isTrue();
    }

    @Test
    void playsOneMeasurementAtATime() throws RigException {
        AudioRig rig = rig(new FakeSound(DELAY, 1), 10_000);
        AtomicReference<RigException> second = new AtomicReference<>();

        rig.play(PLAN, TestPointKind.TERMINALS, share -> {
            if (second.get() == null) {
                second.set(failure(rig));
            }
        });

        assertThat(second.get().reason().key()).isEqualTo("rig-busy");
    }

    @Test
    void refusesAPlanOfAnotherSampleRate() {
        SweepPlan other = new SweepPlan(SweepSignal.synchronised(100, 10_000, 0.2, 44_100, LEVEL), 0.1, 0.1, 1);

        RigException refused = catchThrowableOfType(
                RigException.class,
                () -> rig(new FakeSound(DELAY, 1), 10_000).play(other, TestPointKind.TERMINALS, share -> {}));

        assertThat(refused.reason().key()).isEqualTo("rig-sample-rate");
    }
}
