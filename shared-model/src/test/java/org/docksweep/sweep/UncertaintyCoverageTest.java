package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleFunction;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** Whether stated uncertainties are true: intervals of 1.96 standard uncertainties must hold the truth 95 times of 100. */
class UncertaintyCoverageTest {
    private static final long FIRST_SEED = 20260600;
    private static final int SEEDS = 16;

    /** Noise of a poor input, so that noise and not the gates' own ripple decides. */
    private static final double NOISE_FULL_SCALE = 5e-4;

    private static final double FACTOR_95 = 1.96;

    @Test
    void intervalsHoldTheTruthAsOftenAsTheyClaim() {
        SweepPlan plan = CaptureMaker.plan(20, 20000, 1, 1, 2);
        DoubleFunction<Complex> load = f -> Complex.valueOf(8);
        int points = 0;
        int held = 0;
        SweepAnalyser analyser = new SweepAnalyser(AnalysisSettings.standard().withNoiseLimit(0.5));
        for (int n = 0; n < SEEDS; n++) {
            ImpedanceCurve curve = analyser.analyse(new CaptureMaker()
                            .plan(plan)
                            .load(load)
                            .noise(NOISE_FULL_SCALE)
                            .seed(FIRST_SEED + n)
                            .make())
                    .impedance();
            for (int p = 0; p < curve.size(); p++) {
                double error = Math.abs(curve.magnitudeOhm(p) - 8);
                held += error < FACTOR_95 * curve.standardUncertaintyOhm()[p] ? 1 : 0;
                points++;
            }
        }
        assertThat(held / (double) points).isBetween(0.93, 0.97);
    }

    /** The closed form for noise of equal density on both channels: var(ln Z) = 2 Sn Tg f g / (A^2 L). */
    @Test
    void agreesWithTheClosedFormForWhiteNoise() {
        double noiseV = NOISE_FULL_SCALE * CaptureMaker.VOLTS_FULL_SCALE;
        double noiseA = NOISE_FULL_SCALE * CaptureMaker.AMPERES_FULL_SCALE;
        SweepPlan plan = CaptureMaker.plan(20, 20000, 2, 1, 1);
        double loadOhm = 8;
        double senseOhm = 0.5;
        ImpedanceCurve curve = new SweepAnalyser()
                .withSettings(AnalysisSettings.standard().withNoiseLimit(0.5))
                .analyse(new CaptureMaker()
                        .plan(plan)
                        .resistor(loadOhm)
                        .senseOhm(senseOhm)
                        .noise(NOISE_FULL_SCALE)
                        .make())
                .impedance();
        double ratioSum = 0;
        int count = 0;
        for (int p = 0; p < curve.size(); p++) {
            double f = curve.frequencyHz()[p];
            if (f < 100 || f > 15000) {
                continue;
            }
            Gate gate = Gate.electrical(f, plan.signal(), AnalysisSettings.standard());
            double energyS = 0;
            for (double w : gate.window(48000)) {
                energyS += w * w / 48000;
            }
            // One-sided densities; A^2 = 2 U^2; the current's noise as volts across the load.
            double densityV = noiseV * noiseV / 24000;
            double densityA = noiseA * noiseA / 24000;
            double gain = Math.pow(loadOhm + senseOhm, 2) * (densityV / (loadOhm * loadOhm) + densityA);
            double relativeVariance = 2 * energyS * f / (2 * plan.signal().rateConstantS()) * gain;
            double expectedOhm = loadOhm * Math.sqrt(relativeVariance / 2);
            ratioSum += curve.standardUncertaintyOhm()[p] / expectedOhm;
            count++;
        }
        assertThat(ratioSum / count).isBetween(0.95, 1.05);
    }
}
