package org.docksweep.rigcal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.docksweep.sweep.AcousticCurve;
import org.docksweep.sweep.ImpedanceCurve;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** Studies whose truth is known, since the sweeps were made here. */
class RigStudyTest {
    private static final CheckStandard RESISTOR = CheckStandard.resistor("4.7", 4.7);
    private static final CheckStandard NETWORK =
            new CheckStandard("22 || 4.7u", CheckStandard.Kind.RESISTOR_PARALLEL_CAPACITOR, 22, 4.7e-6);
    private static final CheckStandard COIL =
            new CheckStandard("6 + 1m", CheckStandard.Kind.RESISTOR_SERIES_COIL, 6, 1e-3);
    private static final int POINTS = 240;

    private final Random random = new Random(20);

    /** What a rig does between sweeps: standard deviations. */
    private record Truth(double contactOhm, double scalePlug, double scaleRepeat, double levelDb) {}

    private static ImpedanceCurve curve(CheckStandard part, double contactOhm, double scale) {
        double[][] rows = new double[4][POINTS];
        for (int i = 0; i < POINTS; i++) {
            rows[0][i] = 20 * Math.pow(1000, i / (POINTS - 1.0));
            Complex z = part.impedanceOhm(rows[0][i]).add(contactOhm).multiply(1 + scale);
            rows[1][i] = z.getRealPart();
            rows[2][i] = z.getImaginaryPart();
        }
        return new ImpedanceCurve(rows[0], rows[1], rows[2], rows[3]);
    }

    private static AcousticCurve level(double changeDb, double noiseDb) {
        double[][] rows = new double[3][POINTS];
        for (int i = 0; i < POINTS; i++) {
            rows[0][i] = 20 * Math.pow(1000, i / (POINTS - 1.0));
            rows[1][i] = -3 + 2 * Math.sin(i / 9.0) + changeDb;
            rows[2][i] = noiseDb;
        }
        return new AcousticCurve(rows[0], rows[1], rows[2]);
    }

    private RigStudy.Sweep[][][] sweeps(Truth truth, int plugIns, int repeats, CheckStandard... parts) {
        RigStudy.Sweep[][][] sweeps = new RigStudy.Sweep[parts.length][plugIns][repeats];
        for (int p = 0; p < parts.length; p++) {
            for (int o = 0; o < plugIns; o++) {
                double contactOhm = truth.contactOhm() * random.nextGaussian();
                double plug = truth.scalePlug() * random.nextGaussian();
                double levelDb = truth.levelDb() * random.nextGaussian();
                for (int r = 0; r < repeats; r++) {
                    double scale = plug + truth.scaleRepeat() * random.nextGaussian();
                    sweeps[p][o][r] = new RigStudy.Sweep(curve(parts[p], contactOhm, scale), level(levelDb, -60));
                }
            }
        }
        return sweeps;
    }

    @Test
    void findsWhatWasPutIn() {
        RigStudy study = RigStudy.of(sweeps(new Truth(0.03, 0.004, 0.002, 0.5), 40, 3, NETWORK, COIL));

        // A standard deviation of n values is known to 1/sqrt(2n); four times that.
        assertThat(study.contact().reproducibility()).isCloseTo(0.03, within(0.03 * 4 / Math.sqrt(2 * 78)));
        assertThat(study.impedance().reproducibility()).isCloseTo(0.004, within(0.004 * 4 / Math.sqrt(2 * 78)));
        assertThat(study.impedance().repeatability()).isCloseTo(0.002, within(0.002 * 4 / Math.sqrt(2 * 160)));
        assertThat(study.level().gaugeSpread()).isCloseTo(0.5, within(0.5 * 4 / Math.sqrt(2 * 78)));
        assertThat(study.summary().freedom()).isEqualTo(78);
    }

    @Test
    void doesNotCountAContactAsAnErrorOfTheCurve() {
        RigStudy study = RigStudy.of(sweeps(new Truth(0.05, 0, 0, 0), 6, 2, RESISTOR, NETWORK));

        assertThat(study.contact().gaugeSpread()).isBetween(0.02, 0.1);
        // 50 milliohm are 1 % of the resistor and up to 3 % of the network; second order is left.
        assertThat(study.impedance().gaugeSpread()).isLessThan(2e-4);
    }

    @Test
    void tellsAScaleByTheNetworkOnlySinceAResistorShowsAContactAlike() {
        RigStudy study = RigStudy.of(sweeps(new Truth(0, 0.01, 0, 0), 6, 2, RESISTOR, NETWORK));

        assertThat(study.impedance().gaugeSpread()).isBetween(0.004, 0.025);
        assertThat(study.summary().freedom()).isEqualTo(5);
    }

    @Test
    void saysNothingOfTheLevelWhereNothingStandsOutOfTheNoise() {
        RigStudy.Sweep[][][] sweeps = sweeps(new Truth(0.01, 0, 1e-4, 0), 2, 2, NETWORK, COIL);
        sweeps[1][0][1] = new RigStudy.Sweep(sweeps[1][0][1].impedance(), null);
        assertThat(RigStudy.of(sweeps).level()).isNull();

        for (RigStudy.Sweep[][] part : sweeps) {
            for (RigStudy.Sweep[] plugIn : part) {
                for (int r = 0; r < plugIn.length; r++) {
                    plugIn[r] = new RigStudy.Sweep(plugIn[r].impedance(), level(0, -10));
                }
            }
        }
        RigStudy deaf = RigStudy.of(sweeps);
        assertThat(deaf.level()).isNull();
        assertThat(deaf.summary().levelDb()).isZero();
    }

    @Test
    void refusesWhatIsNoStudyAndSaysWhatToDo() {
        Truth good = new Truth(0.01, 1e-4, 1e-4, 0);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RigStudy.of(sweeps(good, 4, 2, RESISTOR, RESISTOR)))
                .withMessageContaining("plain resistors")
                .withMessageContaining("take a cabinet");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RigStudy.of(sweeps(good, 4, 2, NETWORK)))
                .withMessageContaining("at least 2 parts");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RigStudy.of(sweeps(good, 4, 1, NETWORK, COIL)))
                .withMessageContaining("2 repeats");
        assertThatIllegalArgumentException().isThrownBy(() -> RigStudy.of(new RigStudy.Sweep[0][0][0]));
        RigStudy.Sweep[][][] uneven = sweeps(good, 4, 2, NETWORK, COIL);
        uneven[1] = java.util.Arrays.copyOf(uneven[1], 3);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RigStudy.of(uneven))
                .withMessageContaining("equally many")
                .withMessageContaining("part 2");
    }

    @Test
    void allowsForFewReadingsByStudentsDistribution() {
        // t of 95 %, two-sided: 3.182 at 3, 2.228 at 10 (any table); over 1.96.
        assertThat(new RigRepeatability(0.001, 0, 0, 3).impedanceOf(1)).isCloseTo(0.001 * 3.182 / 1.960, within(1e-6));
        assertThat(new RigRepeatability(0, 0.02, 0, 10).contactOf(1)).isCloseTo(0.02 * 2.228 / 1.960, within(1e-5));
        // Two sweeps of equal spread differ by root 2 of it.
        assertThat(new RigRepeatability(0, 0, 0.3, 10).levelOf(2))
                .isCloseTo(0.3 * Math.sqrt(2) * 2.228 / 1.960, within(1e-3));
        assertThat(RigRepeatability.UNKNOWN.impedanceOf(2)).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> new RigRepeatability(-1e-3, 0, 0, 3));
        assertThatIllegalArgumentException().isThrownBy(() -> new RigRepeatability(Double.NaN, 0, 0, 3));
    }
}
