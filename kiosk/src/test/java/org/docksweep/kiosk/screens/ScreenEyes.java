package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.Rectangle;
import java.awt.Robot;
import java.awt.Toolkit;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.concurrent.TimeUnit;

/** Watches the screen for a plate of a colour while another process paints it. */
public final class ScreenEyes {
    private static final long PATIENCE_S = 180;
    /** A look at a large screen is dear: eyes that never rest take from the kiosk the processor it starts with. */
    private static final long REST_MS = 100;

    private final Robot robot;
    private final Process kiosk;
    private final Path said;

    /**
     * Makes eyes.
     *
     * @param robot takes the pictures
     * @param kiosk process that paints
     * @param said file with what it said
     */
    public ScreenEyes(Robot robot, Process kiosk, Path said) {
        this.robot = robot;
        this.kiosk = kiosk;
        this.said = said;
    }

    /** Waits until so many pixels of a colour are on the screen; fails when the process ends before. */
    public void await(String what, int colour, int pixels) throws IOException, InterruptedException {
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_S);
        long seen = count(colour);
        while (seen < pixels && System.nanoTime() < end && !kiosk.waitFor(REST_MS, TimeUnit.MILLISECONDS)) {
            seen = count(colour);
        }
        assertThat(seen)
                .as("%s on the screen; the kiosk said: %s", what, Files.readString(said, StandardCharsets.UTF_8))
                .isGreaterThanOrEqualTo(pixels);
    }

    private long count(int colour) {
        BufferedImage seen = robot.createScreenCapture(
                new Rectangle(Toolkit.getDefaultToolkit().getScreenSize()));
        int[] row = new int[seen.getWidth()];
        long count = 0;
        for (int y = 0; y < seen.getHeight(); y++) {
            seen.getRGB(0, y, row.length, 1, row, 0, row.length);
            count += Arrays.stream(row)
                    .filter(pixel -> (pixel & 0xffffff) == colour)
                    .count();
        }
        return count;
    }
}
