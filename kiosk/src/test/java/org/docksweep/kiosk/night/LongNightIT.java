package org.docksweep.kiosk.night;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.BufferedReader;
import java.io.PrintWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.docksweep.kiosk.screens.Display;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A long night in the real window, in a process of its own with the memory a kiosk gets. Six cabinets by default, to know that the
 * command works; {@code -Ddocksweep.cabinets=500} is the endurance night, and {@code -Ddocksweep.real-time=true} lets the rig play in
 * real time, for seconds per cabinet. What it measures is printed; only what must never fail is asserted.
 */
class LongNightIT {
    private static final int CABINETS = Integer.getInteger("docksweep.cabinets", 6);
    private static final String REAL_TIME = System.getProperty("docksweep.real-time", "false");
    /** Other options than those of docs/scripts/package-kiosk. */
    private static final String JVM = System.getProperty("docksweep.kiosk-jvm");

    private static final long SEED = 5;
    private static final Pattern DONE =
            Pattern.compile("cabinets done (\\d+), check-ins recorded (\\d+), acknowledged (\\d+)");
    private static final Pattern HEAP = Pattern.compile("memory after (\\d+) cabinets: heap ([0-9.]+) MB.*");
    /** Half of what a kiosk has for its heap. */
    private static final double GROWTH_MB = 40;

    /** Measurements before the memory is compared: none, and fifty cabinets. */
    private static final int WARM = 2;

    private static final long PATIENCE_MIN = 180;

    @TempDir
    Path folder;

    @Test
    void takesManyCabinetsInWithoutGrowingOrLosingOne() throws Exception {
        Display.need();
        NightOptions options = new NightOptions(folder.resolve("night"), SEED, Capability.serviceJar(), false);
        // Before the hire, and the service, are another process's memory.
        try (DockNight night = PreparedHouse.night(options, new PrintWriter(PrintWriter.nullWriter()))) {
            night.open();
            walk(night.leaveDock(), night.token());
        }
    }

    private void walk(URI service, String token) throws Exception {
        List<String> command = new ArrayList<>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(JVM == null ? ShippedJvm.options() : Arrays.asList(JVM.split(" ")));
        command.addAll(List.of(
                "-Duser.timezone=UTC",
                "-cp",
                System.getProperty("java.class.path"),
                LongNight.class.getName(),
                folder.resolve("night").toString(),
                Long.toString(SEED),
                service.toString(),
                Integer.toString(CABINETS),
                REAL_TIME));
        ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
        builder.environment().put("DOCKSWEEP_TOKEN", token);
        Process process = builder.start();
        String counts = "";
        List<Double> heapMb = new ArrayList<>();
        try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                System.out.println(line);
                Matcher heap = HEAP.matcher(line);
                if (heap.matches()) {
                    heapMb.add(Double.parseDouble(heap.group(2)));
                } else if (DONE.matcher(line).matches()) {
                    counts = line;
                }
            }
        }
        assertThat(process.waitFor(PATIENCE_MIN, TimeUnit.MINUTES)).isTrue();
        assertThat(process.exitValue()).isZero();
        assertThat(counts)
                .isEqualTo("cabinets done %1$d, check-ins recorded %1$d, acknowledged %1$d".formatted(CABINETS));
        // The first fifty fill the tables of transforms and models, which stay.
        if (heapMb.size() > WARM) {
            assertThat(heapMb.get(heapMb.size() - 1)).isLessThan(heapMb.get(WARM - 1) + GROWTH_MB);
        }
    }
}
