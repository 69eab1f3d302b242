package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class CausalityTest {
    private static final double[] GRID_HZ = FrequencyGrid.within(20.6, 19_400);
    private static final long SEED = 20260601;

    /** What a measurement that obeys leaves at most, as the Javadoc of the analysis promises. */
    private static final double OBEYS = 0.005;

    /** Noise of 1 % alone: none of so many may fail, which keeps the share below 1.5 % with 95 % confidence. */
    private static final int NOISY_CURVES = 200;

    private static final double NOISE = 0.01;

    static Stream<Arguments> loads() {
        return Stream.of(
                Arguments.of("resistor", (DoubleFunction<Complex>) f -> Complex.valueOf(8)),
                Arguments.of("coil", (DoubleFunction<Complex>) f -> new Complex(0.3, 2 * Math.PI * f * 0.5e-3)),
                Arguments.of("capacitor", (DoubleFunction<Complex>)
                        f -> new Complex(0.1, -1 / (2 * Math.PI * f * 4.7e-6))),
                Arguments.of("free driver", (DoubleFunction<Complex>) Loads::freeDriver),
                Arguments.of("vented driver", (DoubleFunction<Complex>) Loads::ventedDriver),
                Arguments.of("lossy driver", (DoubleFunction<Complex>) Loads::lossyDriver),
                Arguments.of("horn open, a notch of Q 38", (DoubleFunction<Complex>) Loads::hornOpen));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("loads")
    void acceptsLoadsThatObey(String name, DoubleFunction<Complex> load) {
        Causality.Result result = test(curve(load), 1e-4);
        assertThat(result.relativeRms()).isLessThan(OBEYS);
        assertThat(result.broken()).isFalse();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("loads")
    void refusesACurveOfTwoLoads(String name, DoubleFunction<Complex> load) {
        Complex[] curve = curve(load);
        for (int i = curve.length / 2; i < curve.length; i++) {
            curve[i] = curve[i].multiply(1.2);
        }
        assertThat(test(curve, 1e-4).broken()).isTrue();
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("loads")
    void refusesAGainThatSlopesWithoutItsPhase(String name, DoubleFunction<Complex> load) {
        Complex[] curve = curve(load);
        double before = test(curve, 1e-4).relativeRms();
        for (int i = 0; i < curve.length; i++) {
            curve[i] = curve[i].multiply(Math.pow(GRID_HZ[i] / 1000, 0.15));
        }
        assertThat(test(curve, 1e-4).relativeRms()).isGreaterThan(before + OBEYS);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("loads")
    void doesNotBlameNoise(String name, DoubleFunction<Complex> load) {
        Random random = new Random(SEED);
        int broken = 0;
        for (int n = 0; n < NOISY_CURVES; n++) {
            Complex[] curve = curve(load);
            for (int i = 0; i < curve.length; i++) {
                double u = NOISE * curve[i].norm();
                curve[i] = curve[i].add(new Complex(u * random.nextGaussian(), u * random.nextGaussian()));
            }
            broken += test(curve, NOISE).broken() ? 1 : 0;
        }
        assertThat(broken).isZero();
    }

    private static Complex[] curve(DoubleFunction<Complex> load) {
        return java.util.Arrays.stream(GRID_HZ).mapToObj(load).toArray(Complex[]::new);
    }

    private static Causality.Result test(Complex[] curve, double relativeUncertainty) {
        int n = curve.length;
        double[] re = new double[n];
        double[] im = new double[n];
        double[] u = new double[n];
        for (int i = 0; i < n; i++) {
            re[i] = curve[i].getReal();
            im[i] = curve[i].getImaginary();
            u[i] = relativeUncertainty * curve[i].norm();
        }
        return Causality.test(GRID_HZ, re, im, u);
    }
}
