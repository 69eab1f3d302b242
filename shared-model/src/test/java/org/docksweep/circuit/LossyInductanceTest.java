package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.fleet.BareDriver;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverKind;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.LevelMask;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.MotionalResonance;
import org.hipparchus.complex.Complex;
import org.hipparchus.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Lossy inductance of a voice coil, {@code Z = K (jw)^n}: W. M. Leach Jr., "Loudspeaker Voice-Coil Inductance Losses: Circuit
 * Models, Parameter Estimation, and Effect on Frequency Response", JAES 50(6), 442-450, 2002. Its abstract and introduction were
 * read (parallel resistance and inductance that both depend on frequency, found by linear regression); its worked table was not to
 * be had. The formulas of the parallel form are from memory and follow from {@code 1/Z}; the numbers were computed from the formula
 * outside this project, for K = 0.03 and n = 0.7.
 */
class LossyInductanceTest {
    private static final LevelMask MASK =
            new LevelMask(List.of(new LevelMask.Point(15, 1), new LevelMask.Point(20_000, 1)));
    private static final double K = 0.03;
    private static final double EXPONENT = 0.7;

    private static Complex terminals(double k, double frequencyHz) {
        DriverModel cone = new DriverModel(
                "CONE",
                "cone",
                DriverKind.CONE,
                8,
                5.6,
                k,
                EXPONENT,
                List.of(new MotionalResonance(40, 6, 90)),
                null,
                List.of());
        CabinetModel model = BareDriver.model(cone, MASK);
        PointCircuit circuit = CircuitCompiler.compile(
                new ModelBook(List.of(model), List.of(cone)),
                model,
                model.testPoint(BareDriver.TEST_POINT),
                CircuitFault.NONE);
        double[] z = circuit.impedanceOhm(frequencyHz, circuit.nominal());
        return new Complex(z[0], z[1]);
    }

    /** The inductance is in series with all else of a bare driver: what K more of it adds. */
    private static Complex inductance(double frequencyHz) {
        return terminals(2 * K, frequencyHz).subtract(terminals(K, frequencyHz));
    }

    @ParameterizedTest
    @CsvSource({
        "100, 1.238494058, 2.430681450, 2.728017567, 6.008975008, 4.872887782",
        "1000, 6.207174110, 12.182265118, 13.672475776, 30.116215611, 2.442229147",
        "10000, 31.109564208, 61.055957536, 68.524703107, 150.938627892, 1.224014070"
    })
    void isTheFormulaInSeriesAndInParallelForm(
            double frequencyHz, double re, double im, double magnitude, double parallelOhm, double parallelMh) {
        Complex z = inductance(frequencyHz);

        assertThat(z.getRealPart()).isCloseTo(re, within(1e-8 * magnitude));
        assertThat(z.getImaginaryPart()).isCloseTo(im, within(1e-8 * magnitude));
        assertThat(z.norm()).isCloseTo(magnitude, within(1e-8 * magnitude));
        assertThat(Math.toDegrees(z.getArgument())).isCloseTo(63, within(1e-6));
        Complex admittance = z.reciprocal();
        assertThat(1 / admittance.getRealPart()).isCloseTo(parallelOhm, within(1e-7 * parallelOhm));
        assertThat(-1000 / (2 * Math.PI * frequencyHz * admittance.getImaginaryPart()))
                .isCloseTo(parallelMh, within(1e-7));
    }

    @Test
    void givesItsParametersBackByLinearRegressionOfLogarithms() {
        SimpleRegression line = new SimpleRegression();
        for (double frequencyHz : new double[] {1000, 2000, 5000, 10_000, 20_000}) {
            line.addData(
                    Math.log(2 * Math.PI * frequencyHz),
                    Math.log(inductance(frequencyHz).norm()));
        }

        assertThat(line.getSlope()).isCloseTo(EXPONENT, within(1e-9));
        assertThat(Math.exp(line.getIntercept())).isCloseTo(K, within(1e-9));
    }
}
