package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.Fault;
import org.docksweep.demo.physics.FaultKind;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepSignal;
import org.junit.jupiter.api.Test;

/** Faults that live in time rather than in the curve, and the noise around them. */
class SoftFaultCaptureTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);
    private static final ModelBook BOOK = DemoModels.book();
    private static final long UNIT_SEED = 99;
    private static final int RATE_HZ = 48_000;

    private static Capture capture(String model, String pointCode, Fault fault, String hallNoiseDb)
            throws RigException {
        VirtualCabinet cabinet = VirtualCabinet.produced(BOOK, model, UNIT_SEED, 2);
        VirtualRig rig = new VirtualRig(RigSettings.of(Map.of("seed", "5", "hallNoiseDb", hallNoiseDb)), CLOCK);
        rig.plug("unit-99", fault == null ? cabinet : cabinet.with(fault), pointCode);
        TestPoint point = BOOK.cabinetModel(model).testPoint(pointCode);
        SweepSignal signal = SweepSignal.synchronised(
                point.levelMask().lowestHz(), point.levelMask().highestHz(), 3, RATE_HZ, point.levelMask());
        return rig.play(new SweepPlan(signal, 0.5, 0.5, 1), point.kind(), s -> {});
    }

    private static double rms(float[] samples, int from, int to) {
        double sum = 0;
        for (int i = from; i < to; i++) {
            sum += samples[i] * samples[i];
        }
        return Math.sqrt(sum / (to - from));
    }

    @Test
    void dropsCurrentButNotVoltageWhenALeadInLetsGo() throws RigException {
        Capture loose = capture("DUNE15B", "LF", Fault.of(FaultKind.INTERMITTENT, "LF", 3), "40");
        int window = RATE_HZ / 200;
        int gaps = 0;
        int from = (int) (1.2 * RATE_HZ);
        int to = (int) (3.2 * RATE_HZ);
        for (int i = from; i < to; i += window) {
            double amperes = rms(loose.fullScale(ChannelRole.CURRENT), i, i + window);
            double volts = rms(loose.fullScale(ChannelRole.VOLTAGE), i, i + window);
            if (amperes < 0.0005 && volts > 0.03) {
                gaps++;
            }
        }
        assertThat(gaps).as("windows of 5 ms without current").isBetween(3, 300);
    }

    @Test
    void scratchesWhenACoilRubsAndOnlyThen() throws RigException {
        // bursts reach 1 to 15 kHz while the sweep is still far below: look between 0.2 and 0.9 s of the sweep
        double quiet = scratch(capture("DUNE15B", "LF", null, "30"));
        double rubbing = scratch(capture("DUNE15B", "LF", Fault.of(FaultKind.RUB, "LF", -35), "30"));
        assertThat(rubbing).isGreaterThan(5 * quiet);
    }

    /** Largest second difference of the microphone early in the sweep: high frequencies only. */
    private static double scratch(Capture capture) {
        float[] p = capture.fullScale(ChannelRole.MICROPHONE);
        double largest = 0;
        for (int i = (int) (0.7 * RATE_HZ); i < 1.4 * RATE_HZ; i++) {
            largest = Math.max(largest, Math.abs(p[i + 1] - 2 * p[i] + p[i - 1]));
        }
        return largest;
    }

    @Test
    void makesHallNoiseOfTheLevelAskedFor() throws RigException {
        Capture capture = capture("SPIN12", "IN", null, "65");
        double pascals = rms(capture.fullScale(ChannelRole.MICROPHONE), 0, RATE_HZ / 2)
                * capture.unitsPerFullScale(ChannelRole.MICROPHONE);
        // half a second of noise with much low frequency in it
        assertThat(20 * Math.log10(pascals / 20e-6)).isCloseTo(65, within(3.0));
    }
}
