package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class LatencyTest {
    private static final int RATE_HZ = 48_000;

    static Stream<Arguments> captures() {
        DoubleFunction<Complex> resistor = f -> Complex.valueOf(8);
        DoubleFunction<Complex> nearShort = f -> new Complex(0.05, 2 * Math.PI * f * 6e-6);
        return Stream.of(
                Arguments.of("resistor", resistor, 20, -0.31),
                Arguments.of("driver", (DoubleFunction<Complex>) Loads::lossyDriver, 20, 0.0),
                Arguments.of("horn open", (DoubleFunction<Complex>) Loads::hornOpen, 20, 0.05731),
                Arguments.of("short behind a cable", nearShort, 20, 0.2),
                Arguments.of("mid band", (DoubleFunction<Complex>) Loads::lossyDriver, 200, 0.123),
                Arguments.of("high band", resistor, 900, 0.59));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("captures")
    void guessesWhatAFullSearchFinds(String name, DoubleFunction<Complex> load, double startHz, double latencyS) {
        for (int part = 0; part < 4; part++) {
            Capture capture = new CaptureMaker()
                    .plan(CaptureMaker.plan(startHz, 20000, 1.5, 1, 1))
                    .load(load)
                    .noise(1e-4)
                    .hum(0.05, 50)
                    .latencyS(latencyS + part * 0.25 / RATE_HZ)
                    .make();
            try (Workspace workspace = Workspace.open()) {
                assertThat(Latency.guess(capture, ChannelRole.VOLTAGE, workspace))
                        .isPresent()
                        .isEqualTo(Latency.find(capture, ChannelRole.VOLTAGE, workspace));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-6, 1e-2})
    void findsNoDelayInNoise(double noise) {
        Capture capture = new CaptureMaker().resistor(1e-9).noise(noise).make();
        try (Workspace workspace = Workspace.open()) {
            assertThat(Latency.guess(capture, ChannelRole.VOLTAGE, workspace)).isEmpty();
            assertThat(Latency.find(capture, ChannelRole.VOLTAGE, workspace)).isEmpty();
        }
    }
}
