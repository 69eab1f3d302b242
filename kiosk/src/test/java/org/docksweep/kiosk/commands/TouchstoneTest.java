package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TouchstoneTest {
    private static final long SEED = 20260503;
    /** Half a step of the last printed digit, of nine. */
    private static final double PRINTED = 0.51e-8;

    @TempDir
    Path folder;

    @Test
    void comesBackToThePrintedDigits() throws IOException {
        Random random = new Random(SEED);
        double[] hz = new double[200];
        double[] re = new double[200];
        double[] im = new double[200];
        for (int i = 0; i < hz.length; i++) {
            hz[i] = 10 * Math.pow(1.04, i);
            re[i] = Math.exp(12 * random.nextDouble() - 6);
            im[i] = (random.nextDouble() - 0.5) * Math.exp(12 * random.nextDouble() - 6);
        }
        im[3] = 0;
        String first = printed(new Touchstone(hz, re, im));
        Touchstone back = read(first);
        assertThat(printed(back)).isEqualTo(first);
        for (int i = 0; i < hz.length; i++) {
            assertThat(back.resistanceOhm()[i]).isCloseTo(re[i], within(PRINTED * Math.abs(re[i])));
            assertThat(back.reactanceOhm()[i]).isCloseTo(im[i], within(PRINTED * Math.abs(im[i])));
        }
        assertThat(first).contains("\n# HZ Z RI R 1\n");
    }

    @Test
    void readsOtherUnitsFormsAndReferences() throws IOException {
        Touchstone ma = read("! a comment\n# kHz z ma r 50 ! another\n0.1 0.2 90 ! last\n\n1 0.4 0\n");
        assertThat(ma.frequencyHz()).containsExactly(100, 1000);
        assertThat(ma.resistanceOhm()[1]).isCloseTo(20, within(1e-12));
        assertThat(ma.reactanceOhm()[0]).isCloseTo(10, within(1e-12));
        assertThat(read("# Z DB R 1 HZ\n1 20 0\n").resistanceOhm()[0]).isCloseTo(10, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            1 2 3                    | line 1 | option line
            # HZ S RI R 50;1 2 3     | line 1 | Z parameters
            # HZ Z RI R 0;1 2 3      | line 1 | reference
            # HZ Z RI R;1 2 3        | line 1 | number
            # HZ Z XX R 1;1 2 3      | line 1 | XX
            # HZ Z RI R 1;1 2        | line 2 | two numbers
            # HZ Z RI R 1;1 2 x      | line 2 | number
            # HZ Z RI R 1;1 2 NaN    | line 2 | finite
            # HZ Z RI R 1;2 2 3;1 2 3 | line 3 | rise
            # HZ Z RI R 1            | holds no points | x.s1p
            """)
    void refusesOtherFilesNamingTheLine(String text, String where, String what) {
        assertThatThrownBy(() -> read(text.replace(';', '\n')))
                .isInstanceOf(IOException.class)
                .hasMessageContainingAll("x.s1p", where, what);
    }

    @Test
    void printsARecordingAndReadsItBackThroughTheCommand() throws IOException {
        Path wav = ReplaySet.FOLDER.resolve("healthy.wav");
        CommandRun touchstone = CommandRun.of("curve", wav, "--format", "touchstone");
        assertThat(touchstone.exitCode()).as(touchstone.err()).isZero();
        Path file = folder.resolve("healthy.s1p");
        Files.writeString(file, touchstone.out());
        assertThat(CommandRun.of("curve", file, "--format", "TOUCHSTONE").out()).isEqualTo(touchstone.out());
        String[] direct = CommandRun.of("curve", wav).out().split("\\R");
        String[] through = CommandRun.of("curve", file).out().split("\\R");
        assertThat(through).hasSameSizeAs(direct);
        // Rounding twice may move the last of the printed digits; compare five of the six.
        for (int i = 1; i < direct.length; i++) {
            double ohm = Double.parseDouble(direct[i].split(",")[3]);
            assertThat(Double.parseDouble(through[i].split(",")[3])).isCloseTo(ohm, within(1e-5 * ohm));
        }
    }

    private Touchstone read(String text) throws IOException {
        Path file = folder.resolve("x.s1p");
        Files.writeString(file, text);
        return Touchstone.read(file);
    }

    private static String printed(Touchstone curve) {
        StringWriter text = new StringWriter();
        curve.print(new PrintWriter(text));
        return text.toString();
    }
}
