package org.docksweep.kiosk.commands;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.AWTException;
import java.awt.Robot;
import java.awt.event.KeyEvent;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.docksweep.kiosk.Main;
import org.docksweep.kiosk.dock.SmallHouse;
import org.docksweep.kiosk.rig.RigBook;
import org.docksweep.kiosk.rig.RigEntry;
import org.docksweep.kiosk.screens.Display;
import org.docksweep.kiosk.screens.ScreenEyes;
import org.docksweep.kiosk.spool.Spool;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The command {@code kiosk} as a person starts it: a process of its own, seen only through the screen and the keyboard. The
 * service is not there; the copy of the fleet is.
 */
class KioskCommandIT {
    private static final long PATIENCE_S = 120;
    private static final String RIG_ID = "virtual-1";

    /** Plates of the dark theme: the page at hand, and a passed rig. */
    private static final int CURRENT_PAGE = 0x13549f;

    private static final int READY = 0x3ecb82;
    /** Much less than the plate, much more than a sign. */
    private static final int PLATE_PIXELS = 8000;

    private static final int BUTTON_PIXELS = 2000;

    @TempDir
    private Path folder;

    private Robot robot;

    @BeforeEach
    void needsADisplay() throws AWTException {
        Display.need();
        robot = new Robot();
        robot.setAutoDelay(20);
        try (Spool spool = Spool.open(folder.resolve("spool"), Clock.systemUTC())) {
            spool.keepSnapshot(SmallHouse.snapshot(), null);
        }
    }

    private Process start(String... more) throws IOException {
        List<String> words = new java.util.ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Djava.awt.headless=false",
                "-classpath",
                System.getProperty("java.class.path"),
                Main.class.getName(),
                "kiosk",
                "--service",
                // Nothing listens there.
                "http://127.0.0.1:9",
                "--folder",
                folder.toString(),
                "--number",
                "1",
                "--operator",
                "A. Person"));
        words.addAll(List.of(more));
        ProcessBuilder builder = new ProcessBuilder(words)
                .redirectErrorStream(true)
                .redirectOutput(folder.resolve("said.txt").toFile());
        builder.environment().put("DOCKSWEEP_TOKEN", "a-token-of-no-service");
        return builder.start();
    }

    private String said() throws IOException {
        return Files.readString(folder.resolve("said.txt"), StandardCharsets.UTF_8);
    }

    private void pressWith(int modifier, int key) {
        robot.keyPress(modifier);
        robot.keyPress(key);
        robot.keyRelease(key);
        robot.keyRelease(modifier);
    }

    private int showRigPageAndClose(Process kiosk) throws IOException, InterruptedException {
        ScreenEyes eyes = new ScreenEyes(robot, kiosk, folder.resolve("said.txt"));
        try {
            eyes.await("the bar of pages", CURRENT_PAGE, BUTTON_PIXELS);
            pressWith(KeyEvent.VK_CONTROL, KeyEvent.VK_F4);
            eyes.await("a passed rig on the rig page", READY, PLATE_PIXELS);
            pressWith(KeyEvent.VK_ALT, KeyEvent.VK_F4);
            assertThat(kiosk.waitFor(PATIENCE_S, TimeUnit.SECONDS))
                    .as("the kiosk ended when its window was closed")
                    .isTrue();
            return kiosk.exitValue();
        } finally {
            kiosk.destroyForcibly();
        }
    }

    private List<RigEntry> entries() throws IOException {
        try (RigBook book = RigBook.open(folder.resolve("rigs"), RIG_ID)) {
            assertThat(book.damagedLines()).isZero();
            return book.entries();
        }
    }

    @Test
    void opensItsWindowShowsTheRigPageClosesAndStartsWithTheStoredCalibration() throws Exception {
        assertThat(showRigPageAndClose(start())).as(said()).isZero();
        List<RigEntry> first = entries();
        assertThat(first).hasSize(3);
        assertThat(first.get(0)).isInstanceOf(RigEntry.Calibrated.class);
        assertThat(first.get(1)).isInstanceOf(RigEntry.Checked.class);
        assertThat(first.get(2)).isInstanceOf(RigEntry.SoundAccepted.class);
        assertThat(said()).contains("Working without the service for now");

        // Stored ones count, so nothing is measured again.
        assertThat(showRigPageAndClose(start())).as(said()).isZero();
        assertThat(entries()).isEqualTo(first);
    }

    @Test
    void saysWhatIsWrongWithTheRigAndOpensNoWindow() throws Exception {
        Process kiosk = start("--rig", "audio", "--rig-setting", "voltageFullScale=loud");
        try {
            assertThat(kiosk.waitFor(PATIENCE_S, TimeUnit.SECONDS)).isTrue();
        } finally {
            kiosk.destroyForcibly();
        }

        assertThat(kiosk.exitValue()).isEqualTo(3);
        assertThat(said()).contains("The kiosk could not be opened").contains("voltsPerFullScale");
    }
}
