package org.docksweep.circuit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.docksweep.fleet.CabinetModel;
import org.docksweep.fleet.ModelBook;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import tools.jackson.databind.json.JsonMapper;

/**
 * Six cabinets of different topology, read from the published form of model books, against an independent circuit simulator: one way
 * closed; a pair in one vented box; third-order two-way with an impedance correction; three ways with a pod; fourth-order subwoofer; horn behind a
 * lamp and a capacitor. Coils follow (jw)^n. Provenance in {@code org/docksweep/check/spice/README.md}.
 */
class NetworksTest {
    private static final String FOLDER = "/org/docksweep/check/spice/networks/";

    /** The simulator prints twelve digits; its own leaks and ours are below this share. */
    private static final double RELATIVE = 2e-6;

    @TestFactory
    Stream<DynamicTest> agreesWithTheSimulator() throws IOException {
        ModelBook book = JsonMapper.builder().build().readValue(text("models.json"), ModelBook.class);
        assertThat(book.cabinetModels()).hasSize(6);
        return book.cabinetModels().stream()
                .map(model -> DynamicTest.dynamicTest(model.code(), () -> compare(book, model)));
    }

    private static void compare(ModelBook book, CabinetModel model) throws IOException {
        PointCircuit circuit =
                CircuitCompiler.compile(book, model, model.testPoints().get(0), CircuitFault.NONE);
        double[] x = circuit.nominal();
        PointCircuitTest.plain(circuit, x);
        List<String> rows = text(model.code().toLowerCase(Locale.ROOT) + ".csv")
                .lines()
                .skip(2)
                .toList();
        assertThat(rows).hasSizeGreaterThan(60);
        for (String row : rows) {
            String[] cells = row.split(",");
            double hz = Double.parseDouble(cells[0]);
            double re = Double.parseDouble(cells[1]);
            double im = Double.parseDouble(cells[2]);
            double[] z = circuit.impedanceOhm(hz, x);
            double allowedOhm = RELATIVE * Math.hypot(re, im);
            assertThat(z[0]).as("resistance at %s Hz", hz).isCloseTo(re, within(allowedOhm));
            assertThat(z[1]).as("reactance at %s Hz", hz).isCloseTo(im, within(allowedOhm));
        }
    }

    private static String text(String name) throws IOException {
        try (InputStream in = NetworksTest.class.getResourceAsStream(FOLDER + name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }
}
