package org.docksweep.paper;

import static org.assertj.core.api.Assertions.assertThat;

import com.google.zxing.qrcode.decoder.Decoder;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Checks the codes against published vectors. The file {@code barcode_vectors.csv} names the source of each line:
 * ISO/IEC 15417:2007 Figure 1 and public examples for Code 128, ISO/IEC 18004 Annex I for QR.
 */
class CodeBlocksTest {
    /** Code 128: patterns have 11 modules, the stop pattern 13. */
    private static final int PATTERN = 11;

    private static final int STOP_PATTERN = 13;

    @Test
    void drawsTheModulesOfThePublishedCode128() throws IOException {
        assertThat(bits(CodeBlocks.code128("AIM"))).isEqualTo(vector("code128B_modules", "AIM", 4));
    }

    /** The check character is the last pattern before the stop pattern; its symbol tells which pattern that must be. */
    @ParameterizedTest
    @CsvSource({"code128B,AIM", "code128B,PJJ123C", "code128auto,RI476394652CH"})
    void endsWithThePublishedCheckCharacter(String kind, String data) throws IOException {
        String symbol = vector(kind, data, 3);
        String modules = bits(CodeBlocks.code128(data));
        int stop = modules.length() - STOP_PATTERN;

        assertThat(modules.substring(stop - PATTERN, stop)).isEqualTo(firstPattern(symbol));
    }

    @Test
    void encodesThePublishedQrData() throws Exception {
        String published = vector("qr_1M_data", "01234567", 4);

        byte[] codewords = new Decoder().decode(CodeBlocks.qr("01234567")).getRawBytes();

        assertThat(HexFormat.ofDelimiter(" ").withUpperCase().formatHex(codewords))
                .isEqualTo(published);
        assertThat(CodeBlocks.qr("01234567").getWidth()).as("version 1").isEqualTo(21);
    }

    @Test
    void usesWholeDotsOfALabelPrinter() {
        double dotsPerMm = 8;
        assertThat(CodeBlocks.BAR_MODULE_MM * dotsPerMm).isEqualTo(3);
    }

    /** Pattern of a character of set B: the one after the start pattern. */
    private static String firstPattern(String symbol) {
        return bits(CodeBlocks.code128(symbol)).substring(PATTERN, 2 * PATTERN);
    }

    private static String bits(boolean[] modules) {
        StringBuilder bits = new StringBuilder();
        for (boolean module : modules) {
            bits.append(module ? '1' : '0');
        }
        return bits.toString();
    }

    private static String vector(String kind, String data, int column) throws IOException {
        try (BufferedReader reader = new BufferedReader(new InputStreamReader(
                CodeBlocksTest.class.getResourceAsStream("/org/docksweep/check/barcode_vectors.csv"),
                StandardCharsets.UTF_8))) {
            List<String[]> found = reader.lines()
                    .map(line -> line.split(",", -1))
                    .filter(cells -> cells.length > column && cells[0].equals(kind) && cells[1].equals(data))
                    .toList();
            assertThat(found)
                    .as(String.format(Locale.ROOT, "vector %s %s", kind, data))
                    .hasSize(1);
            return found.get(0)[column];
        }
    }
}
