package org.docksweep.acoustic;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.docksweep.sweep.AcousticCurve;

/**
 * How much longer the sound's way is than when the baseline was made: the delay at which the phases of all heard ways agree best
 * with the baseline's, {@code max over tau of sum_w |sum_i exp j(phi_i - phi0_i + 2 pi f_i tau)|}. The sum of each way counts by its
 * magnitude, so that a way turned over does not count as moved, and a silent one does not count at all; the peak of the impulse
 * response would jump when the tweeter dies. Frequencies from 500 Hz: below, a warm suspension turns the phase as ten centimetres do.
 *
 * @param delayS delay behind the baseline, in seconds, positive when the way is longer; -3 to 3 ms
 */
public record PathChange(double delayS) {
    private static final double FROM_HZ = 500;
    private static final double MOST_S = 3e-3;
    private static final double STEP_S = 1e-5;

    /** One and a half octaves of the grid must tell it. */
    private static final double LEAST_OCTAVES = 1.5;

    /** Phases that agree to 45 degrees have a sum of 0.7. */
    private static final double LEAST_AGREEMENT = 0.7;

    /**
     * Compares.
     *
     * @param heard curve with a print
     * @param baseline curve of the same cabinet with a print on the same grid
     * @param bands ways that are heard
     * @return the change; empty where it cannot be told
     */
    public static Optional<PathChange> of(AcousticCurve heard, AcousticCurve baseline, List<WayBand> bands) {
        if (heard.print() == null || baseline.print() == null) {
            return Optional.empty();
        }
        double[] hz = heard.frequencyHz();
        double[] baselineHz = baseline.frequencyHz();
        double[] phase = heard.print().phaseRad();
        double[] before = baseline.print().phaseRad();
        double arrivalS = heard.print().arrivalS() - baseline.print().arrivalS();
        double[][] frequencies = new double[bands.size()][];
        double[][] angles = new double[bands.size()][];
        double octaves = 0;
        for (int w = 0; w < bands.size(); w++) {
            double fromHz = Math.max(FROM_HZ, bands.get(w).fromHz());
            double toHz = bands.get(w).toHz();
            octaves += Math.max(0, StrictMath.log(toHz / fromHz) / StrictMath.log(2));
            double[] f = new double[hz.length];
            double[] a = new double[hz.length];
            int count = 0;
            for (int i = 0; i < hz.length; i++) {
                int at = hz[i] < fromHz || hz[i] > toHz ? -1 : Arrays.binarySearch(baselineHz, hz[i]);
                if (at >= 0) {
                    f[count] = hz[i];
                    // Phases are told without their arrivals.
                    a[count++] = phase[i] - before[at] - 2 * Math.PI * hz[i] * arrivalS;
                }
            }
            frequencies[w] = Arrays.copyOf(f, count);
            angles[w] = Arrays.copyOf(a, count);
        }
        return octaves < LEAST_OCTAVES ? Optional.empty() : best(frequencies, angles);
    }

    private static Optional<PathChange> best(double[][] frequencies, double[][] angles) {
        double best = 0;
        double at = 0;
        int steps = (int) Math.round(MOST_S / STEP_S);
        for (int s = -steps; s <= steps; s++) {
            double agreement = agreement(frequencies, angles, s * STEP_S);
            if (agreement > best) {
                best = agreement;
                at = s * STEP_S;
            }
        }
        return best >= LEAST_AGREEMENT ? Optional.of(new PathChange(at)) : Optional.empty();
    }

    private static double agreement(double[][] frequencies, double[][] angles, double delayS) {
        double sum = 0;
        int points = 0;
        for (int w = 0; w < frequencies.length; w++) {
            double re = 0;
            double im = 0;
            for (int i = 0; i < frequencies[w].length; i++) {
                double angle = angles[w][i] + 2 * Math.PI * frequencies[w][i] * delayS;
                re += StrictMath.cos(angle);
                im += StrictMath.sin(angle);
            }
            sum += StrictMath.hypot(re, im);
            points += frequencies[w].length;
        }
        return points == 0 ? 0 : sum / points;
    }

    /**
     * The change as a length.
     *
     * @return metres at 343 m/s, positive when the way is longer
     */
    public double metres() {
        return delayS * MicrophoneCheck.SOUND_M_PER_S;
    }

    /**
     * Whether more has moved than marks on the floor, samples and the air's temperature explain.
     *
     * @param wayS way of the sound at the baseline, in seconds
     * @return true beyond 5 cm and 3 % of the way
     */
    public boolean displaced(double wayS) {
        return Math.abs(metres())
                > MicrophoneCheck.MOVED_LIMIT_M + MicrophoneCheck.AIR_SHARE * wayS * MicrophoneCheck.SOUND_M_PER_S;
    }
}
