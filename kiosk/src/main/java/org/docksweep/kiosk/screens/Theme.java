package org.docksweep.kiosk.screens;

import com.formdev.flatlaf.FlatLaf;

/** Palette of the window. */
public enum Theme {
    /** For warehouse light and day. */
    LIGHT,
    /** For night docks. */
    DARK;

    FlatLaf lookAndFeel() {
        return this == LIGHT ? new DocksweepLightLaf() : new DocksweepDarkLaf();
    }
}
