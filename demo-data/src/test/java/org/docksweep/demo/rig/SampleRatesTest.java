package org.docksweep.demo.rig;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Map;
import org.docksweep.demo.DemoModels;
import org.docksweep.demo.physics.VirtualCabinet;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.TestPoint;
import org.docksweep.rigcal.RigCalibration;
import org.docksweep.sweep.ImpedanceCurve;
import org.docksweep.sweep.RigException;
import org.docksweep.sweep.SweepAnalyser;
import org.docksweep.sweep.SweepAnalysis;
import org.docksweep.sweep.SweepPlan;
import org.docksweep.sweep.SweepPlans;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From playing to the impedance at the far plug, at every sample rate an interface may have. */
class SampleRatesTest {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-03-14T01:30:00Z"), ZoneOffset.UTC);
    private static final ModelBook BOOK = DemoModels.book();
    private static final String MODEL = "SPIN12";
    private static final String POINT = "IN";
    private static final double STANDARD_OHM = 10;
    private static final double STANDARD_RELATIVE = 2e-4;

    /** The promise, with what the rig does not tell: the contact of the plug, 0.03 to 0.15 ohm (VirtualRig). */
    private static final double PROMISED_RELATIVE = 0.005;

    private static final double PROMISED_OHM = 0.02;
    private static final double MIDDLE_CONTACT_OHM = 0.09;
    private static final double CONTACT_SPREAD_OHM = 0.06;

    @ParameterizedTest
    @ValueSource(ints = {44_100, 48_000, 88_200, 96_000})
    void measuresACabinet(int sampleRateHz) throws RigException {
        VirtualRig rig = new VirtualRig(
                RigSettings.of(Map.of("seed", "5", "sampleRateHz", Integer.toString(sampleRateHz))), CLOCK);
        SweepAnalyser analyser = new SweepAnalyser();
        VirtualCabinet cabinet = VirtualCabinet.produced(BOOK, MODEL, 4_000, 2);
        TestPoint point = cabinet.model().testPoint(POINT);
        SweepPlan plan = SweepPlans.dock(point, sampleRateHz);
        ImpedanceCurve[] standards = new ImpedanceCurve[3];
        for (int k = 0; k < standards.length; k++) {
            rig.plug(
                    new org.docksweep.fleet.AssetTag[] {
                                PracticeStandards.OPEN, PracticeStandards.SHORT, PracticeStandards.LOAD
                            }
                            [k],
                    POINT);
            standards[k] =
                    analyser.analyse(rig.play(plan, point.kind(), share -> {})).impedance();
        }
        RigCalibration calibration = RigCalibration.of(
                rig.id(), CLOCK.instant(), standards[0], standards[1], standards[2], STANDARD_OHM, STANDARD_RELATIVE);
        rig.plug("unit", cabinet, POINT);
        SweepAnalysis read = analyser.analyse(rig.play(plan, point.kind(), share -> {}));
        assertThat(read.issues()).isEmpty();
        assertThat(read.acoustic()).isNotNull();
        ImpedanceCurve curve = calibration.correct(read.impedance());
        assertThat(curve.frequencyHz()[curve.size() - 1]).isGreaterThan(19_000);
        for (int i = 0; i < curve.size(); i++) {
            double trueOhm = cabinet.load(POINT)
                    .at(curve.frequencyHz()[i], Complex.ONE)
                    .impedanceOhm()
                    .add(MIDDLE_CONTACT_OHM)
                    .norm();
            assertThat(curve.magnitudeOhm(i))
                    .as("%.1f Hz", curve.frequencyHz()[i])
                    .isCloseTo(trueOhm, within(PROMISED_RELATIVE * trueOhm + PROMISED_OHM + CONTACT_SPREAD_OHM));
        }
    }
}
