package org.docksweep.acoustic;

import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;

/** Makes captures of a line input whose sound is a known function of the drive, with whatever is added to it. */
final class SoundMaker {
    static final double PASCALS_FULL_SCALE = 20;
    private static final double VOLTS_FULL_SCALE = 10;
    private static final int LATENCY = 2_400;
    private static final int TRAVEL = 139;

    private final SweepPlan plan;
    private final double[] pascals;
    private final double[] volts;

    SoundMaker(
            double startHz, double stopHz, double durationS, int rateHz, int repeats, DoubleUnaryOperator pascalsOf) {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(startHz, 1), new LevelMask.Point(stopHz, 1)));
        plan = new SweepPlan(SweepSignal.synchronised(startHz, stopHz, durationS, rateHz, mask), 0.5, 0.5, repeats);
        double[] drive = plan.driveVolts();
        volts = new double[drive.length + 2 * LATENCY];
        pascals = new double[volts.length];
        for (int i = 0; i < drive.length; i++) {
            volts[i + LATENCY] = drive[i];
            pascals[i + LATENCY + TRAVEL] = pascalsOf.applyAsDouble(drive[i] / Math.sqrt(2));
        }
    }

    SweepSignal signal() {
        return plan.signal();
    }

    /** Frame at which a sweep, as heard, has made so many turns of its phase. */
    int frameAtTurns(int sweep, double turns) {
        double rate = signal().sampleRateHz();
        double timeS = signal().rateConstantS() * Math.log(turns / signal().rateConstantS() / signal().startHz());
        return plan.startFrame(sweep) + LATENCY + TRAVEL + (int) Math.rint(timeS * rate);
    }

    /** Adds a burst of a tone under a Hann window. */
    SoundMaker burst(int frame, double peakPa, double toneHz, double lengthS) {
        int length = (int) (lengthS * signal().sampleRateHz());
        for (int i = 0; i < length; i++) {
            double window = 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / length);
            pascals[frame - length / 2 + i] +=
                    peakPa * window * Math.cos(2 * Math.PI * toneHz * (i - length / 2) / signal().sampleRateHz());
        }
        return this;
    }

    SoundMaker noise(double rmsPa, long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < pascals.length; i++) {
            pascals[i] += rmsPa * random.nextGaussian();
        }
        return this;
    }

    /** A knock that dies away within a second, as in a hall. */
    SoundMaker knock(int frame, double peakPa, long seed) {
        Random random = new Random(seed);
        int length = Math.min(pascals.length - frame, signal().sampleRateHz());
        for (int i = 0; i < length; i++) {
            double t = i / (double) signal().sampleRateHz();
            double envelope = Math.exp(-t / 0.003) + 0.2 * Math.exp(-6.9 * t);
            pascals[frame + i] += 0.5 * peakPa * envelope * random.nextGaussian();
        }
        return this;
    }

    int start(int sweep) {
        return plan.startFrame(sweep) + LATENCY + TRAVEL;
    }

    double[] pascals() {
        return pascals;
    }

    Capture make() {
        CaptureHeader header = new CaptureHeader(
                Instant.parse("2026-05-01T01:23:45Z"),
                "test rig",
                TestPointKind.LINE_INPUT,
                List.of(
                        new CaptureChannel(ChannelRole.VOLTAGE, VOLTS_FULL_SCALE),
                        new CaptureChannel(ChannelRole.MICROPHONE, PASCALS_FULL_SCALE)),
                plan,
                null);
        return new Capture(
                header, new float[][] {samples(volts, VOLTS_FULL_SCALE), samples(pascals, PASCALS_FULL_SCALE)});
    }

    private static float[] samples(double[] values, double fullScale) {
        Random random = new Random(5);
        float[] samples = new float[values.length];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) (values[i] / fullScale + 2e-7 * random.nextGaussian());
        }
        return samples;
    }
}
