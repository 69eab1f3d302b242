package org.docksweep.kiosk.screens;

import java.time.ZoneId;
import java.util.Locale;
import org.docksweep.fleet.Require;

/**
 * How the window looks and speaks.
 *
 * @param theme palette
 * @param scale size of everything against 96 dots per inch, 0.5 to 4; 1 is made for 1280 x 800, 2 for 2560 x 1600
 * @param locale language; English where a language has no text
 * @param zone time zone of the clock
 * @param scanFrame what the scanner puts around a code
 */
public record ScreenSettings(Theme theme, double scale, Locale locale, ZoneId zone, ScanFrame scanFrame) {
    public ScreenSettings {
        if (theme == null || locale == null || zone == null || scanFrame == null) {
            throw new IllegalArgumentException("screen settings: theme, locale, zone and scan frame are all needed");
        }
        Require.inRange("screen scale", scale, 0.5, 4);
    }

    /** Settings for a scanner that puts nothing around a code. */
    public ScreenSettings(Theme theme, double scale, Locale locale, ZoneId zone) {
        this(theme, scale, locale, zone, ScanFrame.NONE);
    }
}
