package org.docksweep.fleet.template;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.docksweep.fleet.template.Crossover.Alignment;
import org.docksweep.fleet.template.Crossover.Part;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.api.Test;

/**
 * Constants of the handbook tables for loudspeaker crossovers, in the form C (uF) = constant / (R fc), L (mH) = constant R /
 * fc: third order 238.73, 212207, 79.58, 106103, 119.37 as printed there; 318310 = 1e6/pi (one page prints 318391, two digits
 * exchanged); fourth order Linkwitz-Riley 0.3000, 0.2533, 0.1500, 0.0563 from memory.
 */
class CrossoverTest {
    private static final double OHM = 8;
    private static final double HZ = 2000;
    /** The tables print five or six digits. */
    private static final double PRINTED = 5e-5;

    private static double uF(Part part) {
        return part.value() * 1e6 * OHM * HZ;
    }

    private static double mH(Part part) {
        return part.value() * 1e3 / OHM * HZ;
    }

    private static void isConstant(double actual, double constant) {
        assertThat(actual / constant).isCloseTo(1, within(PRINTED));
    }

    @Test
    void agreesWithTheHandbookInFirstOrder() {
        isConstant(mH(Crossover.lowPass(1, Alignment.BUTTERWORTH, OHM, HZ).get(0)), 159.155);
        isConstant(uF(Crossover.highPass(1, Alignment.BUTTERWORTH, OHM, HZ).get(0)), 159_155);
    }

    @Test
    void agreesWithTheHandbookInThirdOrder() {
        List<Part> low = Crossover.lowPass(3, Alignment.BUTTERWORTH, OHM, HZ);
        List<Part> high = Crossover.highPass(3, Alignment.BUTTERWORTH, OHM, HZ);

        isConstant(mH(low.get(0)), 238.73);
        isConstant(uF(low.get(1)), 212_207);
        isConstant(mH(low.get(2)), 79.58);
        isConstant(uF(high.get(0)), 106_103);
        isConstant(mH(high.get(1)), 119.37);
        isConstant(uF(high.get(2)), 318_310);
    }

    @Test
    void agreesWithTheHandbookInFourthOrder() {
        List<Part> low = Crossover.lowPass(4, Alignment.LINKWITZ_RILEY, OHM, HZ);

        double coarse = 5e-4;
        assertThat(mH(low.get(0)) / 1000).isCloseTo(0.3000, within(3 * coarse));
        assertThat(uF(low.get(1)) / 1e6).isCloseTo(0.2533, within(coarse));
        assertThat(mH(low.get(2)) / 1000).isCloseTo(0.1500, within(coarse));
        assertThat(uF(low.get(3)) / 1e6).isCloseTo(0.0563, within(coarse));
    }

    @Test
    void agreesWithTheFormulasInSecondOrder() {
        isConstant(Crossover.lowPass(2, Alignment.BUTTERWORTH, OHM, HZ).get(0).value(), 0.900316e-3);
        isConstant(Crossover.lowPass(2, Alignment.BUTTERWORTH, OHM, HZ).get(1).value(), 7.033721e-6);
        isConstant(
                Crossover.lowPass(2, Alignment.LINKWITZ_RILEY, OHM, HZ).get(0).value(), 1.273240e-3);
        isConstant(
                Crossover.lowPass(2, Alignment.LINKWITZ_RILEY, OHM, HZ).get(1).value(), 4.973592e-6);
        isConstant(Crossover.highPass(2, Alignment.BUTTERWORTH, OHM, HZ).get(0).value(), 7.033721e-6);
    }

    /** What the filters are for: -3 dB (Butterworth) or -6 dB (Linkwitz-Riley) at the crossover, and the slope beyond. */
    @Test
    void filtersAsItsNameSays() {
        for (int order = 1; order <= 4; order++) {
            Alignment alignment = order == 4 ? Alignment.LINKWITZ_RILEY : Alignment.BUTTERWORTH;
            double atCrossoverDb = order == 4 ? -6.0206 : -3.0103;
            assertThat(gainDb(Crossover.lowPass(order, alignment, OHM, HZ), HZ))
                    .isCloseTo(atCrossoverDb, within(0.001));
            assertThat(gainDb(Crossover.highPass(order, alignment, OHM, HZ), HZ))
                    .isCloseTo(atCrossoverDb, within(0.001));
            double decadeDb = gainDb(Crossover.lowPass(order, alignment, OHM, HZ), 100 * HZ)
                    - gainDb(Crossover.lowPass(order, alignment, OHM, HZ), 10 * HZ);
            assertThat(decadeDb).isCloseTo(-20 * order, within(0.2));
        }
    }

    /** Gain of a ladder into the load, from its end backwards: voltage and current of the load grow part by part. */
    private static double gainDb(List<Part> parts, double frequencyHz) {
        double omega = 2 * Math.PI * frequencyHz;
        Complex voltage = Complex.ONE;
        Complex current = new Complex(1 / OHM);
        for (int i = parts.size() - 1; i >= 0; i--) {
            Part part = parts.get(i);
            Complex impedance =
                    part.coil() ? new Complex(0, omega * part.value()) : new Complex(0, -1 / (omega * part.value()));
            if (part.series()) {
                voltage = voltage.add(current.multiply(impedance));
            } else {
                current = current.add(voltage.divide(impedance));
            }
        }
        return -20 * Math.log10(voltage.norm());
    }

    @Test
    void padsWithoutChangingTheLoad() {
        double[] pad = Crossover.pad(OHM, 6);

        assertThat(pad[0]).isCloseTo(3.990502, within(1e-6));
        assertThat(pad[1]).isCloseTo(8.038082, within(1e-6));
        assertThat(pad[0] + 1 / (1 / pad[1] + 1 / OHM)).isCloseTo(OHM, within(1e-12));
    }

    @Test
    void refusesFiltersNobodyMakes() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Crossover.lowPass(5, Alignment.BUTTERWORTH, OHM, HZ))
                .withMessageContaining("order");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Crossover.lowPass(3, Alignment.LINKWITZ_RILEY, OHM, HZ))
                .withMessageContaining("BUTTERWORTH");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Crossover.highPass(2, Alignment.BUTTERWORTH, 0, HZ))
                .withMessageContaining("load");
    }
}
