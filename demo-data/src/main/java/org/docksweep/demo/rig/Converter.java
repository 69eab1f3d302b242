package org.docksweep.demo.rig;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.docksweep.fleet.TestPointKind;
import org.docksweep.sweep.SweepPlan;

/** From signals to samples: noise, hum, what was spoiled on purpose, and the 24-bit converter. */
final class Converter {
    private static final double REFERENCE_PRESSURE_PA = 20e-6;
    private static final double MICROPHONE_NOISE_DB = 22;
    private static final double HUM_AT_MICROPHONE_PA = 0.0008;
    private static final double KNOCK_PEAK_PA = 4;
    private static final int TORN_FRAMES = 600;

    /** Factor of a gain knob at its end. */
    private static final double MIC_TURNED_UP = 60;

    /** 4 dB. */
    private static final double MIC_TURNED_A_LITTLE = Math.pow(10, 4 / 20.0);

    private final Electronics electronics;
    private final HallEvents events;
    private final double sampleRateHz;

    Converter(Electronics electronics, double sampleRateHz) {
        this.electronics = electronics;
        this.sampleRateHz = sampleRateHz;
        this.events = new HallEvents(sampleRateHz);
    }

    float[][] convert(TestPointKind kind, Playback playback, SweepPlan plan, Signals signals) {
        SplittableRandom random = playback.random();
        Disturbance disturbance = playback.disturbance();
        double floor = electronics.converterNoiseFs();
        double[] v = scaled(signals.volts(), Electronics.VOLTS_FULL_SCALE);
        double[] i = scaled(signals.amperes(), Electronics.AMPERES_FULL_SCALE);
        double[] p = signals.pascals();
        if (floor > 0) {
            Noises.addPink(p, REFERENCE_PRESSURE_PA * Math.pow(10, playback.hallNoiseDb() / 20), sampleRateHz, random);
            Noises.addWhite(p, REFERENCE_PRESSURE_PA * Math.pow(10, MICROPHONE_NOISE_DB / 20), random);
            Noises.addHum(p, HUM_AT_MICROPHONE_PA, sampleRateHz, random);
        }
        if (disturbance == Disturbance.KNOCK) {
            double within = 0.3 + 0.4 * random.nextDouble();
            int frame = plan.startFrame(0) + (int) (within * plan.signal().frames());
            Noises.addKnock(p, frame, KNOCK_PEAK_PA, sampleRateHz, random);
        }
        events.add(p, plan, playback);
        if (disturbance == Disturbance.MIC_GAIN) {
            scaled(p, 1 / MIC_TURNED_A_LITTLE);
        } else if (disturbance == Disturbance.MIC_OVERLOADED) {
            scaled(p, 1 / MIC_TURNED_UP);
        } else if (disturbance == Disturbance.MIC_WRONG_CHANNEL && kind != TestPointKind.LINE_INPUT) {
            p = java.util.Arrays.copyOf(signals.amperes(), p.length);
        }
        p = disturbance == Disturbance.MIC_UNPLUGGED ? new double[p.length] : scaled(p, Electronics.PASCALS_FULL_SCALE);
        if (disturbance == Disturbance.CURRENT_DEAD) {
            i = new double[i.length];
        } else {
            Noises.addHum(i, 1.5 * electronics.humFs(), sampleRateHz, random);
        }
        Noises.addHum(v, electronics.humFs(), sampleRateHz, random);
        Noises.addWhite(v, floor, random);
        Noises.addWhite(i, floor, random);
        Noises.addWhite(p, floor, random);
        if (disturbance == Disturbance.CHANNELS_SWAPPED) {
            double[] kept = v;
            v = i;
            i = kept;
        }
        double[][] all = switch (kind) {
            case TERMINALS -> new double[][] {v, i, p};
            case LINE_INPUT -> new double[][] {v, p};
            case BARE_DRIVER -> new double[][] {v, i};
        };
        float[][] samples = new float[all.length][];
        int torn = plan.startFrame(0)
                + (int) (playback.latencyS() * sampleRateHz)
                + (int) ((0.2 + 0.6 * random.nextDouble()) * plan.signal().frames());
        for (int c = 0; c < all.length; c++) {
            samples[c] = quantised(all[c]);
            if (disturbance == Disturbance.DROPOUT) {
                System.arraycopy(
                        samples[c], torn + TORN_FRAMES, samples[c], torn, samples[c].length - torn - TORN_FRAMES);
            } else if (disturbance == Disturbance.SHORT) {
                samples[c] = Arrays.copyOf(samples[c], samples[c].length / 2);
            }
        }
        return samples;
    }

    private static double[] scaled(double[] signal, double unitsPerFullScale) {
        double factor = 1 / unitsPerFullScale;
        for (int k = 0; k < signal.length; k++) {
            signal[k] *= factor;
        }
        return signal;
    }

    /** 24-bit converter that stops at full scale. */
    private static float[] quantised(double[] fullScale) {
        float[] samples = new float[fullScale.length];
        double steps = 1 << 23;
        for (int k = 0; k < samples.length; k++) {
            double step = Math.max(-steps, Math.min(steps - 1, Math.rint(fullScale[k] * steps)));
            samples[k] = (float) (step / steps);
        }
        return samples;
    }
}
