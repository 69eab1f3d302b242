package org.docksweep.kiosk.screens;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.GraphicsEnvironment;
import org.junit.jupiter.api.Assumptions;

/** Real-window tests need a display; without one they skip and say so, or fail where one is required. */
public final class Display {
    /** Set to true where a missing display is a failure. */
    private static final String REQUIRED = "docksweep.require.display";

    private Display() {}

    /** Skips with words, or fails where a display is required. */
    public static void need() {
        boolean there = !GraphicsEnvironment.isHeadless();
        if (Boolean.getBoolean(REQUIRED)) {
            assertThat(there)
                    .as("a display is required (-D%s=true), but there is none; run under Xvfb", REQUIRED)
                    .isTrue();
        }
        if (!there) {
            String words = "no display; run under Xvfb with a window manager to test the real window";
            System.out.println("SKIPPED: " + words);
            Assumptions.abort(words);
        }
    }
}
