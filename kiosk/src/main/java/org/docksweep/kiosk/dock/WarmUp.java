package org.docksweep.kiosk.dock;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.gate.PointReference;
import org.docksweep.judge.JudgeRequest;
import org.docksweep.judge.JudgeRequest.PointCapture;
import org.docksweep.kiosk.fleet.LocalFleet;
import org.docksweep.rigcal.RigRepeatability;
import org.docksweep.sweep.Capture;
import org.docksweep.sweep.CaptureChannel;
import org.docksweep.sweep.CaptureHeader;
import org.docksweep.sweep.ChannelRole;
import org.docksweep.sweep.CurveCorrection;
import org.docksweep.sweep.SweepPlan;

/**
 * Judges a made-up capture before the first cabinet comes: until the gate has judged once its classes are neither loaded nor compiled,
 * and the first answer of a night takes three times as long as the others. What it says is thrown away.
 */
final class WarmUp {
    private static final int SAMPLE_RATE_HZ = 48_000;
    private static final double LOAD_OHM = 8;
    private static final double VOLTS_FULL_SCALE = 100;
    private static final double AMPERES_FULL_SCALE = 20;
    private static final double PASCALS_FULL_SCALE = 40;
    /** Of full scale: no channel is ever quite silent. */
    private static final double NOISE = 1e-5;

    private final Gate gate;

    WarmUp(Gate gate) {
        this.gate = gate;
    }

    /**
     * Judges once, as the first model with terminals and a reference.
     *
     * @param fleet the fleet
     * @return whether there was such a model
     */
    boolean judge(LocalFleet fleet) {
        for (PointReference reference : fleet.references()) {
            Optional<CabinetModel> model = fleet.snapshot().book().cabinetModels().stream()
                    .filter(m -> m.code().equals(reference.cabinetModelCode()))
                    .filter(m -> m.testPoint(reference.testPointCode()).kind() == TestPointKind.TERMINALS)
                    .findFirst();
            if (model.isPresent()) {
                gate.judge(request(fleet, model.get(), model.get().testPoint(reference.testPointCode())));
                return true;
            }
        }
        return false;
    }

    private JudgeRequest request(LocalFleet fleet, CabinetModel model, TestPoint point) {
        return new JudgeRequest(
                fleet.snapshot().book(),
                model,
                List.of(new PointCapture(point.code(), resistor(gate.sweep(point, SAMPLE_RATE_HZ)))),
                CurveCorrection.NONE,
                fleet.references(),
                List.of(),
                fleet.snapshot().limits(),
                fleet.snapshot().priorsInForce(),
                RigRepeatability.UNKNOWN);
    }

    /** A resistor on the lead, which no cabinet is, so that every suspect is tried; and a microphone that hears the sweep. */
    private static Capture resistor(SweepPlan plan) {
        double[] volts = plan.driveVolts();
        Random noise = new Random(1);
        float[][] samples = new float[3][volts.length];
        for (int i = 0; i < volts.length; i++) {
            samples[0][i] = (float) (volts[i] / VOLTS_FULL_SCALE + NOISE * noise.nextGaussian());
            samples[1][i] = (float) (volts[i] / LOAD_OHM / AMPERES_FULL_SCALE + NOISE * noise.nextGaussian());
            samples[2][i] = (float) (volts[i] / VOLTS_FULL_SCALE + NOISE * noise.nextGaussian());
        }
        return new Capture(
                new CaptureHeader(
                        Instant.EPOCH,
                        "warm-up",
                        TestPointKind.TERMINALS,
                        List.of(
                                new CaptureChannel(ChannelRole.VOLTAGE, VOLTS_FULL_SCALE),
                                new CaptureChannel(ChannelRole.CURRENT, AMPERES_FULL_SCALE),
                                new CaptureChannel(ChannelRole.MICROPHONE, PASCALS_FULL_SCALE)),
                        plan,
                        null),
                samples);
    }
}
