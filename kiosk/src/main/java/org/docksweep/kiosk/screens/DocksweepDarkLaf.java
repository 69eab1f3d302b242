package org.docksweep.kiosk.screens;

import com.formdev.flatlaf.FlatDarkLaf;

/** The dark palette; its keys live in {@code DocksweepDarkLaf.properties} beside this class. */
final class DocksweepDarkLaf extends FlatDarkLaf {
    private static final long serialVersionUID = 1;
}
