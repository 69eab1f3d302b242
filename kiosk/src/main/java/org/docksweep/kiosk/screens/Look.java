package org.docksweep.kiosk.screens;

import com.formdev.flatlaf.FlatSystemProperties;
import com.formdev.flatlaf.fonts.inter.FlatInterFont;
import java.awt.Color;
import javax.swing.UIManager;
import javax.swing.UnsupportedLookAndFeelException;

/** Installs the look and names its colours. Colours are asked for while painting, so a change of theme shows at once. */
final class Look {
    private static final String SCAN_FRAME = "Docksweep.scanFrame";

    private static Installed installed;

    private Look() {}

    /** What the scanner of this window puts around a code. */
    static ScanFrame scanFrame() {
        return (ScanFrame) UIManager.get(SCAN_FRAME);
    }

    /** What is installed now. */
    private record Installed(Theme theme, double scale) {}

    /** Installs font, theme and scale. Must run on the event thread before the first component is made. */
    static void install(ScreenSettings settings) {
        UIManager.put(SCAN_FRAME, settings.scanFrame());
        Installed wanted = new Installed(settings.theme(), settings.scale());
        if (wanted.equals(installed)) {
            return;
        }
        // Scaling is ours (Sizes); a second one from the library would multiply with it.
        System.setProperty(FlatSystemProperties.UI_SCALE_ENABLED, "false");
        FlatInterFont.install();
        Sizes sizes = new Sizes(settings.scale());
        UIManager.put("defaultFont", sizes.regular(16));
        try {
            UIManager.setLookAndFeel(settings.theme().lookAndFeel());
            installed = wanted;
        } catch (UnsupportedLookAndFeelException e) {
            throw new IllegalStateException("the window's look cannot be used on this system: " + e.getMessage(), e);
        }
    }

    /**
     * A colour of the theme.
     *
     * @param key key without the prefix {@code Docksweep.}
     * @throws IllegalArgumentException if the theme lacks it, which is a defect of this program
     */
    static Color color(String key) {
        Color color = UIManager.getColor("Docksweep." + key);
        if (color == null) {
            throw new IllegalArgumentException("the theme has no colour Docksweep." + key);
        }
        return color;
    }
}
