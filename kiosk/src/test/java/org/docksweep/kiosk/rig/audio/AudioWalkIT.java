package org.docksweep.kiosk.rig.audio;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.docksweep.kiosk.rig.RigBook;
import org.docksweep.kiosk.rig.RigEntry;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The calibration walk over a real sound server, the software load between output and input being changed between the
 * steps as a person changes plugs, rightly and wrongly. The network standard is left out: stepped at the rate of the
 * rig, a capacitor beside a resistor is another one at 20 kHz than on paper.
 */
class AudioWalkIT {
    private static final int RATE_HZ = 48_000;
    /** Where all cores are busy a capture may be torn; then the step is measured again, as on the page. */
    private static final int MOST_SWEEPS = 8;

    @TempDir
    Path folder;

    private SoundServer server;
    private Program walk;
    private int said;

    @BeforeEach
    void startServer() throws IOException, InterruptedException {
        SoundServer.need();
        server = SoundServer.start(folder);
        walk = new Program(
                server.java(
                        WalkProcess.class,
                        "out" + RATE_HZ,
                        "in" + RATE_HZ,
                        List.of(
                                folder.resolve("rigs").toString(),
                                "captureChannels=4",
                                "voltsPerFullScale=" + DutBridge.VOLTS_FULL_SCALE,
                                "voltageFullScale=" + DutBridge.VOLTS_FULL_SCALE,
                                "currentFullScale=" + DutBridge.AMPERES_FULL_SCALE,
                                "bufferMs=200")),
                "ready");
        walk.awaitLine();
    }

    @AfterEach
    void stopServer() throws InterruptedException {
        if (walk != null) {
            walk.close();
        }
        if (server != null) {
            server.close();
        }
    }

    /** Plugs a load and measures the step at hand as often as the keys that are awaited. */
    private void plugged(SoftLoad load, String... keys) throws IOException, InterruptedException {
        for (String key : keys) {
            assertThat(measured(load)).as("with %s plugged", load).contains(key);
        }
    }

    private String measured(SoftLoad load) throws IOException, InterruptedException {
        List<String> arguments = List.of(load.name(), Integer.toString(RATE_HZ), "1", "0", "VIMF");
        for (int sweep = 1; ; sweep++) {
            // A fresh one every time: on a busy machine it falls behind, and what it brings late is refused as too
            // loud.
            try (Program device = new Program(
                    server.java(DutBridge.class, "in" + RATE_HZ, "out" + RATE_HZ, arguments), DutBridge.READY)) {
                device.awaitLine();
                walk.type("measure");
                String words = walk.awaitLine("said ", ++said);
                boolean late = words.contains("capture-") || words.contains("audio-");
                if (!late || sweep == MOST_SWEEPS) {
                    return words;
                }
                System.out.println("measured again: " + words);
            }
        }
    }

    @Test
    void namesWrongPlugsAndTakesTheLeadOffTheReading() throws IOException, InterruptedException {
        plugged(SoftLoad.TEN, "rigpage-common-mode-wires");
        plugged(SoftLoad.OPEN, "rigpage-common-mode-good", "rigpage-open-good", "rigpage-short-saw-open");
        plugged(SoftLoad.SHORT, "rigpage-short-good");
        plugged(SoftLoad.FOUR_SEVEN, "rigpage-load-saw-other");
        plugged(SoftLoad.TEN, "rigpage-load-good", "rigpage-check-saw-load");
        plugged(SoftLoad.FOUR_SEVEN, "rigpage-check-good");
        walk.close();
        walk.awaitEnd();

        try (RigBook book = RigBook.open(folder.resolve("rigs"), "audio")) {
            assertThat(book.calibrationInForce()).isPresent();
            assertThat(book.all(RigEntry.CommonMode.class)).hasSize(2);
        }
    }
}
