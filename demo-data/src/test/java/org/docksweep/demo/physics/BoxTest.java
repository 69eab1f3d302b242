package org.docksweep.demo.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.docksweep.fleet.EnclosureKind;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The synthetic reference driver (Re 6 ohm, fs 40 Hz, Qms 4, Qes 0.5) in boxes. Expected values computed in closed form
 * after Small (JAES 1972, 1973) and confirmed with ngspice.
 */
class BoxTest {
    /** Peaks are searched on a grid of 0.02 %. */
    private static final double PEAK_REL = 4e-4;
    /** Tables print four digits after the point. */
    private static final double OHM = 2e-3;

    @Test
    void followsTheReferenceDriverInFreeAir() {
        VirtualCabinet cabinet = Books.reference(EnclosureKind.FREE_AIR, 0, 0, 0, 1);
        Complex at20 = Probe.ohm(cabinet, "IN", 20);
        assertThat(at20.getRealPart()).isCloseTo(7.297297297, within(1e-8));
        assertThat(at20.getImaginaryPart()).isCloseTo(7.783783784, within(1e-8));
        assertThat(Probe.magnitudeOhm(cabinet, "IN", 40)).isCloseTo(54, within(1e-8));
        assertThat(Probe.magnitudeOhm(cabinet, "IN", 27.72001873)).isCloseTo(18, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"1, 56.56854249", "3, 80"})
    void raisesResonanceInAClosedBox(double alpha, double expectedHz) {
        VirtualCabinet cabinet = Books.reference(EnclosureKind.CLOSED, alpha, 0, 1e9, 1);
        assertThat(Probe.magnitudeOhm(cabinet, "IN", expectedHz)).isCloseTo(54, within(1e-4));
    }

    @ParameterizedTest
    @CsvSource({
        "2, 40, 7, 20.624495, 40.000000, 77.577657, 36.6772, 6.842105, 36.6772",
        "1.5, 36, 7, 20.536446, 36.369536, 70.069524, 34.5252, 7.0044, 38.7696",
        "2, 40, 1e9, 20.705524, 40, 77.274066, 54, 6, 54",
        "2, 36, 1e9, 19.015983, 36, 75.725770, 54, 6, 54"
    })
    void showsBothPeaksAndTheDipOfAVentedBox(
            double alpha,
            double tuningHz,
            double leakageLossQ,
            double lowHz,
            double dipHz,
            double highHz,
            double lowOhm,
            double dipOhm,
            double highOhm) {
        VirtualCabinet cabinet = Books.reference(EnclosureKind.VENTED, alpha, tuningHz, leakageLossQ, 1);
        assertThat(Probe.magnitudeOhm(cabinet, "IN", lowHz)).isCloseTo(lowOhm, within(OHM));
        assertThat(Probe.magnitudeOhm(cabinet, "IN", dipHz)).isCloseTo(dipOhm, within(OHM));
        assertThat(Probe.magnitudeOhm(cabinet, "IN", highHz)).isCloseTo(highOhm, within(OHM));
        assertThat(Probe.extremeHz(cabinet, "IN", 15, 30, 1)).isCloseTo(lowHz, within(lowHz * PEAK_REL));
        assertThat(Probe.extremeHz(cabinet, "IN", 30, 55, -1)).isCloseTo(dipHz, within(dipHz * 2e-3));
        assertThat(Probe.extremeHz(cabinet, "IN", 55, 100, 1)).isCloseTo(highHz, within(highHz * PEAK_REL));
    }

    @Test
    void halvesTheImpedanceOfTwoEqualDriversInOneBox() {
        VirtualCabinet one = Books.reference(EnclosureKind.VENTED, 2, 40, 7, 1);
        VirtualCabinet two = Books.reference(EnclosureKind.VENTED, 2, 40, 7, 2);
        for (double f : new double[] {15, 20.6, 40, 60, 77.6, 200}) {
            assertThat(Probe.ohm(two, "IN", f)
                            .multiply(2)
                            .subtract(Probe.ohm(one, "IN", f))
                            .norm())
                    .isLessThan(1e-9);
        }
    }

    @Test
    void leavesADeadConeInTheBoxAsPassiveRadiator() {
        VirtualCabinet healthy = Books.reference(EnclosureKind.VENTED, 2, 40, 30, 2);
        VirtualCabinet oneOpen = healthy.with(Fault.of(FaultKind.DRIVER_OPEN, "LF2"));
        // resistance doubles far from resonances, yet the curve is not twice the healthy one: a third peak appears
        assertThat(Probe.magnitudeOhm(oneOpen, "IN", 1000)).isCloseTo(6, within(0.2));
        assertThat(peaks(healthy)).isEqualTo(2);
        assertThat(peaks(oneOpen)).isEqualTo(3);
    }

    @Test
    void losesTheBoxWhenOneOfTwoIsReversed() {
        VirtualCabinet reversed =
                Books.reference(EnclosureKind.VENTED, 2, 40, 7, 2).with(Fault.of(FaultKind.POLARITY_REVERSED, "LF2"));
        // no net volume flow: one peak at the free-air resonance
        assertThat(peaks(reversed)).isEqualTo(1);
        assertThat(Probe.magnitudeOhm(reversed, "IN", 40)).isCloseTo(27, within(1e-6));
    }

    @Test
    void leavesOnePeakWhenThePortIsBlocked() {
        VirtualCabinet blocked =
                Books.reference(EnclosureKind.VENTED, 2, 40, 1e6, 1).with(Fault.of(FaultKind.PORT_BLOCKED, "box"));
        double expectedHz = 40 * Math.sqrt(3);
        assertThat(peaks(blocked)).isEqualTo(1);
        assertThat(Probe.extremeHz(blocked, "IN", 30, 150, 1)).isCloseTo(expectedHz, within(expectedHz * PEAK_REL));
    }

    @Test
    void lowersPeaksAndFillsTheDipWhenAirLeaks() {
        VirtualCabinet tight = Books.reference(EnclosureKind.VENTED, 2, 40, 7, 1);
        VirtualCabinet leaking = tight.with(Fault.of(FaultKind.LEAK, "box", 0.5));
        assertThat(Probe.magnitudeOhm(leaking, "IN", 20.6)).isLessThan(0.8 * Probe.magnitudeOhm(tight, "IN", 20.6));
        assertThat(Probe.magnitudeOhm(leaking, "IN", 40)).isGreaterThan(1.05 * Probe.magnitudeOhm(tight, "IN", 40));
    }

    private static int peaks(VirtualCabinet cabinet) {
        int peaks = 0;
        double before = Probe.magnitudeOhm(cabinet, "IN", 9.99);
        double last = Probe.magnitudeOhm(cabinet, "IN", 10);
        for (double f = 10.02; f < 200; f *= 1.002) {
            double now = Probe.magnitudeOhm(cabinet, "IN", f);
            if (last > before && last > now) {
                peaks++;
            }
            before = last;
            last = now;
        }
        return peaks;
    }
}
