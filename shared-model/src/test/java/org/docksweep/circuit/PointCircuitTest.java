package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.Enclosure;
import org.docksweep.fleet.EnclosureKind;
import org.docksweep.fleet.ModelBook;
import org.docksweep.fleet.NetworkElement;
import org.docksweep.fleet.TestPoint;
import org.docksweep.fleet.TestPointKind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PointCircuitTest {
    /** The published table prints nine decimals; the node leak of the solver moves the seventh. */
    private static final double TABLE_OHM = 1e-5;

    private static final long SEED = 20260101;

    /** Source: reference driver of Small's equations, confirmed with ngspice (table header). */
    @ParameterizedTest
    @CsvSource({"free,FREE_AIR,0", "closed,CLOSED,0", "vented,VENTED,0", "lossy,FREE_AIR,0.03"})
    void reproducesTheReferenceDriver(String column, EnclosureKind kind, double lossyInductanceK) throws IOException {
        double alpha = kind == EnclosureKind.CLOSED ? 3 : 2;
        double boxLossQ = kind == EnclosureKind.CLOSED ? 1e9 : 7;
        DriverModel driver = SampleCabinets.referenceDriver(lossyInductanceK);
        ModelBook book =
                SampleCabinets.oneDriver(driver, new Enclosure("BOX", kind, List.of("LF1"), alpha, 40, boxLossQ));
        PointCircuit circuit = compile(book, CircuitFault.NONE);
        double[] x = circuit.nominal();
        plain(circuit, x);
        int rows = 0;
        for (String[] row : table()) {
            double[] z = circuit.impedanceOhm(Double.parseDouble(row[0]), x);
            int at = List.of("free", "closed", "vented", "lossy").indexOf(column) * 2 + 1;
            double inductance =
                    lossyInductanceK > 0 ? 0 : 2e-6 * Math.pow(2 * Math.PI * Double.parseDouble(row[0]), 0.7);
            assertThat(z[0]).isCloseTo(Double.parseDouble(row[at]), within(TABLE_OHM + inductance));
            assertThat(z[1]).isCloseTo(Double.parseDouble(row[at + 1]), within(TABLE_OHM + inductance));
            rows++;
        }
        assertThat(rows).isGreaterThan(20);
    }

    @ParameterizedTest
    @CsvSource({
        "NONE,''",
        "DRIVER_OPEN,HF1",
        "DRIVER_DOUBLED,LF1",
        "SERIES_RESISTANCE,HF1",
        "SHORTED_TURNS,LF1",
        "SHORTED_TURNS,HF1",
        "MAGNET_WEAK,LF1",
        "MAGNET_WEAK,HF1",
        "DRIVER_SHORTED,HF1",
        "DRIVER_BRIDGED,LF1",
        "ELEMENT_OPEN,C2",
        "ELEMENT_SHORTED,C2",
        "COIL_SEIZED,LF1",
        "PORT_BLOCKED,BOX"
    })
    void slopesAgreeWithFiniteDifferences(CircuitFault.Kind kind, String target) {
        PointCircuit circuit = compile(SampleCabinets.twoWay(), new CircuitFault(kind, target));
        assertSlopes(circuit);
    }

    @Test
    void slopesOfASharedBoxAgreeWithFiniteDifferences() {
        assertSlopes(compile(SampleCabinets.doubleFifteen(), CircuitFault.NONE));
        for (CircuitFault.Kind kind : List.of(
                CircuitFault.Kind.DRIVER_OPEN,
                CircuitFault.Kind.SHORTED_TURNS,
                CircuitFault.Kind.MAGNET_WEAK,
                CircuitFault.Kind.POLARITY_REVERSED)) {
            assertSlopes(compile(SampleCabinets.doubleFifteen(), new CircuitFault(kind, "LF2")));
        }
    }

    @Test
    void deadConeInASharedBoxDoublesTheResistanceAndAddsAThirdPeak() {
        PointCircuit healthy = compile(SampleCabinets.doubleFifteen(), CircuitFault.NONE);
        PointCircuit oneOpen =
                compile(SampleCabinets.doubleFifteen(), new CircuitFault(CircuitFault.Kind.DRIVER_OPEN, "LF2"));
        double ratio =
                oneOpen.impedanceOhm(150, oneOpen.nominal())[0] / healthy.impedanceOhm(150, healthy.nominal())[0];
        assertThat(ratio).isCloseTo(2, within(0.15));
        assertThat(peaks(healthy)).isEqualTo(2);
        assertThat(peaks(oneOpen)).isEqualTo(3);
    }

    /** An open driver behind a second-order network leaves its coil and capacitor in series (trade practice). */
    @Test
    void openHornDriverLeavesASeriesDip() {
        ModelBook book = SampleCabinets.twoWay();
        PointCircuit open = compile(book, new CircuitFault(CircuitFault.Kind.DRIVER_OPEN, "HF1"));
        PointCircuit healthy = compile(book, CircuitFault.NONE);
        // The pad's shunt leg is still there, so the dip is damped but clear.
        double f0 = 1 / (2 * Math.PI * Math.sqrt(0.9e-3 * 6.8e-6));
        double ratio = magnitude(open, f0) / magnitude(healthy, f0);
        assertThat(ratio).isBetween(0.4, 0.9);
    }

    @Test
    void refusesAFloatingNode() {
        ModelBook book = SampleCabinets.twoWay();
        CabinetModel model = book.cabinetModel("TWO");
        TestPoint point = new TestPoint(
                "IN",
                TestPointKind.TERMINALS,
                "1+ / 1-",
                List.of("LF1"),
                8,
                model.testPoint("IN").levelMask(),
                List.of(
                        new NetworkElement.Driver("W1", "in", "0", "LF1"),
                        new NetworkElement.Resistor("R9", "in", "nowhere", 4, 0.05)));
        assertThatThrownBy(() -> CircuitCompiler.compile(book, model, point, CircuitFault.NONE))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("nowhere")
                .hasMessageContaining("hangs free");
    }

    /** What a cone induces is what its impedance has beyond the coil's resistance: Bl x per volt = |Z - R| / (|Z| w), no inductance. */
    @ParameterizedTest
    @CsvSource({"20", "40", "63", "200"})
    void tellsTheTravelOfAConeFromWhatItInduces(double frequencyHz) {
        DriverModel driver = SampleCabinets.referenceDriver(0);
        ModelBook book =
                SampleCabinets.oneDriver(driver, new Enclosure("BOX", EnclosureKind.CLOSED, List.of("LF1"), 2, 40, 7));
        PointCircuit circuit = compile(book, CircuitFault.NONE);
        double[] x = circuit.nominal();
        double[] z = circuit.impedanceOhm(frequencyHz, x);
        double resistanceOhm = driver.dcResistanceOhm() + x[circuit.indexOf("contact")];
        double expected = Math.hypot(z[0] - resistanceOhm, z[1]) / Math.hypot(z[0], z[1]) / (2 * Math.PI * frequencyHz);
        double travel = circuit.travelPerVolt(new double[] {frequencyHz}, x).get("LF1")[0];
        // no inductance is a millionth of one in the circuit
        assertThat(travel).isCloseTo(expected, within(1e-3 * expected));
    }

    /** Above its resonance a travel falls by 12 dB per octave, below it stays; a second-order high-pass makes it rise there. */
    @Test
    void movesAHornDriverMostAboutItsResonanceAndAConeBelowIts() {
        PointCircuit circuit = compile(SampleCabinets.twoWay(), CircuitFault.NONE);
        double[] hz = {25, 1200, 12_000};
        Map<String, double[]> travel = circuit.travelPerVolt(hz, circuit.nominal());
        assertThat(travel.get("LF1")[0]).isGreaterThan(30 * travel.get("LF1")[1]);
        assertThat(travel.get("HF1")[1]).isGreaterThan(30 * travel.get("HF1")[0]);
        assertThat(travel.get("HF1")[1]).isGreaterThan(10 * travel.get("HF1")[2]);
    }

    /**
     * Two equal cones against each other move no air in and out: the box is as if it were not there, one peak at the free
     * resonance (derivation: volume flow cancels).
     */
    @Test
    void reversedConeOfAPairLeavesThePeakOfTheFreeDriver() {
        ModelBook book = SampleCabinets.doubleFifteen();
        PointCircuit reversed = compile(book, new CircuitFault(CircuitFault.Kind.POLARITY_REVERSED, "LF2"));
        assertThat(peaks(reversed)).isEqualTo(1);
        double freeHz = book.driverModelAt(book.cabinetModels().get(0), "LF2")
                .resonances()
                .get(0)
                .frequencyHz();
        assertThat(magnitude(reversed, freeHz)).isGreaterThan(magnitude(reversed, freeHz * 1.1));
        assertThat(magnitude(reversed, freeHz)).isGreaterThan(magnitude(reversed, freeHz / 1.1));
    }

    /** Bl down by a tenth: the peak over Re falls by 19 %, for all of the motional impedance goes as Bl squared. */
    @Test
    void weakMagnetLowersAllMotionBySquareOfItsForce() {
        ModelBook book = SampleCabinets.oneDriver(
                SampleCabinets.referenceDriver(0),
                new Enclosure("BOX", EnclosureKind.VENTED, List.of("LF1"), 2, 40, 7));
        PointCircuit healthy = compile(book, CircuitFault.NONE);
        PointCircuit weak = compile(book, new CircuitFault(CircuitFault.Kind.MAGNET_WEAK, "LF1"));
        double[] x = healthy.nominal();
        plain(healthy, x);
        double[] weakX = java.util.Arrays.copyOf(x, x.length + 1);
        weakX[x.length] = Math.log(0.9);
        double blockedOhm = Math.exp(x[healthy.indexOf("LF1.Re")]);
        for (double hz : new double[] {15, 22, 40, 70, 120}) {
            double[] z = healthy.impedanceOhm(hz, x);
            double[] w = weak.impedanceOhm(hz, weakX);
            double inductance = 2e-6 * Math.pow(2 * Math.PI * hz, 0.7);
            assertThat(w[0] - blockedOhm).isCloseTo(0.81 * (z[0] - blockedOhm), within(1e-4 + inductance));
            assertThat(w[1]).isCloseTo(0.81 * z[1], within(1e-4 + inductance));
        }
    }

    /** Without contact, creep and friction, as text books have it. */
    static void plain(PointCircuit circuit, double[] x) {
        for (int i = 0; i < x.length; i++) {
            String id = circuit.parameters().get(i).id();
            if (id.equals("contact") || id.endsWith(".creep") || id.endsWith(".friction")) {
                x[i] = 0;
            }
        }
    }

    static PointCircuit compile(ModelBook book, CircuitFault fault) {
        CabinetModel model = book.cabinetModels().get(0);
        return CircuitCompiler.compile(book, model, model.testPoints().get(0), fault);
    }

    private static double magnitude(PointCircuit circuit, double frequencyHz) {
        double[] z = circuit.impedanceOhm(frequencyHz, circuit.nominal());
        return Math.hypot(z[0], z[1]);
    }

    private static int peaks(PointCircuit circuit) {
        int count = 0;
        double ratio = Math.pow(2, 1 / 48.0);
        for (double f = 12; f < 150; f *= ratio) {
            if (magnitude(circuit, f) > magnitude(circuit, f / ratio)
                    && magnitude(circuit, f) >= magnitude(circuit, f * ratio)) {
                count++;
            }
        }
        return count;
    }

    private static void assertSlopes(PointCircuit circuit) {
        Random random = new Random(SEED);
        double[] x = circuit.nominal();
        for (int i = 0; i < x.length; i++) {
            x[i] += 0.3 * circuit.parameters().get(i).spread() * random.nextGaussian();
        }
        double[] at = new double[2];
        double[] above = new double[2];
        double[] below = new double[2];
        double[] slopeRe = new double[x.length];
        double[] slopeIm = new double[x.length];
        double step = 1e-5;
        for (double f : new double[] {17, 43, 61, 240, 700, 1900, 6000, 15000}) {
            circuit.prepare(x);
            circuit.evaluate(f, at, slopeRe, slopeIm);
            for (int i = 0; i < x.length; i++) {
                String id = circuit.parameters().get(i).id();
                double[] up = x.clone();
                double[] down = x.clone();
                up[i] += step;
                down[i] -= step;
                circuit.prepare(up);
                circuit.evaluate(f, above, null, null);
                circuit.prepare(down);
                circuit.evaluate(f, below, null, null);
                double tolerance = 2e-4;
                assertThat(slopeRe[i])
                        .as(id + " at " + f)
                        .isCloseTo((above[0] - below[0]) / (2 * step), within(tolerance));
                assertThat(slopeIm[i])
                        .as(id + " at " + f)
                        .isCloseTo((above[1] - below[1]) / (2 * step), within(tolerance));
            }
        }
    }

    private static List<String[]> table() throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                PointCircuitTest.class.getResourceAsStream("/org/docksweep/check/reference_driver_impedance.csv"),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .filter(line -> !line.startsWith("#") && !line.startsWith("f_hz"))
                    .map(line -> line.split(","))
                    .toList();
        }
    }
}
