package org.docksweep.kiosk.rig.audio;

import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.concurrent.atomic.AtomicReference;
import org.docksweep.fleet.Reason;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.Rig;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;

/**
 * A rig on a real audio interface. Every measurement opens its lines anew, plays silence first, captures before, during
 * and after, measures the delay of the loop and cuts it off, so that frame 0 of the capture is frame 0 of the plan
 * within a few samples. {@link LevelGuard} watches the level.
 */
public final class AudioRig implements Rig {
    /** What opening, starting and closing may take besides the playback, in milliseconds. */
    private static final long SPARE_MS = 5000;

    private final AudioSettings settings;
    private final LineOpener opener;
    private final Clock clock;
    private final long spareMs;
    private final AtomicReference<Measurement> playing = new AtomicReference<>();
    private volatile OptionalInt delayFrames = OptionalInt.empty();

    AudioRig(AudioSettings settings, LineOpener opener, Clock clock) {
        this(settings, opener, clock, SPARE_MS);
    }

    AudioRig(AudioSettings settings, LineOpener opener, Clock clock, long spareMs) {
        this.settings = settings;
        this.opener = opener;
        this.clock = clock;
        this.spareMs = spareMs;
    }

    @Override
    public String id() {
        return settings.id();
    }

    @Override
    public int sampleRateHz() {
        return settings.sampleRateHz();
    }

    /**
     * Delay of the loop in the last measurement: from the first frame captured, which is before the first frame played.
     *
     * @return frames; empty when nothing was measured yet or the sweep did not come back
     */
    public OptionalInt loopDelayFrames() {
        return delayFrames;
    }

    @Override
    public Capture play(SweepPlan plan, TestPointKind kind, ProgressListener listener) throws RigException {
        if (plan.signal().sampleRateHz() != settings.sampleRateHz()) {
            throw new RigException(
                    RigException.Cause.REFUSED,
                    Reason.of(
                            "rig-sample-rate",
                            Integer.toString(plan.signal().sampleRateHz()),
                            Integer.toString(settings.sampleRateHz())));
        }
        AudioSettings.Output output = settings.outputFor(kind);
        double[] volts = plan.driveVolts();
        LevelGuard.check(plan, volts, output);
        double[] all = new double[settings.leadInFrames() + volts.length + longestDelayFrames()];
        System.arraycopy(volts, 0, all, settings.leadInFrames(), volts.length);
        Measurement measurement = new Measurement(settings, opener, all, output, listener);
        if (!playing.compareAndSet(null, measurement)) {
            throw new RigException(RigException.Cause.REFUSED, Reason.of("rig-busy"));
        }
        try {
            Instant began = clock.instant().truncatedTo(ChronoUnit.MICROS);
            float[][] samples = measurement.run(1000L * all.length / settings.sampleRateHz() + spareMs);
            return cut(began, plan, volts, kind, samples);
        } finally {
            playing.set(null);
        }
    }

    private Capture cut(Instant began, SweepPlan plan, double[] volts, TestPointKind kind, float[][] samples) {
        List<ChannelRole> roles = settings.roles();
        int first = settings.leadInFrames();
        OptionalInt delay =
                LoopDelay.find(samples[roles.indexOf(ChannelRole.VOLTAGE)], first, volts, longestDelayFrames());
        int microphone = roles.indexOf(ChannelRole.MICROPHONE);
        if (delay.isEmpty() && kind == TestPointKind.LINE_INPUT && microphone >= 0) {
            delay = LoopDelay.find(samples[microphone], first, volts, longestDelayFrames());
        }
        delayFrames = delay;
        // Without a sweep everything is kept: the analysis says what is missing.
        int from = first + delay.orElse(0);
        int to = delay.isPresent() ? Math.min(samples[0].length, from + plan.totalFrames()) : samples[0].length;
        // A line input draws no current through the sense resistor.
        List<CaptureChannel> channels = settings.channels().stream()
                .filter(c -> kind != TestPointKind.LINE_INPUT || c.role() != ChannelRole.CURRENT)
                .toList();
        float[][] kept = channels.stream()
                .map(c -> Arrays.copyOfRange(samples[roles.indexOf(c.role())], from, to))
                .toArray(float[][]::new);
        return new Capture(new CaptureHeader(began, id(), kind, channels, plan, settings.ambientCelsius()), kept);
    }

    private int longestDelayFrames() {
        return (int) Math.ceil(LevelGuard.LONGEST_DELAY_S * settings.sampleRateHz());
    }

    @Override
    public void stop() {
        Measurement current = playing.get();
        if (current != null) {
            current.stop();
        }
    }

    @Override
    public void close() {
        stop();
    }
}
