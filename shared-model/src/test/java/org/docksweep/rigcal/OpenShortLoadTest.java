package org.docksweep.rigcal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/** Worked cases: T model and general two-port at 1 kHz, computed as the bilinear inverse (impedance handbooks' formulas). */
class OpenShortLoadTest {
    /** The device of both cases: 8 ohm and 0.5 mH at 1 kHz. */
    private static final Complex DEVICE = new Complex(8, 2 * Math.PI * 1000 * 0.5e-3);

    private static final double EXACT = 1e-9;

    /** Computed at full precision from the T model's parts: the printed open has too few digits for 1e-9. */
    @Test
    void takesOutSeriesAndShuntParts() {
        double w = 2 * Math.PI * 1000;
        Complex series = new Complex(0.05, w * 0.2e-6);
        Complex shunt = new Complex(1 / 5e6, w * 10e-12);
        Complex open = series.add(shunt.reciprocal());
        Complex measured = series.add(shunt.add(DEVICE.reciprocal()).reciprocal());
        assertThat(open.getReal()).isCloseTo(4550849.238, within(1e-3));
        assertThat(open.getImaginary()).isCloseTo(-1429691.436, within(1e-3));
        assertThat(measured.getReal()).isCloseTo(8.049992332, within(1e-9));
        assertThat(measured.getImaginary()).isCloseTo(3.142835836, within(1e-9));
        assertClose(OpenShortLoad.openShort(measured, open, series), DEVICE, EXACT);
    }

    @Test
    void takesOutAGeneralTwoPort() {
        Complex open = new Complex(27981.6513761, -92605.5045872);
        Complex shorted = new Complex(0.0603004365, 0.0010656286);
        Complex load = new Complex(10.2107199719, 0.0303404400);
        Complex measured = new Complex(8.1717097936, 3.2135410733);
        Complex z = OpenShortLoad.openShortLoad(measured, open, shorted, load, new Complex(10));
        // Ten printed digits of inputs near 10 ohm carry 1e-10 each.
        assertClose(z, DEVICE, 1e-9);
    }

    @Test
    void openAndShortAloneLeaveTheGainIn() {
        Complex z = OpenShortLoad.openShort(
                new Complex(8.1717097936, 3.2135410733),
                new Complex(27981.6513761, -92605.5045872),
                new Complex(0.0603004365, 0.0010656286));
        assertClose(z, new Complex(8.111059, 3.213180), 1e-6);
        assertThat(z.subtract(DEVICE).norm() / DEVICE.norm()).isCloseTo(0.0154, within(5e-5));
    }

    private static void assertClose(Complex actual, Complex expected, double tolerance) {
        assertThat(actual.getReal()).isCloseTo(expected.getReal(), within(tolerance));
        assertThat(actual.getImaginary()).isCloseTo(expected.getImaginary(), within(tolerance));
    }
}
