package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A recording written by a script that uses only a standard library, from docs/recording-format.md alone. */
class StrangerRecordingIT {
    private static final Path SCRIPT = Path.of("../docs/examples/ten_ohm_recording.py");
    private static final double RESISTANCE_OHM = 10;
    /** Promised on the page. */
    private static final double SHARE = 0.005;

    private static final double LOWEST_HZ = 25;
    private static final double HIGHEST_HZ = 18000;

    @TempDir
    Path folder;

    @Test
    void readsTheTenOhmThatAStrangerWrote() throws Exception {
        Python.need();
        CommandRun script =
                ChildProcess.run(folder, Python.COMMAND, SCRIPT.toAbsolutePath().toString(), folder.toString());
        assertThat(script.exitCode()).as(script.err()).isZero();
        CommandRun curve = ChildProcess.java(
                Path.of(System.getProperty("java.home")),
                folder,
                "curve",
                folder.resolve("ten_ohm.wav").toString(),
                "--format",
                "csv");
        assertThat(curve.exitCode()).as(curve.err()).isZero();
        List<double[]> points = curve.out()
                .lines()
                .skip(1)
                .map(StrangerRecordingIT::numbers)
                .filter(p -> p[0] >= LOWEST_HZ && p[0] <= HIGHEST_HZ)
                .toList();
        double worst = 0;
        for (double[] p : points) {
            assertThat(p[1]).as("resistance at %s Hz", p[0]).isCloseTo(RESISTANCE_OHM, within(SHARE * RESISTANCE_OHM));
            assertThat(p[2]).as("reactance at %s Hz", p[0]).isCloseTo(0, within(SHARE * RESISTANCE_OHM));
            worst = Math.max(worst, Math.hypot(p[1] - RESISTANCE_OHM, p[2]) / RESISTANCE_OHM);
        }
        // The grid has twelve points per octave or more.
        assertThat(points).hasSizeGreaterThan(100);
        System.out.printf("stranger's 10 ohm: %d points, worst error %.4f %%%n", points.size(), 100 * worst);
    }

    private static double[] numbers(String line) {
        return java.util.Arrays.stream(line.split(","))
                .mapToDouble(Double::parseDouble)
                .toArray();
    }
}
