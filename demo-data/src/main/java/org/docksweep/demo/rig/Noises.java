package org.docksweep.demo.rig;

import java.util.SplittableRandom;

/** Noise, hum and knocks, added to channels in place. */
final class Noises {
    private Noises() {}

    /** Adds nearly Gaussian white noise (sum of four even draws) of a given rms. */
    static void addWhite(double[] channel, double rms, SplittableRandom random) {
        if (rms <= 0) {
            return;
        }
        for (int i = 0; i < channel.length; i++) {
            channel[i] += rms * normal(random);
        }
    }

    /** One draw of mean 0 and variance 1: four 16-bit parts of one random number. */
    private static double normal(SplittableRandom random) {
        long bits = random.nextLong();
        long sum = (bits & 0xFFFF) + (bits >>> 16 & 0xFFFF) + (bits >>> 32 & 0xFFFF) + (bits >>> 48);
        return (sum - 2 * 65535.0) / (65536 * Math.sqrt(4 / 12.0));
    }

    /**
     * Adds noise whose power per octave is nearly even (white noise through a sum of three first-order low-passes at 20,
     * 250 and 3000 Hz), of a given rms.
     */
    static void addPink(double[] channel, double rms, double sampleRateHz, SplittableRandom random) {
        if (rms <= 0) {
            return;
        }
        double[] cornersHz = {20, 250, 3000};
        double[] poles = new double[3];
        double[] gains = new double[3];
        for (int k = 0; k < 3; k++) {
            poles[k] = Math.exp(-2 * Math.PI * cornersHz[k] / sampleRateHz);
            gains[k] = (1 - poles[k]) / Math.sqrt(cornersHz[k]);
        }
        double[] noise = new double[channel.length];
        double slow = 0;
        double middle = 0;
        double quick = 0;
        double power = 0;
        for (int i = 0; i < noise.length; i++) {
            double white = normal(random);
            slow = poles[0] * slow + gains[0] * white;
            middle = poles[1] * middle + gains[1] * white;
            quick = poles[2] * quick + gains[2] * white;
            noise[i] = slow + middle + quick;
            power += noise[i] * noise[i];
        }
        double factor = rms / Math.sqrt(power / noise.length);
        for (int i = 0; i < noise.length; i++) {
            channel[i] += factor * noise[i];
        }
    }

    /** Adds mains hum: 50 Hz and odd harmonics, falling. */
    static void addHum(double[] channel, double peak, double sampleRateHz, SplittableRandom random) {
        if (peak <= 0) {
            return;
        }
        double mainsHz = 50 + 0.03 * (2 * random.nextDouble() - 1);
        double[] shares = {1, 0.2, 0.45, 0.1, 0.25};
        int partials = shares.length;
        double[] cosine = new double[partials];
        double[] sine = new double[partials];
        double[] turnCos = new double[partials];
        double[] turnSin = new double[partials];
        for (int n = 0; n < partials; n++) {
            double step = 2 * Math.PI * mainsHz * (n + 1) / sampleRateHz;
            double phase = 2 * Math.PI * random.nextDouble();
            cosine[n] = peak * shares[n] * Math.cos(phase);
            sine[n] = peak * shares[n] * Math.sin(phase);
            turnCos[n] = Math.cos(step);
            turnSin[n] = Math.sin(step);
        }
        // all partials in one pass: each waits for its own last step, not for the others
        for (int i = 0; i < channel.length; i++) {
            double sum = 0;
            for (int n = 0; n < partials; n++) {
                double c = cosine[n];
                double s = sine[n];
                sum += c;
                cosine[n] = c * turnCos[n] - s * turnSin[n];
                sine[n] = s * turnCos[n] + c * turnSin[n];
            }
            channel[i] += sum;
        }
    }

    /** Adds a thump with a click, as of a case falling over. */
    static void addKnock(double[] channel, int frame, double peak, double sampleRateHz, SplittableRandom random) {
        double thumpHz = 90 + 120 * random.nextDouble();
        int length = (int) Math.min(channel.length - frame, 0.35 * sampleRateHz);
        for (int i = 0; i < length; i++) {
            double t = i / sampleRateHz;
            double thump = Math.exp(-t / 0.05) * Math.sin(2 * Math.PI * thumpHz * t);
            double click = 0.5 * Math.exp(-t / 0.004) * normal(random);
            channel[frame + i] += peak * (thump + click);
        }
    }
}
