package org.docksweep.demo.physics;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import org.docksweep.demo.DemoModels;
import org.hipparchus.complex.Complex;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whole cabinets against ngspice; netlists, script and tool version lie beside the vectors. */
class SpiceAgreementTest {
    /** ngspice prints 12 digits; its matrix and ours lose a few. */
    private static final double RELATIVE = 1e-6;

    @ParameterizedTest
    @ValueSource(strings = {"SPIN12", "HEAD3", "PEBL8"})
    void agreesWithAnIndependentCircuitSimulator(String modelCode) throws IOException {
        VirtualCabinet cabinet =
                VirtualCabinet.nominal(Books.demoWithoutInductance(), DemoModels.mechanics(), modelCode, Realism.PLAIN);
        int compared = 0;
        for (String row : vectors(modelCode).split("\n")) {
            if (row.startsWith("#") || row.startsWith("frequency")) {
                continue;
            }
            String[] cells = row.split(",");
            Complex expected = new Complex(Double.parseDouble(cells[1]), Double.parseDouble(cells[2]));
            Complex found = Probe.ohm(cabinet, "IN", Double.parseDouble(cells[0]));
            assertThat(found.subtract(expected).norm() / expected.norm())
                    .as("relative deviation of %s at %s Hz", modelCode, cells[0])
                    .isLessThan(RELATIVE);
            compared++;
        }
        assertThat(compared).isGreaterThan(60);
    }

    private static String vectors(String modelCode) throws IOException {
        String resource = "/org/docksweep/demo/spice/" + modelCode.toLowerCase(java.util.Locale.ROOT) + ".csv";
        try (InputStream in = SpiceAgreementTest.class.getResourceAsStream(resource)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
