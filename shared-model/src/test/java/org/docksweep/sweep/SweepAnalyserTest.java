package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.function.DoubleFunction;
import java.util.stream.Stream;
import org.docksweep.fleet.LevelMask;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class SweepAnalyserTest {
    /** The figure to reach for |Z|: 0.5 % + 0.02 ohm. */
    private static final double REACH_SHARE = 0.005;

    private static final double REACH_OHM = 0.02;

    private final SweepAnalyser analyser = new SweepAnalyser();

    static Stream<Arguments> loads() {
        return Stream.of(
                Arguments.of("10 ohm", (DoubleFunction<Complex>) f -> Complex.valueOf(10)),
                Arguments.of("free driver", (DoubleFunction<Complex>) Loads::freeDriver),
                Arguments.of("vented driver", (DoubleFunction<Complex>) Loads::ventedDriver),
                Arguments.of("lossy driver", (DoubleFunction<Complex>) Loads::lossyDriver),
                Arguments.of("horn open behind its crossover", (DoubleFunction<Complex>) Loads::hornOpen));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("loads")
    void measuresImpedance(String name, DoubleFunction<Complex> load) {
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker().load(load).make());
        assertThat(analysis.issues()).isEmpty();
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.PRESENT);
        assertThat(analysis.currentDropouts()).isEmpty();
        assertClose(analysis.impedance(), load);
    }

    @Test
    void measuresAResistorOfTenOhmWithinHalfAPerCent() {
        ImpedanceCurve curve =
                analyser.analyse(new CaptureMaker().resistor(10).make()).impedance();
        for (double magnitudeOhm : curve.magnitudesOhm()) {
            assertThat(magnitudeOhm).isCloseTo(10, within(0.05));
        }
    }

    /** Outside values: reference_driver_impedance.csv, computed and confirmed with a circuit simulator. */
    @Test
    void agreesWithTheReferenceDriverTable() {
        int[] columns = {1, 5, 7};
        List<DoubleFunction<Complex>> loads = List.of(Loads::freeDriver, Loads::ventedDriver, Loads::lossyDriver);
        for (double[] row : CheckData.rows("reference_driver_impedance.csv")) {
            for (int i = 0; i < columns.length; i++) {
                Complex z = loads.get(i).apply(row[0]);
                assertThat(z.getReal()).isCloseTo(row[columns[i]], within(1e-8));
                assertThat(z.getImaginary()).isCloseTo(row[columns[i] + 1], within(1e-8));
            }
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.2, -0.01, 0, 0.1234567, 0.29})
    void doesNotNeedToKnowTheDelay(double latencyS) {
        SweepAnalysis analysis = analyser.analyse(
                new CaptureMaker().load(Loads::ventedDriver).latencyS(latencyS).make());
        assertThat(analysis.issues()).isEmpty();
        assertClose(analysis.impedance(), Loads::ventedDriver);
    }

    @Test
    void keepsHarmonicsOutOfTheLinearResponse() {
        ImpedanceCurve clean = analyser.analyse(
                        new CaptureMaker().load(Loads::ventedDriver).make())
                .impedance();
        ImpedanceCurve bent = analyser.analyse(new CaptureMaker()
                        .load(Loads::ventedDriver)
                        .secondHarmonic(0.1)
                        .make())
                .impedance();
        for (int p = 0; p < clean.size(); p++) {
            // A second harmonic of 7 % must stay well within the figure to reach.
            assertThat(bent.magnitudeOhm(p)).isCloseTo(clean.magnitudeOhm(p), within(3e-3 * clean.magnitudeOhm(p)));
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {49.93, 50.03, 60.02})
    void removesHumFortyDecibelsBelowTheSweep(double humHz) {
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker()
                .load(Loads::ventedDriver)
                .hum(0.01 * Math.sqrt(2), humHz)
                .make());
        assertThat(analysis.issues()).isEmpty();
        assertClose(analysis.impedance(), Loads::ventedDriver);
    }

    @Test
    void followsALevelThatVariesWithFrequency() {
        LevelMask mask = new LevelMask(List.of(
                new LevelMask.Point(200, 0.3),
                new LevelMask.Point(600, 0.3),
                new LevelMask.Point(1200, 1.0),
                new LevelMask.Point(21000, 1.0)));
        SweepPlan plan = new SweepPlan(SweepSignal.synchronised(200, 20000, 1, 48000, mask), 0.5, 0.6, 2);
        DoubleFunction<Complex> horn = f -> Loads.freeDriver(f / 15);
        SweepAnalysis analysis =
                analyser.analyse(new CaptureMaker().plan(plan).load(horn).make());
        assertThat(analysis.issues()).isEmpty();
        assertClose(analysis.impedance(), horn);
    }

    @Test
    void givesTheSameDigitsAgain() {
        Capture capture = new CaptureMaker().load(Loads::hornOpen).make();
        assertThat(analyser.analyse(capture).impedance())
                .isEqualTo(new SweepAnalyser().analyse(capture).impedance());
    }

    @Test
    void usesTheGridForItsCurves() {
        ImpedanceCurve curve = analyser.analyse(new CaptureMaker().make()).impedance();
        assertThat(FrequencyGrid.within(1, 24000)).contains(curve.frequencyHz());
    }

    @Test
    void measuresTheLevelOfTheMicrophone() {
        // 0.5 Pa/V arriving after 3 ms, with an echo of the hall 25 ms later that must not show.
        DoubleFunction<Complex> sound =
                f -> delay(f, 0.003).add(delay(f, 0.028).multiply(0.7)).multiply(0.5);
        AcousticCurve curve = analyser.analyse(
                        new CaptureMaker().microphone(sound, 1e-4).make())
                .acoustic();
        // The voltage at the terminals is 10 / 10.5 of the drive.
        double expectedDb = 20 * Math.log10(0.5 * 10.5 / 10);
        for (int p = 0; p < curve.size(); p++) {
            if (curve.frequencyHz()[p] > 500) {
                assertThat(curve.levelDb()[p]).isCloseTo(expectedDb, within(0.1));
                assertThat(curve.noiseDb()[p]).isLessThan(expectedDb - 30);
            }
        }
    }

    @Test
    void saysHowLoudTheNoiseOfTheMicrophoneIs() {
        AcousticCurve curve = analyser.analyse(
                        new CaptureMaker().microphone(f -> Complex.ZERO, 0.02).make())
                .acoustic();
        double sum = 0;
        for (int p = 0; p < curve.size(); p++) {
            sum += curve.levelDb()[p] - curve.noiseDb()[p];
        }
        // Nothing but noise: of sweeps that do not agree the least counts, so what is left lies some decibels below the
        // power of the noise, and never above it.
        assertThat(sum / curve.size()).isBetween(-6.0, 0.5);
    }

    @Test
    void hearsAPoweredCabinetThroughTheMicrophoneAlone() {
        SweepAnalysis analysis = analyser.analyse(new CaptureMaker()
                .lineInput()
                .microphone(f -> delay(f, 0.003).multiply(2), 1e-3)
                .make());
        assertThat(analysis.issues()).isEmpty();
        assertThat(analysis.impedance()).isNull();
        assertThat(analysis.load()).isEqualTo(SweepAnalysis.Load.UNKNOWN);
        AcousticCurve curve = analysis.acoustic();
        for (int p = 0; p < curve.size(); p++) {
            if (curve.frequencyHz()[p] > 500) {
                assertThat(curve.levelDb()[p]).isCloseTo(20 * Math.log10(2), within(0.1));
            }
        }
    }

    @Test
    void refusesSweepsBeyondItsBounds() {
        LevelMask mask = new LevelMask(List.of(new LevelMask.Point(20, 1), new LevelMask.Point(100000, 1)));
        SweepPlan plan = new SweepPlan(SweepSignal.synchronised(20, 100000, 20, 384000, mask), 0.5, 0.6, 1);
        Capture capture = new Capture(
                new CaptureHeader(
                        java.time.Instant.EPOCH,
                        "rig",
                        org.docksweep.fleet.TestPointKind.TERMINALS,
                        List.of(new CaptureChannel(ChannelRole.VOLTAGE, 1)),
                        plan,
                        null),
                new float[1][10]);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> analyser.analyse(capture))
                .withMessageContaining("use another plan");
    }

    private static Complex delay(double frequencyHz, double seconds) {
        return new Complex(0, -2 * Math.PI * frequencyHz * seconds).exp();
    }

    static void assertClose(ImpedanceCurve curve, DoubleFunction<Complex> load) {
        double[] frequencyHz = curve.frequencyHz();
        for (int p = 0; p < curve.size(); p++) {
            double expected = load.apply(frequencyHz[p]).norm();
            assertThat(curve.magnitudeOhm(p))
                    .as("|Z| at %.1f Hz", frequencyHz[p])
                    .isCloseTo(expected, within(REACH_SHARE * expected + REACH_OHM));
        }
    }
}
