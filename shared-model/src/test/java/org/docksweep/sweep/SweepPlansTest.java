package org.docksweep.sweep;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class SweepPlansTest {
    static Stream<TestPoint> points() {
        return Stream.of(
                point(18, 2.0, 20000, 2.0),
                point(30, 2.0, 500, 2.0),
                point(250, 0.3, 800, 0.3, 1600, 1.0, 21000, 1.0),
                // As steep as anybody would draw it: 20 dB in a tenth of an octave, down and up again.
                point(20, 3.0, 200, 3.0, 215, 0.3, 1000, 0.3, 1070, 3.0, 30000, 3.0),
                point(15, 0.05, 16000, 0.2));
    }

    @ParameterizedTest
    @MethodSource("points")
    void neverExceedTheMaskAtAnyInstant(TestPoint point) {
        for (int rate : new int[] {44100, 48000, 96000}) {
            for (SweepPlan plan : List.of(
                    SweepPlans.probe(point, rate),
                    SweepPlans.dock(point, rate),
                    SweepPlans.slow(point, rate, 200, 400))) {
                double[] samples = plan.signal().voltageSamples();
                for (int i = 0; i < samples.length; i++) {
                    double frequencyHz =
                            Math.min(plan.signal().stopHz(), plan.signal().frequencyHzAt(i / (double) rate));
                    double allowed = Math.sqrt(2) * point.levelMask().voltageVrmsAt(frequencyHz);
                    assertThat(Math.abs(samples[i])).isLessThanOrEqualTo(allowed);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("points")
    void slowSweepsAtHalfTheMaskForTheEar(TestPoint point) {
        SweepPlan whole = SweepPlans.slow(point, 48000, 0, Double.MAX_VALUE);
        SweepSignal dock = SweepPlans.dock(point, 48000).signal();
        assertThat(whole.signal().startHz()).isEqualTo(dock.startHz());
        assertThat(whole.signal().stopHz()).isEqualTo(dock.stopHz());
        assertThat(whole.signal().durationS()).isBetween(4 * dock.durationS(), 22.0);
        for (LevelMask.Point corner : whole.signal().level().points()) {
            assertThat(corner.voltageVrms()).isEqualTo(0.5 * point.levelMask().voltageVrmsAt(corner.frequencyHz()));
        }
        SweepSignal octave = SweepPlans.slow(point, 48000, 70, 140).signal();
        assertThat(octave.startHz()).isEqualTo(Math.max(70, dock.startHz()));
        assertThat(octave.stopHz()).isCloseTo(2 * octave.startHz(), within(1e-6));
        assertThat(octave.durationS()).isBetween(1.5, 2.5);
        SweepSignal above = SweepPlans.slow(point, 48000, 1e6, 2e6).signal();
        assertThat(above.stopHz()).isEqualTo(dock.stopHz());
    }

    @ParameterizedTest
    @MethodSource("points")
    void probeTwentyDecibelsBelowTheMaskAndWellInsideIt(TestPoint point) {
        SweepPlan plan = SweepPlans.probe(point, 48000);
        SweepSignal signal = plan.signal();
        assertThat(signal.startHz()).isGreaterThan(1.1 * point.levelMask().lowestHz());
        assertThat(signal.stopHz()).isLessThan(point.levelMask().highestHz() / 1.1);
        assertThat(signal.durationS()).isCloseTo(0.4, within(0.05));
        double[] samples = signal.voltageSamples();
        for (int i = 0; i < samples.length; i++) {
            double frequencyHz = Math.min(signal.stopHz(), signal.frequencyHzAt(i / 48000.0));
            double allowed = 0.1 * point.levelMask().voltageVrmsAt(frequencyHz);
            assertThat(Math.abs(samples[i])).isLessThanOrEqualTo(Math.sqrt(2) * Math.min(0.1, allowed) * 1.000001);
        }
    }

    @Test
    void sweepTheWholeMaskTwice() {
        SweepPlan plan = SweepPlans.dock(point(20, 2.0, 30000, 2.0), 48000);
        assertThat(plan.signal().startHz()).isEqualTo(20);
        assertThat(plan.signal().stopHz()).isEqualTo(20000);
        assertThat(plan.repeats()).isEqualTo(2);
        assertThat(plan.preRollS()).isEqualTo(0.5);
        assertThat(plan.tailS()).isEqualTo(0.6);
        assertThat(plan.signal().durationS()).isCloseTo(2, within(0.2));
        assertThat(SweepPlans.dock(point(20, 2.0, 30000, 2.0), 16000).signal().stopHz())
                .isEqualTo(7200);
        assertThat(SweepPlans.dock(point(300, 1.0, 20000, 1.0), 48000).signal().durationS())
                .isLessThan(1.5);
    }

    @Test
    void refuseMasksWithoutABand() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SweepPlans.dock(point(5000, 1.0, 20000, 1.0), 8000))
                .withMessageContaining("widen the mask");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SweepPlans.probe(point(100, 1.0, 200, 1.0), 48000))
                .withMessageContaining("widen the mask");
    }

    @ParameterizedTest
    @MethodSource("points")
    void tellOpenShortAndPresentApartFromAProbe(TestPoint point) {
        SweepPlan plan = SweepPlans.probe(point, 48000);
        SweepAnalyser analyser = new SweepAnalyser();
        SweepAnalysis load = analyser.analyse(
                new CaptureMaker().plan(plan).load(Loads::lossyDriver).make());
        assertThat(load.load()).isEqualTo(SweepAnalysis.Load.PRESENT);
        assertThat(load.issues()).isEmpty();
        double[] frequencyHz = load.impedance().frequencyHz();
        for (int p = 0; p < frequencyHz.length; p++) {
            Complex z = Loads.lossyDriver(frequencyHz[p]);
            assertThat(load.impedance().magnitudeOhm(p)).isCloseTo(z.norm(), within(0.03 * z.norm()));
        }
        assertThat(analyser.analyse(new CaptureMaker().plan(plan).resistor(1e5).make())
                        .load())
                .isEqualTo(SweepAnalysis.Load.OPEN);
        assertThat(analyser.analyse(new CaptureMaker().plan(plan).resistor(0.1).make())
                        .load())
                .isEqualTo(SweepAnalysis.Load.SHORT);
    }

    private static TestPoint point(double... corners) {
        List<LevelMask.Point> points = new java.util.ArrayList<>();
        for (int i = 0; i < corners.length; i += 2) {
            points.add(new LevelMask.Point(corners[i], corners[i + 1]));
        }
        // A line input needs no network; plans look at the mask alone.
        return new TestPoint(
                "P", TestPointKind.LINE_INPUT, "1+ / 1-", List.of("A"), 0, new LevelMask(points), List.of());
    }
}
