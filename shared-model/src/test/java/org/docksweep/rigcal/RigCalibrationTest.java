package org.docksweep.rigcal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.function.DoubleFunction;
import org.docksweep.fleet.Reasons;
import org.docksweep.sweep.FrequencyGrid;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

class RigCalibrationTest {
    private static final long SEED = 20260701;
    private static final Instant TAKEN_AT = Instant.parse("2026-05-01T20:00:00Z");

    /** Sums and quotients of a few dozen roundings. */
    private static final double ROUNDING = 1e-9;

    /** A gain mismatch of 3 % with a little phase, and 10 m of cable: 0.3 ohm, 6 uH, 1 nF. */
    private static Complex through(double f, Complex load) {
        double w = 2 * Math.PI * f;
        Complex behind = load == null
                ? new Complex(0, w * 1e-9).reciprocal()
                : load.reciprocal().add(new Complex(0, w * 1e-9)).reciprocal();
        return behind.add(new Complex(0.3, w * 6e-6)).multiply(new Complex(1.03, 0.004));
    }

    private static ImpedanceCurve curve(double startHz, double uncertaintyOhm, DoubleFunction<Complex> z) {
        double[] frequencyHz = FrequencyGrid.within(startHz, 20000);
        double[] re = new double[frequencyHz.length];
        double[] im = new double[frequencyHz.length];
        double[] u = new double[frequencyHz.length];
        for (int i = 0; i < frequencyHz.length; i++) {
            re[i] = z.apply(frequencyHz[i]).getReal();
            im[i] = z.apply(frequencyHz[i]).getImaginary();
            u[i] = uncertaintyOhm;
        }
        return new ImpedanceCurve(frequencyHz, re, im, u);
    }

    private static RigCalibration calibration() {
        return RigCalibration.of(
                "rig-1",
                TAKEN_AT,
                curve(20, 1, f -> through(f, null)),
                curve(20, 1e-3, f -> through(f, Complex.ZERO)),
                curve(20, 1e-3, f -> through(f, Complex.valueOf(10))),
                10,
                1e-3);
    }

    @Test
    void givesBackWhateverIsBehindGainAndCable() {
        Random random = new Random(SEED);
        for (int n = 0; n < 50; n++) {
            Complex device = new Complex(1 + 30 * random.nextDouble(), 20 * random.nextGaussian());
            ImpedanceCurve corrected = calibration().correct(curve(300, 1e-3, f -> through(f, device)));
            for (int i = 0; i < corrected.size(); i++) {
                assertThat(corrected.resistanceOhm()[i]).isCloseTo(device.getReal(), within(ROUNDING * device.norm()));
                assertThat(corrected.reactanceOhm()[i])
                        .isCloseTo(device.getImaginary(), within(ROUNDING * device.norm()));
            }
        }
    }

    @Test
    void agreesWithTheFormulaForThreeStandards() {
        double f = FrequencyGrid.pointHz(0);
        Complex measured = through(f, new Complex(7, 3));
        Complex direct = OpenShortLoad.openShortLoad(
                measured, through(f, null), through(f, Complex.ZERO), through(f, Complex.valueOf(10)), new Complex(10));
        ImpedanceCurve corrected = calibration().correct(curve(1000, 0, x -> through(x, new Complex(7, 3))));
        assertThat(corrected.resistanceOhm()[0]).isCloseTo(direct.getReal(), within(ROUNDING));
        assertThat(corrected.reactanceOhm()[0]).isCloseTo(direct.getImaginary(), within(ROUNDING));
    }

    @Test
    void takesAnInvisibleOpenAsInfinite() {
        RigCalibration calibration = RigCalibration.of(
                "rig-1",
                TAKEN_AT,
                null,
                curve(20, 1e-3, f -> new Complex(0.2)),
                curve(20, 1e-3, f -> new Complex(10.2)),
                10,
                1e-3);
        ImpedanceCurve corrected = calibration.correct(curve(20, 1e-3, f -> new Complex(5.2, 1)));
        assertThat(corrected.resistanceOhm()[7]).isCloseTo(5, within(ROUNDING));
        assertThat(corrected.reactanceOhm()[7]).isCloseTo(1, within(ROUNDING));
    }

    @Test
    void widensTheUncertaintyByItsOwn() {
        ImpedanceCurve raw = curve(20, 1e-3, f -> through(f, Complex.valueOf(8)));
        ImpedanceCurve corrected = calibration().correct(raw);
        // 0.1 % of the standard, 1 mohm each of load (over 10 ohm), short and reading.
        double expected = Math.sqrt(
                Math.pow(8 * 1e-3, 2) + Math.pow(8 * Math.sqrt(2) * 1e-4 / 1.03, 2) + 2 * Math.pow(1e-3 / 1.03, 2));
        assertThat(corrected.standardUncertaintyOhm()[50]).isCloseTo(expected, within(0.01 * expected));
        ImpedanceCurve nominal = RigCalibration.nominal("rig-1").correct(raw);
        assertThat(nominal.resistanceOhm()).isEqualTo(raw.resistanceOhm());
        assertThat(nominal.standardUncertaintyOhm()[50]).isGreaterThan(0.2);
        assertThat(RigCalibration.nominal("rig-1").isNominal()).isTrue();
        assertThat(calibration().isNominal()).isFalse();
    }

    @Test
    void isLessSureBeyondItsEnds() {
        RigCalibration narrow = RigCalibration.of(
                "rig-1",
                TAKEN_AT,
                null,
                curve(1000, 0, f -> Complex.ZERO),
                curve(1000, 0, f -> Complex.valueOf(10)),
                10,
                0);
        ImpedanceCurve corrected = narrow.correct(curve(900, 0, f -> Complex.valueOf(8)));
        assertThat(corrected.standardUncertaintyOhm()[0]).isCloseTo(0.08, within(ROUNDING));
        assertThat(corrected.standardUncertaintyOhm()[corrected.size() - 1]).isCloseTo(0, within(ROUNDING));
    }

    @Test
    void refusesStandardsThatCannotBe() {
        ImpedanceCurve ten = curve(20, 0, f -> Complex.valueOf(10));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RigCalibration.of("rig-1", TAKEN_AT, null, ten, ten, 10, 0))
                .withMessageContaining("plug the standards in again");
        assertThatIllegalArgumentException()
                .isThrownBy(
                        () -> RigCalibration.of("rig-1", TAKEN_AT, null, curve(30, 0, f -> Complex.ZERO), ten, 10, 0))
                .withMessageContaining("one plan");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        RigCalibration.of("rig-1", TAKEN_AT, null, curve(20, 0, f -> Complex.ZERO), ten, Double.NaN, 0))
                .withMessageContaining("standardOhm");
    }

    @Test
    void checkStandardsPassAGoodRigAndFailABadOne() {
        List<CheckStandard> standards = List.of(
                CheckStandard.resistor("R 6.8", 6.8),
                new CheckStandard("RC", CheckStandard.Kind.RESISTOR_PARALLEL_CAPACITOR, 8.2, 4.7e-6),
                new CheckStandard("RL", CheckStandard.Kind.RESISTOR_SERIES_COIL, 8.2, 0.3e-3));
        for (CheckStandard standard : standards) {
            ImpedanceCurve raw = curve(20, 0, f -> through(f, standard.impedanceOhm(f)));
            RigCheck good = standard.check(calibration().correct(raw), 0.01);
            assertThat(good.passed()).isTrue();
            assertThat(Reasons.text(good.reason(), Locale.ENGLISH)).contains(standard.name(), "1.00 % allowed");
            RigCheck bad = standard.check(RigCalibration.nominal("rig-1").correct(raw), 0.01);
            assertThat(bad.passed()).isFalse();
            assertThat(bad.deviationShare()).isGreaterThan(0.03);
            assertThat(Reasons.text(bad.reason(), Locale.ENGLISH)).contains("calibrate the rig");
            assertThat(Reasons.text(bad.reason(), Locale.GERMAN)).contains("kalibrieren");
        }
    }

    @Test
    void aCapacitorShowsATimeErrorThatAResistorHardlyDoes() {
        // Half a sample of skew between the channels at 48 kHz, at 1 kHz 3.75 degrees.
        DoubleFunction<Complex> skew = f -> new Complex(0, 2 * Math.PI * f / 96000).exp();
        CheckStandard rc = new CheckStandard("RC", CheckStandard.Kind.RESISTOR_PARALLEL_CAPACITOR, 8.2, 4.7e-6);
        ImpedanceCurve read = curve(20, 0, f -> rc.impedanceOhm(f).multiply(skew.apply(f)));
        RigCheck check = rc.check(read, 0.01);
        assertThat(check.passed()).isFalse();
        assertThat(check.worstHz()).isGreaterThan(19000);
    }
}
