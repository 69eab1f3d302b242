package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.docksweep.fleet.DriverModel;
import org.docksweep.fleet.ModelBook;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Agreement with an independent circuit simulator; provenance in {@code org/docksweep/check/spice/README.md}. */
class SpiceAgreementTest {
    /** The simulator prints ten digits; its own leaks and ours are below this share. */
    private static final double RELATIVE = 2e-6;

    @ParameterizedTest
    @CsvSource({
        "two-way-healthy,NONE,''",
        "two-way-horn-open,DRIVER_OPEN,HF1",
        "two-way-woofer-open,DRIVER_OPEN,LF1",
        "two-way-c2-open,ELEMENT_OPEN,C2",
        "two-way-l1-shorted,ELEMENT_SHORTED,L1",
        "two-way-horn-series,SERIES_RESISTANCE,HF1"
    })
    void agreesWithTheSimulator(String name, CircuitFault.Kind kind, String target) throws IOException {
        PointCircuit circuit = PointCircuitTest.compile(withLosslessCoils(), new CircuitFault(kind, target));
        double[] x = circuit.nominal();
        PointCircuitTest.plain(circuit, x);
        if (kind == CircuitFault.Kind.ELEMENT_SHORTED) {
            // the resistance of the short in the simulated circuit
            x[circuit.indexOf("fault.short")] = Math.log(0.02);
        }
        if (kind == CircuitFault.Kind.SERIES_RESISTANCE) {
            x[circuit.indexOf("fault.series")] = Math.log(3.1);
        }
        List<double[]> rows = rows(name);
        assertThat(rows).hasSizeGreaterThan(60);
        for (double[] row : rows) {
            double[] z = circuit.impedanceOhm(row[0], x);
            double allowed = RELATIVE * Math.hypot(row[1], row[2]);
            assertThat(z[0]).as(name + " at " + row[0]).isCloseTo(row[1], within(allowed));
            assertThat(z[1]).as(name + " at " + row[0]).isCloseTo(row[2], within(allowed));
        }
    }

    private static ModelBook withLosslessCoils() {
        ModelBook book = SampleCabinets.twoWay();
        return new ModelBook(
                book.cabinetModels(),
                book.driverModels().stream()
                        .map(d -> new DriverModel(
                                d.code(),
                                d.name(),
                                d.kind(),
                                d.ratedImpedanceOhm(),
                                d.dcResistanceOhm(),
                                d.code().equals("LOW-12") ? 0.6e-3 : 0.05e-3,
                                1,
                                d.resonances(),
                                d.polarityMark(),
                                d.diaphragmPartNumbers()))
                        .toList());
    }

    private static List<double[]> rows(String name) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                SpiceAgreementTest.class.getResourceAsStream("/org/docksweep/check/spice/" + name + ".csv"),
                StandardCharsets.UTF_8))) {
            return reader.lines()
                    .skip(1)
                    .map(line -> line.split(","))
                    .map(c ->
                            new double[] {Double.parseDouble(c[0]), Double.parseDouble(c[1]), Double.parseDouble(c[2])})
                    .toList();
        }
    }
}
