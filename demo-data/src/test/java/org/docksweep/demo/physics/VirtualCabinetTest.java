package org.docksweep.demo.physics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class VirtualCabinetTest {
    private static final int UNITS = 40;

    @Test
    void heatsCopperByItsPublishedCoefficient() {
        // 6.0 ohm at 20 C is 6.4716 ohm at 40 C (IEC 60028: 0.00393 per kelvin)
        VirtualCabinet cold = Books.reference(org.docksweep.fleet.EnclosureKind.FREE_AIR, 0, 0, 0, 1);
        VirtualCabinet warm = cold.at(new Climate(40, 20, 20, 20));
        // far above resonance only the coil's resistance is left
        assertThat(Probe.ohm(cold, "IN", 200_000).getRealPart()).isCloseTo(6.0, within(1e-4));
        assertThat(Probe.ohm(warm, "IN", 200_000).getRealPart()).isCloseTo(6.4716, within(1e-4));
    }

    @Test
    void stiffensTheSuspensionInTheCold() {
        VirtualCabinet cabinet = Probe.produced("DUNE15B", 5);
        double warmHz = Probe.extremeHz(cabinet.at(Climate.even(20)), "LF", 45, 110, 1);
        double coldHz = Probe.extremeHz(cabinet.at(Climate.even(5)), "LF", 45, 110, 1);
        double warmOhm = Probe.magnitudeOhm(cabinet.at(new Climate(20, 20, 20, 20)), "LF", warmHz);
        double coldOhm = Probe.magnitudeOhm(cabinet.at(new Climate(20, 5, 20, 20)), "LF", coldHz);
        assertThat(coldHz / warmHz).isBetween(1.005, 1.06);
        assertThat(coldOhm).isLessThan(warmOhm);
    }

    @Test
    void weakensTheMagnetInTheHeat() {
        VirtualCabinet cabinet = Probe.produced("DUNE15B", 5);
        double peakHz = Probe.extremeHz(cabinet, "HF", 300, 900, 1);
        double cool = motional(cabinet.at(new Climate(20, 20, 20, 20)), peakHz);
        double hot = motional(cabinet.at(new Climate(20, 20, 45, 20)), peakHz);
        // Bl falls 5 %, motional impedance with its square
        assertThat(hot / cool).isCloseTo(0.95 * 0.95, within(0.01));
    }

    private static double motional(VirtualCabinet cabinet, double peakHz) {
        return Probe.ohm(cabinet, "HF", peakHz).getRealPart() - 5.8;
    }

    @ParameterizedTest
    @CsvSource({"SPIN12, IN", "DUNE15B, LF", "DUNE15B, HF", "UNDR215, IN", "PEBL8, IN", "HEAD3, IN"})
    void spreadsHealthyUnitsAsProductionDoes(String model, String testPoint) {
        VirtualCabinet nominal = Probe.full(model);
        double widest = 0;
        for (int seed = 1; seed <= UNITS; seed++) {
            VirtualCabinet unit = Probe.produced(model, seed);
            for (double f = 300; f < 16_000; f *= 1.1) {
                double ratio = Probe.magnitudeOhm(unit, testPoint, f) / Probe.magnitudeOhm(nominal, testPoint, f);
                assertThat(ratio).as("%s %s Hz unit %s", model, f, seed).isBetween(0.80, 1.25);
                widest = Math.max(widest, Math.abs(Math.log(ratio)));
            }
        }
        assertThat(widest).as("units are not all alike").isGreaterThan(0.02);
    }

    @Test
    void makesLevelsOfItsDriversSensitivity() {
        // 2.83 V, 1 m, in the pass band of each way; the crossover's pad brings the horn down to the cone
        assertThat(levelDb("DUNE15B", "LF", 120)).isCloseTo(98, within(1.5));
        assertThat(levelDb("DUNE15B", "HF", 2500)).isCloseTo(105.5, within(3.0));
        assertThat(levelDb("SPIN12", "IN", 150)).isCloseTo(96.5, within(1.5));
        assertThat(levelDb("SPIN12", "IN", 4000)).isCloseTo(97.5, within(2.0));
    }

    private static double levelDb(String model, String point, double frequencyHz) {
        double pascals = 2.83
                * Probe.full(model)
                        .load(point)
                        .at(frequencyHz, new Complex(0.01))
                        .pressurePaPerV()
                        .norm();
        return 20 * Math.log10(pascals / 20e-6);
    }

    @Test
    void dipsNearTheCrossoverWhenTheHornDriverIsOpen() {
        VirtualCabinet healthy = Probe.produced("PEBL8", 3);
        VirtualCabinet open = healthy.with(Fault.of(FaultKind.DRIVER_OPEN, "HF"));
        double dipHz = Probe.extremeHz(open, "IN", 1500, 6000, -1);
        // bare 4.7 uF and 0.68 mH in series: resonance at 2.8 kHz, a fraction of an ohm
        assertThat(dipHz).isCloseTo(2815, within(150.0));
        assertThat(Probe.magnitudeOhm(open, "IN", dipHz)).isLessThan(1);
        assertThat(sound(open, "IN", 6000)).isLessThan(0.1 * sound(healthy, "IN", 6000));
    }

    @Test
    void hidesTheDipBehindAPadsShunt() {
        VirtualCabinet healthy = Probe.produced("SPIN12", 3);
        VirtualCabinet open = healthy.with(Fault.of(FaultKind.DRIVER_OPEN, "HF"));
        assertThat(Probe.magnitudeOhm(open, "IN", 2000)).isBetween(5.0, 0.85 * Probe.magnitudeOhm(healthy, "IN", 2000));
        assertThat(Probe.magnitudeOhm(open, "IN", 10_000))
                .isGreaterThan(1.3 * Probe.magnitudeOhm(healthy, "IN", 10_000));
    }

    private static double sound(VirtualCabinet cabinet, String point, double frequencyHz) {
        return cabinet.load(point)
                .at(frequencyHz, Probe.SOURCE)
                .pressurePaPerV()
                .norm();
    }

    @Test
    void opensAtItsOwnTerminals() {
        VirtualCabinet open = Probe.produced("DUNE15B", 3).with(Fault.of(FaultKind.DRIVER_OPEN, "HF"));
        assertThat(Probe.magnitudeOhm(open, "HF", 1000)).isGreaterThan(1e6);
        assertThat(Probe.magnitudeOhm(open, "LF", 1000)).isLessThan(20);
    }

    @Test
    void shortsCoilAndTerminals() {
        assertThat(Probe.magnitudeOhm(
                        Probe.produced("DUNE15B", 3).with(Fault.of(FaultKind.DRIVER_SHORTED, "LF", 0.1)), "LF", 60))
                .isCloseTo(0.1, within(1e-6));
        assertThat(Probe.magnitudeOhm(
                        Probe.produced("SPIN12", 3).with(Fault.of(FaultKind.TERMINALS_SHORTED, "IN", 0.05)), "IN", 60))
                .isCloseTo(0.05, within(0.002));
    }

    @Test
    void doublesEverythingBehindAWrongPart() {
        VirtualCabinet unit = Probe.produced("DUNE15B", 3);
        VirtualCabinet wrong = unit.with(Fault.of(FaultKind.WRONG_IMPEDANCE, "HF", 2));
        for (double f : new double[] {300, 560, 1080, 5000, 15_000}) {
            assertThat(Probe.ohm(wrong, "HF", f)
                            .subtract(Probe.ohm(unit, "HF", f).multiply(2))
                            .norm())
                    .isLessThan(1e-9);
        }
    }

    @Test
    void losesTheMotionalPeakWhenSeized() {
        VirtualCabinet seized = Probe.produced("DUNE15B", 3).with(Fault.of(FaultKind.SEIZED, "HF"));
        double peakHz = Probe.extremeHz(Probe.produced("DUNE15B", 3), "HF", 300, 900, 1);
        assertThat(Probe.magnitudeOhm(seized, "HF", peakHz)).isBetween(5.5, 7.0);
        assertThat(sound(seized, "HF", 2000)).isLessThan(0.02 * sound(Probe.produced("DUNE15B", 3), "HF", 2000));
    }

    @Test
    void dropsThePeakBeforeTheOhmsWhenTurnsAreShorted() {
        // two per cent of the turns, Qms 6.6, Qes 0.40 in free air: peak falls by about a quarter, resistance by 2 %
        VirtualCabinet unit = Books.reference(org.docksweep.fleet.EnclosureKind.FREE_AIR, 0, 0, 0, 1);
        VirtualCabinet hurt = unit.with(Fault.of(FaultKind.SHORTED_TURNS, "LF1", 0.02));
        double peakRatio = (Probe.ohm(hurt, "IN", 40).getRealPart() - 5.88)
                / (Probe.ohm(unit, "IN", 40).getRealPart() - 6);
        // motional: (1-x)^2 / (1/48 + x/6) against 48, x = 0.02
        assertThat(peakRatio).isCloseTo(0.98 * 0.98 / (1 + 0.02 * 48 / 6), within(1e-6));
    }

    @Test
    void addsContactResistanceInSeries() {
        VirtualCabinet unit = Probe.produced("DUNE15B", 3);
        VirtualCabinet corroded = unit.with(Fault.of(FaultKind.CONTACT_RESISTANCE, "LF", 0.8));
        assertThat(Probe.ohm(corroded, "LF", 77)
                        .subtract(Probe.ohm(unit, "LF", 77))
                        .getRealPart())
                .isCloseTo(0.8, within(1e-9));
    }

    @Test
    void turnsTheSoundButNotTheImpedanceWhenReversedAlone() {
        VirtualCabinet unit = Probe.produced("DUNE15B", 3);
        VirtualCabinet reversed = unit.with(Fault.of(FaultKind.POLARITY_REVERSED, "HF"));
        Complex before = unit.load("HF").at(2000, Probe.SOURCE).pressurePaPerV();
        Complex after = reversed.load("HF").at(2000, Probe.SOURCE).pressurePaPerV();
        assertThat(after.add(before).norm()).isLessThan(1e-12);
        assertThat(Probe.ohm(reversed, "HF", 2000)).isEqualTo(Probe.ohm(unit, "HF", 2000));
    }

    @Test
    void silencesOneWayOfAPoweredCabinet() {
        VirtualCabinet unit = Probe.produced("SALT12A", 3);
        VirtualCabinet dead = unit.with(Fault.of(FaultKind.WAY_DEAD, "HF"));
        assertThat(sound(dead, "LINE", 6000)).isLessThan(0.05 * sound(unit, "LINE", 6000));
        assertThat(sound(dead, "LINE", 200))
                .isCloseTo(sound(unit, "LINE", 200), within(0.02 * sound(unit, "LINE", 200)));
    }

    @Test
    void swapsThePairsOfABiampedCabinet() {
        VirtualCabinet unit = Probe.produced("DUNE15B", 3);
        VirtualCabinet swapped = unit.with(Fault.of(FaultKind.PAIRS_SWAPPED, "LF"));
        assertThat(Probe.ohm(swapped, "HF", 500)).isEqualTo(Probe.ohm(unit, "LF", 500));
    }

    @Test
    void staysPassiveWithAllItsRealism() {
        for (int seed = 1; seed <= 10; seed++) {
            for (double f = 12; f < 22_000; f *= 1.03) {
                assertThat(Probe.ohm(Probe.produced("HEAD3", seed), "IN", f).getRealPart())
                        .isPositive();
            }
        }
    }

    @Test
    void departsFromThePlainModelByPerCentsOnly() {
        double widest = 0;
        for (double f = 100; f < 18_000; f *= 1.05) {
            double plain = Probe.magnitudeOhm(Probe.plain("DUNE15B"), "LF", f);
            double full = Probe.magnitudeOhm(Probe.full("DUNE15B"), "LF", f);
            widest = Math.max(widest, Math.abs(full / plain - 1));
        }
        assertThat(widest).isBetween(0.005, 0.08);
    }

    @Test
    void refusesFaultsOfThingsTheModelDoesNotHave() {
        VirtualCabinet unit = Probe.produced("SPIN12", 1);
        assertThatThrownBy(() -> unit.with(Fault.of(FaultKind.PART_OPEN, "C99")))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("C99");
    }
}
