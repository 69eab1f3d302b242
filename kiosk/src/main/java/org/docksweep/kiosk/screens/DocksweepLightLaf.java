package org.docksweep.kiosk.screens;

import com.formdev.flatlaf.FlatLightLaf;

/** The light palette; its keys live in {@code DocksweepLightLaf.properties} beside this class. */
final class DocksweepLightLaf extends FlatLightLaf {
    private static final long serialVersionUID = 1;
}
