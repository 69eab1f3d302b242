package org.docksweep.demo.rig;

import java.util.SplittableRandom;
import org.docksweep.sweep.SweepPlan;

/**
 * What else is heard at the microphone: knocks with the hall's answer, a forklift, wind, the sweep of a neighbour. Added
 * to the sound in place. Spectra and sizes are assumed, no source: a forklift is 31 Hz with harmonics falling by 3 dB
 * each and tyre noise falling by 6 dB per octave above 400 Hz, rising and falling over the capture; wind falls by 18 dB per
 * octave above 25 Hz and comes in gusts; knocks are 75 to 100 dB at their peak.
 */
final class HallEvents {
    private static final double REFERENCE_PA = 20e-6;
    private static final double REVERBERATION_S = 1.1;
    private static final double FORKLIFT_DB = 76;
    private static final double WIND_DB = 98;
    private static final double NEIGHBOUR = Math.pow(10, -14 / 20.0);

    private final double sampleRateHz;

    HallEvents(double sampleRateHz) {
        this.sampleRateHz = sampleRateHz;
    }

    void add(double[] p, SweepPlan plan, Playback playback) {
        SplittableRandom random = playback.random();
        addKnocks(p, playback.knocksPerS(), random);
        switch (playback.disturbance()) {
            case FORKLIFT -> addForklift(p, random);
            case WIND -> addWind(p, random);
            case NEIGHBOUR -> addNeighbour(p, plan, random);
            default -> {}
        }
    }

    private void addKnocks(double[] p, double perS, SplittableRandom random) {
        if (perS <= 0) {
            return;
        }
        double at = gap(perS, random);
        while (at < p.length) {
            knock(p, (int) at, REFERENCE_PA * Math.pow(10, (75 + 25 * random.nextDouble()) / 20), random);
            at += gap(perS, random);
        }
    }

    private double gap(double perS, SplittableRandom random) {
        return -Math.log(1 - random.nextDouble()) / perS * sampleRateHz;
    }

    /** A thump, a click, and noise that dies away with the hall. */
    private void knock(double[] p, int frame, double peak, SplittableRandom random) {
        double thumpHz = 80 + 300 * random.nextDouble();
        double click = random.nextDouble();
        double darkHz = 1500 + 5000 * random.nextDouble();
        double smoothing = Math.exp(-2 * Math.PI * darkHz / sampleRateHz);
        double state = 0;
        int length = (int) Math.min(p.length - frame, REVERBERATION_S * sampleRateHz);
        for (int i = 0; i < length; i++) {
            double t = i / sampleRateHz;
            double white = 2 * random.nextDouble() - 1;
            state = smoothing * state + (1 - smoothing) * white;
            double thump = (1 - 0.6 * click) * Math.exp(-t / 0.03) * Math.sin(2 * Math.PI * thumpHz * t);
            double bright = click * Math.exp(-t / 0.003) * white;
            double tail = 0.25 * Math.pow(10, -3 * t / REVERBERATION_S) * state;
            p[frame + i] += peak * (thump + bright + tail);
        }
    }

    private void addForklift(double[] p, SplittableRandom random) {
        double engineHz = 29 + 5 * random.nextDouble();
        double passes = p.length * (0.2 + 0.6 * random.nextDouble());
        double[] noise = new double[p.length];
        double smoothing = Math.exp(-2 * Math.PI * 400 / sampleRateHz);
        double state = 0;
        for (int n = 1; n <= 12; n++) {
            double level = Math.pow(10, -3 * (n - 1) / 20.0);
            double phase = 2 * Math.PI * random.nextDouble();
            for (int i = 0; i < p.length; i++) {
                noise[i] += level * Math.sin(2 * Math.PI * n * engineHz * i / sampleRateHz + phase);
            }
        }
        for (int i = 0; i < p.length; i++) {
            state = smoothing * state + (1 - smoothing) * (2 * random.nextDouble() - 1);
            double off = (i - passes) / (1.2 * sampleRateHz);
            noise[i] = (noise[i] + 12 * state) / (1 + off * off);
        }
        addScaled(p, noise, FORKLIFT_DB);
    }

    private void addWind(double[] p, SplittableRandom random) {
        double[] noise = new double[p.length];
        double smoothing = Math.exp(-2 * Math.PI * 25 / sampleRateHz);
        double[] states = new double[3];
        double gusts = 1 + 2 * random.nextDouble();
        for (int i = 0; i < p.length; i++) {
            double in = 2 * random.nextDouble() - 1;
            for (int s = 0; s < 3; s++) {
                states[s] = smoothing * states[s] + (1 - smoothing) * in;
                in = states[s];
            }
            noise[i] = in * (1 + 0.5 * Math.sin(2 * Math.PI * gusts * i / sampleRateHz));
        }
        addScaled(p, noise, WIND_DB);
    }

    /** The same plan, started at another time: the sound is the cabinet's own, later and duller. */
    private void addNeighbour(double[] p, SweepPlan plan, SplittableRandom random) {
        int later = (int) ((0.55 + 0.9 * random.nextDouble()) * sampleRateHz);
        double smoothing = Math.exp(-2 * Math.PI * 5000 / sampleRateHz);
        double[] own = p.clone();
        double state = 0;
        for (int i = 0; i + later < p.length && i < plan.totalFrames(); i++) {
            state = smoothing * state + (1 - smoothing) * own[i];
            p[i + later] += NEIGHBOUR * state;
        }
    }

    private void addScaled(double[] p, double[] noise, double levelDb) {
        double square = 0;
        for (double value : noise) {
            square += value * value;
        }
        double factor = REFERENCE_PA * Math.pow(10, levelDb / 20) / Math.sqrt(square / noise.length);
        for (int i = 0; i < p.length; i++) {
            p[i] += factor * noise[i];
        }
    }
}
